// From which end panels go in where the author does not say, and whether the lower end of a run carries them.
// Common practice, no source: on a slope work starts at the upper end, each panel pushed up against the last; it starts
// at the lower end only where that end carries the panels. A panel slides where the slope is steeper than friction: tan(slope) > μ.

import type { Break, Conveyor } from '../model/conveyor.js';
import type { Step } from '../model/job.js';
import { usualStart } from '../model/run-layout.js';
import type { Run } from '../model/runs.js';

export type End = 'head' | 'tail';

/** Friction of PE1000 on dry steel; judgement, towards the low end of data sheets (0.15 to 0.25), so that more slopes count as slippery. */
export const slidingFriction = 0.15;

/** The higher end; the head where the conveyor is level. */
export function uphillEnd(conveyor: Conveyor): End {
  return conveyor.incline.value < 0 ? 'tail' : 'head';
}

/** True on a slope on which a loose panel slides. */
export function isSlippery(conveyor: Conveyor): boolean {
  return Math.tan((Math.abs(conveyor.incline.value) * Math.PI) / 180) > slidingFriction;
}

/** The end a `fit` step starts from in a run; `assumed` says why where the author left it out. */
export function startOf(
  step: Pick<Step, 'start'>,
  run: Run,
): { readonly start: End; readonly assumed?: string } {
  return step.start ? { start: step.start } : usualStartOf(run);
}

/** The custom for a run, with its reason. */
export function usualStartOf(run: Run): { readonly start: End; readonly assumed: string } {
  const start = usualStart(run);
  const uphill = uphillEnd(run.conveyor);
  if (start !== uphill) {
    const closing = start === 'tail' ? run.headBreak : run.tailBreak;
    return { start, assumed: `from the ${start}: only ${closing.name} takes up the length error at the end` };
  }
  return {
    start,
    assumed:
      run.conveyor.incline.value === 0
        ? `from the ${start}: the custom where nothing is said`
        : `from the ${start}: top down on an incline`,
  };
}

/** An end that a panel can rest on: a plate or ring across the trough, or a break that leaves the liner no room at all. */
export function holdsPanels(place: Break): boolean {
  return place.kind === 'end plate' || place.kind === 'joint ring' || place.allowance.value === 0;
}

/** False at the lower end of a slope that gives panels nothing to rest on: nobody fits from there. */
export function canStartAt(run: Run, start: End): boolean {
  const { conveyor } = run;
  if (!isSlippery(conveyor) || start === uphillEnd(conveyor)) return true;
  return holdsPanels(start === 'tail' ? run.tailBreak : run.headBreak) || restsAt(run, start);
}

/** How far into the run a stop may stand and still carry the first panel, mm; judgement. */
const restReach = 50;

/** A declared stop at that end of the run: panels fitted from there rest on it. */
export function restsAt(run: Run, start: End): boolean {
  const place = start === 'tail' ? run.tailBreak : run.headBreak;
  const edge = start === 'tail' ? run.from : run.to;
  const low = Math.min(place.from.value, edge - (start === 'head' ? restReach : 0));
  const high = Math.max(place.to.value, edge + (start === 'tail' ? restReach : 0));
  return run.conveyor.rests.some((rest) => rest.from.value >= low - 1 && rest.from.value <= high + 1);
}
