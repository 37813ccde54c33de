// The check of a rule that reports one kind of thing that is wrong with a written order of work. The order is judged once for
// all these rules, and again only when the job, its conveyor or what is fitted there has changed.

import type { Estate } from '../../domain/model/estate.js';
import type { Job } from '../../domain/model/job.js';
import type { Origin } from '../../domain/model/origin.js';
import { changeJob } from '../../domain/order/change-steps.js';
import { canBeBuilt, checkOrder } from '../../domain/order/check-order.js';
import { editsOf } from '../../domain/order/edits.js';
import type { Violation, ViolationKind } from '../../domain/order/violation.js';
import { sayStep } from '../../domain/order/words.js';
import { hasSizesToPlanWith } from '../evidence/sizes-to-plan-with.js';
import type { Fix, Found } from '../finding.js';
import type { RuleInput } from '../rule.js';
import { onceAJob } from './once-a-job.js';

export function onViolation(kind: ViolationKind) {
  return function* ({ estate }: RuleInput): Iterable<Found> {
    for (const job of estate.jobs) {
      const violations = job.order && hasSizesToPlanWith(job) ? judged(job, estate) : [];
      for (const violation of violations) {
        if (violation.kind === kind) yield said(job, estate, violation, violations.length === 1);
      }
    }
  };
}

function said(job: Job, estate: Estate, violation: Violation, alone: boolean): Found {
  // Where nothing else is wrong, a repair that makes something else wrong is not offered.
  const sound = alone ? violation.repairs.filter((repair) => repair.changes.length > 0 && canBeBuilt(changeJob(job, repair.changes), estate)) : [];
  const edited = (sound.length > 0 ? sound : violation.repairs).flatMap((repair) => {
    const edits = editsOf(job, repair.changes);
    return edits.length > 0 ? [{ title: repair.title, edits }] : [];
  });
  const advice = violation.repairs.find((repair) => repair.changes.length === 0)?.title;
  const first = violation.repairs[0]?.title;
  return {
    origin: violation.step ? violation.origin : headOf(violation.origin),
    message: violation.message,
    why: violation.reason,
    ...(first === undefined ? {} : { todo: `${first}.${advice !== undefined && advice !== first ? ` Or: ${advice}.` : ''}` }),
    related: violation.conflicts.map(({ step, words }) => ({ origin: step.actionOrigin, message: `"${sayStep(step)}": ${words}` })),
    fixes: edited.map((fix, index): Fix => (index === 0 ? { ...fix, preferred: true } : fix)),
  };
}

/** The word `order`, not the whole block. */
function headOf(order: Origin): Origin {
  return { ...order, end: Math.min(order.end, order.start + 'order'.length) };
}

const judged = onceAJob((job, estate): readonly Violation[] => checkOrder(job, estate));
