// How far out the last panel of a front can be: lengths add up, and no panel gives any back.
// Worst case = panels × panel tolerance + site measuring tolerance + free thermal growth (joint policy gap only);
// root-sum-square = √(panels × tolerance² + measuring²) + growth, growth being a shift and not a chance error.
// Free growth = α · length · ΔT, the largest from the declared fitting to the declared service temperatures.

import { freeGrowth } from '../geometry/thermal.js';
import type { Job } from '../model/job.js';
import type { Run } from '../model/runs.js';
import type { LinerSpecification } from '../model/specifications.js';
import type { ClosingError } from './violation.js';

/** `length` mm and `panels` fitted since the front started; `allowance` of the closing break, mm, undefined where there is none. */
export function closingError(
  job: Job,
  run: Run,
  liner: LinerSpecification,
  panel: number,
  panels: number,
  length: number,
  at: { readonly allowance: number; readonly name: string } | undefined,
): ClosingError {
  const panelTolerance = liner.panelTolerance.value;
  const measuringTolerance = job.measuringTolerance.value;
  const growth = liner.joint.policy === 'gap' ? growthInService(job, liner, length) : 0;
  return {
    run: run.label,
    panel,
    panels,
    panelTolerance,
    measuringTolerance,
    growth,
    worst: panels * panelTolerance + measuringTolerance + (growth ?? 0),
    rootSumSquare: Math.sqrt(panels * panelTolerance ** 2 + measuringTolerance ** 2) + (growth ?? 0),
    allowance: at?.allowance,
    ...(at ? { breakName: at.name } : {}),
  };
}

/** mm, never negative; undefined where fitting or service temperature is declared nowhere. */
function growthInService(job: Job, liner: LinerSpecification, length: number): number | undefined {
  const fitting =
    job.fittingTemperature ?? job.conveyor.fittingTemperature ?? job.conveyor.plant.fittingTemperature;
  const service = job.conveyor.serviceTemperature ?? job.conveyor.plant.serviceTemperature;
  if (!fitting || !service) return undefined;
  return Math.max(0, freeGrowth(length, liner.expansion.value, service.to.value - fitting.from.value));
}
