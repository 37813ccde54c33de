// The check of a rule that reports one kind of thing that stands in the way of a job's plan.

import type { Estate } from '../../domain/model/estate.js';
import type { Job } from '../../domain/model/job.js';
import type { Origin } from '../../domain/model/origin.js';
import { planJob } from '../../domain/plan/plan-job.js';
import { hasSizesToPlanWith } from '../evidence/sizes-to-plan-with.js';
import type { Fix, Found } from '../finding.js';
import type { RuleInput } from '../rule.js';
import { onceAJob } from './once-a-job.js';
import { counted } from '../../domain/units/wording.js';
import type { JobPlan, PlanProblem } from '../../domain/plan/job-plan.js';

export function onPlan(
  kind: PlanProblem['kind'],
  fixesOf: (job: Job, plan: JobPlan) => readonly Fix[] = () => [],
) {
  return function* ({ estate }: RuleInput): Iterable<Found> {
    for (const job of estate.jobs) {
      if (!hasSizesToPlanWith(job)) continue;
      const plan = planned(job, estate);
      const [first, ...more] = plan.problems.filter((problem) => problem.kind === kind);
      if (!first) continue;
      const others = more.length === 0 ? '' : ` The same goes for ${counted(more.length, 'more case')}.`;
      yield {
        origin: placeOf(job, first),
        message: `Job ${job.name}: ${first.message}${others}`,
        todo: first.todo,
        fixes: fixesOf(job, plan),
      };
    }
  };
}

/**
 * Of a job that writes no order: what is proposed breaks a rule of orders, or fits no shift. Of a written order each of these
 * has a rule of its own.
 */
export function* onProposal({ estate }: RuleInput): Iterable<Found> {
  for (const job of estate.jobs) {
    if (job.order || !hasSizesToPlanWith(job)) continue;
    const { problems } = planned(job, estate);
    const [first, ...more] = problems.filter(({ kind, stops }) => stops && ofProposals.has(kind));
    // A piece over every limit is told where the limit stands.
    if (!first || problems.some(({ kind }) => kind === 'lift over limit')) continue;
    const others =
      more.length === 0 ? '' : ` ${counted(more.length, 'more step')} cannot be done as proposed either.`;
    yield {
      origin: job.nameOrigin,
      message: `The work proposed for job ${job.name} cannot be done: ${first.message.replace(/\.$/, '')}.${others}`,
      todo: first.todo,
    };
  }
}

const ofProposals: ReadonlySet<PlanProblem['kind']> = new Set<PlanProblem['kind']>([
  'order',
  'no shift',
  'crew of nobody',
  'longer than a shift',
  'covers open too long',
  'fire watch too late',
  'too many',
]);

/** A lift over the limit is told at the limit. */
function placeOf(job: Job, { kind, origin }: PlanProblem): Origin {
  const atJob = origin === job.nameOrigin;
  return kind === 'lift over limit' && atJob && job.liftLimit ? job.liftLimit.origin : origin;
}

/** Quickly first; where it does not fit its window with the effort of a pack, whose hours are then told. */
const planned = onceAJob((job: Job, estate: Estate): JobPlan => {
  const plan = planJob(job, estate, { quick: true, shakes: 5, nodes: 0 });
  const { available, duration, optimal } = plan;
  return available !== undefined && duration > available && !optimal
    ? planJob(job, estate, { quick: true })
    : plan;
});
