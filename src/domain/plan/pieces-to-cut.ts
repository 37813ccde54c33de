// Which pieces of liner does a job need, and how long may each have to be? A panel is cut to its length; the closing panel to the
// gap as it is measured, and the panels before it may all have come short: the gap is then longer by n tolerances and the
// measuring error, less what the break at which the front closes takes. A gap in the joints is shared by the two panels beside it.

import type { Job } from '../model/job.js';
import type { LinerSpecification } from '../model/specifications.js';
import { within, type Area, type Ground, type RunGround, type RunPanel } from '../order/ground.js';

export interface PieceToCut {
  readonly run: number;
  readonly panel: number;
  /** As laid out, mm. */
  readonly length: number;
  /** The longest it may have to be, mm: at least `length`, and more for a closing panel only. */
  readonly longest: number;
  /** The last of its front, cut to the measured hole. */
  readonly closing: boolean;
}

/** Panels of one liner share stock. */
export function piecesToCut(
  job: Job,
  ground: Ground,
  areas: readonly Area[],
): ReadonlyMap<LinerSpecification, readonly PieceToCut[]> {
  const byLiner = new Map<LinerSpecification, PieceToCut[]>();
  for (const run of ground.runs) {
    const panels = within(run.panels, areas);
    const last = run.start === 'tail' ? panels.at(-1) : panels[0];
    for (const piece of panels) {
      const closing = piece === last;
      const length = round(piece.length);
      const beyond = closing ? longerBy(job, run, panels.length, piece) : 0;
      byLiner.set(run.liner, [
        ...(byLiner.get(run.liner) ?? []),
        { run: run.run.number, panel: piece.panel, closing, length, longest: round(length + beyond) },
      ]);
    }
  }
  return byLiner;
}

function longerBy(
  job: Job,
  { run, liner, start, panels }: RunGround,
  fitted: number,
  last: RunPanel,
): number {
  const ends =
    start === 'tail' ? { at: run.headBreak, by: panels.at(-1) } : { at: run.tailBreak, by: panels[0] };
  const taken = last === ends.by ? ends.at.allowance.value : 0;
  return Math.max(0, fitted * liner.panelTolerance.value + job.measuringTolerance.value - taken);
}

function round(mm: number): number {
  return Math.round(mm * 1000) / 1000;
}
