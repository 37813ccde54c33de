// Which step of an order takes the material out before power is taken away? `empty` does, and so does a run without feed that
// stands before the isolation: whoever runs a trough empty has emptied it. After the work `run empty` is the trial run.

import type { Step } from '../model/job.js';

/** The last step before isolating that leaves the trough empty; undefined where none does, or where it is run loaded after it. */
export function emptiedBy(steps: readonly Step[]): Step | undefined {
  const isolate = steps.findIndex(({ action }) => action === 'isolate');
  const before = isolate < 0 ? steps : steps.slice(0, isolate);
  const last = before.findLast(
    ({ action }) => action === 'empty' || action === 'run empty' || action === 'run loaded',
  );
  return last?.action === 'run loaded' ? undefined : last;
}
