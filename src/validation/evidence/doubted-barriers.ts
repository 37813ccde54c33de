// Which gates does an order shut above people, of which something is open that puts in doubt whether they hold?

import { gateOf } from '../../domain/conditions/at-a-gate.js';
import { openConditions, type SeenLine } from '../../domain/conditions/follow-up.js';
import type { Estate } from '../../domain/model/estate.js';
import type { Job } from '../../domain/model/job.js';
import type { NameUse } from '../../domain/model/stated.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import { hasPeopleBelow } from '../../domain/order/gates-above.js';
import { groundOf } from '../../domain/order/ground.js';
import { hasSizesToPlanWith } from './sizes-to-plan-with.js';

export interface DoubtedBarrier {
  /** Named by the step that shuts it. */
  readonly gate: NameUse;
  readonly job: Job;
  readonly seen: SeenLine;
  /** What was said of it before, in other words, oldest first; and when it was seen first. */
  readonly earlier: readonly SeenLine[];
  readonly since: CalendarDay;
}

export function* doubtedBarriers(estate: Estate): Iterable<DoubtedBarrier> {
  for (const job of estate.jobs) {
    const steps = job.order?.steps ?? [];
    if (!steps.some(({ action }) => action === 'gate shut') || !hasSizesToPlanWith(job)) continue;
    for (const { first, last, earlier } of openConditions(estate, job.conveyor)) {
      const name = gateOf(job.conveyor, last.line)?.name;
      const at = steps.findIndex((step) => step.action === 'gate shut' && step.gate?.name === name);
      const gate = steps[at]?.gate;
      // Refitted by the same order, it has been through its whole stroke.
      const refitted = steps
        .slice(0, at)
        .some((step) => step.action === 'gate on' && step.gate?.name === name);
      if (gate && !refitted && hasPeopleBelow(groundOf(job, steps, estate), gate.name))
        yield { gate, job, seen: last, earlier, since: first.record.date.day };
    }
  }
}
