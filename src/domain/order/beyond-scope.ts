// Which panels does an order renew that the job does not ask for? The scope is what the records, the report and the options go by;
// the order is what is done and bought. Where the two differ, one of them is wrong. What of the scope no step does, the walk tells.

import type { Job } from '../model/job.js';
import { areasOf, within, type Ground, type RunGround } from './ground.js';
import { concerns } from './layout.js';

export interface BeyondScope {
  readonly run: RunGround;
  /** By their numbers from the tail, first to last; never empty. */
  readonly panels: readonly number[];
  /** Those of the run that the scope does hold. */
  readonly asked: readonly number[];
  /** Position of the first step that works on them. */
  readonly step: number;
  /** What of the job's scope lies in that run. */
  readonly scope: Job['relines'];
}

/** Stripped or fitted; one entry a run, from the tail. */
export function beyondScope(ground: Ground): readonly BeyondScope[] {
  const { job, steps, runs, scope } = ground;
  return runs.flatMap((run): BeyondScope | readonly never[] => {
    const asked = new Set(within(run.panels, scope));
    const more = (i: number): readonly number[] =>
      within(run.panels, areasOf(ground, i)).flatMap((piece) => (asked.has(piece) ? [] : piece.panel));
    const worked = steps.flatMap(({ action }, i) => (action === 'strip' || action === 'fit' ? i : []));
    const panels = [...new Set(worked.flatMap(more))].sort((a, b) => a - b);
    const step = worked.find((i) => more(i).length > 0);
    if (step === undefined) return [];
    return {
      run,
      panels,
      asked: [...asked].map(({ panel }) => panel),
      step,
      scope: job.relines.filter(({ stretch }) => concerns(job, stretch, run.run)),
    };
  });
}
