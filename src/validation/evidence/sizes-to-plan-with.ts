// Are the sizes of a job's machine such that an order can be judged and a plan be made? Where one is beyond belief (a liner of
// ten inches), it has a finding of its own, and what would be computed from it is left alone.

import type { Job } from '../../domain/model/job.js';
import type { LinerSpecification, ScrewSpecification } from '../../domain/model/specifications.js';
import { linedSection } from './lined-section.js';
import { isPlausible } from './plausible.js';

export function hasSizesToPlanWith(job: Job): boolean {
  const { conveyor } = job;
  const liners = [conveyor.liner, ...job.relines.map(({ liner }) => liner)];
  const screws = [conveyor.screw, ...(job.screwChange ? [job.screwChange.screw] : [])];
  return (
    isPlausible('conveyor length', conveyor.length.value) &&
    isPlausible('incline', Math.abs(conveyor.incline.value)) &&
    liners.every(
      (liner) =>
        linedSection(conveyor, liner) !== undefined &&
        liner.panelLengths.every((length) => isPlausible('panel length', length.value)) &&
        isLiner(liner),
    ) &&
    screws.every(isScrew)
  );
}

function isLiner({ condemn, thickness, panelTolerance, density }: LinerSpecification): boolean {
  return (
    condemn.value < thickness.value &&
    panelTolerance.value < 100 &&
    isPlausible('bulk density', density.value)
  );
}

function isScrew({
  outsideDiameter,
  pitch,
  flight,
  innerFlight,
  kind,
  density,
}: ScrewSpecification): boolean {
  const outside = outsideDiameter.value;
  if (
    !isPlausible('outside diameter', outside) ||
    !isPlausible('screw pitch', pitch.value) ||
    !(density.value > 0)
  )
    return false;
  if (kind.kind === 'shafted' && !(kind.shaft.value < outside)) return false;
  if (
    flight &&
    !(isPlausible('flight thickness', flight.thickness.value) && 2 * flight.width.value < outside)
  )
    return false;
  return (
    !innerFlight ||
    (innerFlight.inside.value < innerFlight.outside.value && innerFlight.outside.value < outside)
  );
}
