// The lined trough of a conveyor as a cross-section, where its sizes make one: rules that compute from it stay silent on a
// liner of ten inches, which has a finding of its own.

import { linerSide } from '../../domain/model/liner-side.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { LinerSpecification, ScrewSpecification } from '../../domain/model/specifications.js';
import type { LinerSection } from '../../domain/geometry/trough.js';
import { radialClearance } from '../../domain/geometry/clearance.js';
import { isPlausible } from './plausible.js';

/** All mm; undefined where a size is beyond belief. */
export function linedSection(conveyor: Conveyor, liner: LinerSpecification): LinerSection | undefined {
  const { trough } = conveyor;
  const insideRadius = trough.insideRadius.value;
  const sideHeight = linerSide(conveyor).value;
  const thickness = liner.thickness.value;
  const believable =
    isPlausible('trough inside radius', insideRadius) &&
    isPlausible('liner thickness', thickness) &&
    isPlausible('trough side height', sideHeight) &&
    thickness < insideRadius;
  return believable ? { insideRadius, sideHeight, thickness } : undefined;
}

/** Radius of the liner less radius of the screw, mm, negative where the screw does not fit; undefined as above. */
export function clearanceOf(
  conveyor: Conveyor,
  liner: LinerSpecification,
  screw: ScrewSpecification,
): number | undefined {
  const section = linedSection(conveyor, liner);
  const diameter = screw.outsideDiameter.value;
  return section && isPlausible('outside diameter', diameter)
    ? radialClearance(section.insideRadius, section.thickness, diameter)
    : undefined;
}
