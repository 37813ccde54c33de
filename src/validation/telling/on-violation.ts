// The check of a rule that reports one kind of thing that is wrong with a written order of work. The order is judged once for
// all these rules, and again only when the job, its conveyor or what is fitted there has changed.

import type { Estate } from '../../domain/model/estate.js';
import type { Job } from '../../domain/model/job.js';
import type { Origin } from '../../domain/model/origin.js';
import { changeJob } from '../../domain/order/change-steps.js';
import { canBeBuilt, checkOrder } from '../../domain/order/check-order.js';
import { editsOf } from '../../domain/order/edits.js';
import type { Repair, Violation, ViolationKind } from '../../domain/order/violation.js';
import { sayStep } from '../../domain/order/words.js';
import { hasSizesToPlanWith } from '../evidence/sizes-to-plan-with.js';
import type { Fix, Found } from '../finding.js';
import type { RuleInput } from '../rule.js';
import { onceAJob } from './once-a-job.js';
import { scopeToFollow } from './scope-and-order.js';

export function onViolation(...kinds: readonly ViolationKind[]) {
  return function* ({ estate }: RuleInput): Iterable<Found> {
    for (const job of estate.jobs) yield* violationsOf(job, estate, kinds);
  };
}

/** Of one job; none without an order. */
export function violationsOf(job: Job, estate: Estate, kinds: readonly ViolationKind[]): readonly Found[] {
  if (!job.order || !hasSizesToPlanWith(job)) return [];
  return judged(job, estate).flatMap(({ violation, found }) => (kinds.includes(violation.kind) ? found : []));
}

interface ToldViolation {
  readonly violation: Violation;
  readonly found: Found;
}

const judged = onceAJob((job: Job, estate: Estate): readonly ToldViolation[] => {
  const violations = checkOrder(job, estate);
  // One repair in an order is taken without asking, and only one that leaves nothing wrong: two might undo each other.
  let taken = false;
  return violations.map((violation) => {
    const repairs = violation.repairs.filter((repair) => repair.changes.length > 0);
    const whole = repairs.filter((repair) => canBeBuilt(changeJob(job, repair.changes), estate));
    // Where nothing else is wrong, a repair that makes something else wrong is not offered.
    const offered =
      violations.length === 1 && whole.length > 0
        ? whole
        : [...whole, ...repairs.filter((repair) => !whole.includes(repair))];
    const first = whole[0];
    const preferred = taken || first?.asks ? undefined : first;
    if (preferred) taken = true;
    return {
      violation,
      found: say(
        violation,
        offered.flatMap((repair) => fixOf(job, estate, repair, repair === preferred)),
      ),
    };
  });
});

function fixOf(job: Job, estate: Estate, { title, changes }: Repair, preferred: boolean): readonly Fix[] {
  const steps = editsOf(job, changes);
  const edits = steps.length > 0 ? [...scopeToFollow(job, changes, estate), ...steps] : [];
  return edits.length === 0 ? [] : [{ title, edits, ...(preferred ? { preferred } : {}) }];
}

function say(violation: Violation, fixes: readonly Fix[]): Found {
  const first = fixes[0]?.title ?? violation.repairs[0]?.title;
  const advice = violation.repairs.find((repair) => repair.changes.length === 0)?.title;
  return {
    origin: violation.step ? violation.origin : headOf(violation.origin),
    message: violation.message,
    why: violation.reason,
    ...(first === undefined
      ? {}
      : { todo: `${first}.${advice !== undefined && advice !== first ? ` Or: ${advice}.` : ''}` }),
    related: violation.conflicts.map(({ step, words }) => ({
      origin: step.actionOrigin,
      message: `"${sayStep(step)}": ${words}`,
    })),
    fixes,
  };
}

/** The word `order`, not the whole block. */
function headOf(order: Origin): Origin {
  return { ...order, end: Math.min(order.end, order.start + 'order'.length) };
}
