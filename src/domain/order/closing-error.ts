// How far out the last panel of a front can be: lengths add up, and no panel gives any back.
// Worst case = panels × panel tolerance + site measuring tolerance + growth (joint policy gap only);
// root-sum-square = √(panels × tolerance² + measuring²) + growth, growth being a shift and not a chance error.
// Growth = Δα · length · ΔT against the trough, from the coldest fitting to the warmest service declared, less what the gaps between
// the panels of the front are there to take: only what is left when they have closed arrives at the closing panel.

import { growthAgainst } from '../geometry/thermal.js';
import { troughSteel } from '../model/trough-steel.js';
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
  const growth =
    liner.joint.policy === 'gap' ? growthLeft(job, liner, length, liner.joint.gap.value, panels) : 0;
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
function growthLeft(
  job: Job,
  liner: LinerSpecification,
  length: number,
  gap: number,
  panels: number,
): number | undefined {
  const { conveyor } = job;
  const fitting = job.fittingTemperature ?? conveyor.fittingTemperature ?? conveyor.plant.fittingTemperature;
  const service = conveyor.serviceTemperature ?? conveyor.plant.serviceTemperature;
  if (!fitting || !service) return undefined;
  const steel = troughSteel(conveyor.trough.material).expansion;
  const rise = service.to.value - fitting.from.value;
  const grown = growthAgainst(length, liner.expansion.value, steel, rise);
  return Math.max(0, grown - Math.max(0, panels - 1) * gap);
}
