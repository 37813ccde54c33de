// Who does what when: the plan of a job. Where the author wrote an order, it is timed as written; where not, one is proposed
// that obeys everything the order checker knows (precedence.ts turns the checker round, so the two cannot disagree), as short
// as can be found for the crews, access units and shifts at hand, with a proven lower bound. What stands in the way is listed
// with what would do; a plan still comes back.

import type { Estate } from '../model/estate.js';
import type { Job } from '../model/job.js';
import type { WorkItem } from '../model/plant.js';
import { checkOrder } from '../order/check-order.js';
import { arrange, byStart, chainOf, type TimedSchedule } from './arrange.js';
import type { JobPlan, PlannedStep } from './job-plan.js';
import { planProblems } from './plan-problems.js';
import { mostSteps, mostTeams, planningBasis, waysBy, type PlanningBasis } from './planning-basis.js';
import { proposeSteps } from './proposed-steps.js';
import { isElsewhere, scheduleJobs, type ScheduleProblem, type TimeGap } from './schedule-jobs.js';
import { teamsOf, type Way } from './teams.js';
import type { Extent, TimeRules } from './time-rules.js';
import { asProblem, whatShortens } from './what-shortens.js';

/** How hard to look; the editor looks less hard than a report. */
export interface PlanEffort {
  readonly shakes?: number;
  readonly nodes?: number;
  /** Leave out what would shorten the plan. */
  readonly quick?: boolean;
}

const minutes = 60;

export function planJob(job: Job, estate: Estate, effort: PlanEffort = {}): JobPlan {
  const proposal = job.order ? undefined : proposeSteps(job, estate);
  const basis = planningBasis(job, job.order?.steps ?? proposal?.steps ?? [], estate);
  const tooMany = basis.steps.length > mostSteps || basis.teams.length > mostTeams;
  const schedule = scheduleOf(basis, effort, tooMany);
  const order = byStart(schedule);
  const planned = arrange(basis, schedule, order, proposal !== undefined);
  const written: Job =
    proposal && planned.length > 0
      ? { ...job, order: { steps: planned.map((each) => each.step), origin: job.nameOrigin } }
      : job;
  const plan = {
    job,
    order: job.order ? ('as written' as const) : ('proposed' as const),
    steps: planned,
    ...timesOf(basis, schedule),
    criticalPath: chainOf(planned),
    longerThanShift: planned.flatMap((each, p) =>
      basis.rules.tooLong.some((i) => order[p] === i) && each.finish > each.start ? [p] : [],
    ),
    repeatGasTests: repeatTests(job, planned),
    runs: proposal?.runs ?? [],
    lifts: basis.lifts,
    defaults: defaultsOf(basis, schedule),
    ground: basis.ground,
    violations: checkOrder(written, estate),
  };
  const limits = tooMany ? { steps: mostSteps, teams: mostTeams } : undefined;
  const problems = planProblems(plan, basis.calendar, basis.teams, limits);
  const looksFurther = !effort.quick && !tooMany && basis.steps.length > 0;
  return {
    ...plan,
    problems,
    buildable: !problems.some((each) => each.stops),
    shorten: looksFurther ? shorterWith(basis, schedule.makespan) : [],
  };
}

function scheduleOf(basis: PlanningBasis, effort: PlanEffort, tooMany: boolean): TimedSchedule {
  const { steps, ways, waits, apart, teams, rules } = basis;
  const problem = asProblem(steps, ways, waits, apart, teams, rules);
  if (tooMany) return inLine(problem, 'there is too much of it to be scheduled');
  const schedule = scheduleJobs(problem, {
    ...usualEffort(steps.length, effort),
    cost: (timing) => accessMoves(rules, ways, timing),
  });
  return schedule.kind === 'schedule' ? schedule : inLine(problem, 'the order goes in a circle');
}

/** How long it takes, how short it could be, and what of it lies too far apart; hours. */
function timesOf(
  { rules, ways, calendar }: PlanningBasis,
  schedule: TimedSchedule,
): Pick<
  JobPlan,
  | 'duration'
  | 'lowerBound'
  | 'boundBecause'
  | 'gap'
  | 'optimal'
  | 'openTooLong'
  | 'watchTooLate'
  | 'accessMoves'
  | 'available'
  | 'finish'
> {
  const duration = schedule.makespan / minutes;
  return {
    duration,
    lowerBound: schedule.lowerBound / minutes,
    boundBecause: schedule.because,
    gap: schedule.lowerBound > 0 ? schedule.makespan / schedule.lowerBound - 1 : 0,
    optimal: schedule.optimal,
    openTooLong: beyond(rules.covers, schedule) / minutes,
    watchTooLate: beyond(rules.watches, schedule) / minutes,
    accessMoves: accessMoves(rules, ways, schedule),
    available: calendar.available,
    finish: calendar.finishAt(duration),
  };
}

function shorterWith(basis: PlanningBasis, makespan: number): JobPlan['shorten'] {
  const { job, steps, waits, apart, rules } = basis;
  const withTeamsOf = (more: Job): ScheduleProblem => {
    const teams = teamsOf(more);
    return asProblem(steps, waysBy(teams, { ...basis, job: more }), waits, apart, teams, rules);
  };
  return whatShortens(job, withTeamsOf, makespan);
}

/** For orders that go in circles or are too long: one step after another as listed, so that there is still something to look at. */
function inLine(problem: ScheduleProblem, because: string): TimedSchedule {
  let at = 0;
  const start = problem.activities.map(({ modes }) => {
    const begins = at;
    at += modes[0]?.duration ?? 0;
    return begins;
  });
  return {
    kind: 'schedule',
    makespan: at,
    start,
    finish: start.map((each, i) => each + (problem.activities[i]?.modes[0]?.duration ?? 0)),
    mode: start.map(() => 0),
    lowerBound: 0,
    because,
    optimal: false,
    nodes: 0,
    tooFarApart: 0,
  };
}

/** By how much the later steps begin too late, in all. */
function beyond(gaps: readonly TimeGap[], { start, finish }: TimedSchedule): number {
  return gaps.reduce(
    (sum, { first, then, most = Infinity }) =>
      sum + Math.max(0, (start[then] ?? 0) - (finish[first] ?? 0) - most),
    0,
  );
}

/** How often each mobile platform goes to another stretch. */
function accessMoves(
  rules: TimeRules,
  ways: readonly (readonly Way[])[],
  timing: { readonly start: ArrayLike<number>; readonly mode: ArrayLike<number> },
): number {
  const byUnit = new Map<string, { at: number; extent: Extent }[]>();
  rules.extents.forEach((extent, i) => {
    const unit = ways[i]?.[timing.mode[i] ?? 0]?.unit;
    if (unit === undefined || !extent) return;
    byUnit.set(unit, [...(byUnit.get(unit) ?? []), { at: timing.start[i] ?? 0, extent }]);
  });
  let count = 0;
  for (const visits of byUnit.values()) {
    visits.sort((a, b) => a.at - b.at);
    visits.forEach(({ extent }, k) => {
      const before = visits[k - 1]?.extent;
      if (before && isElsewhere(before, extent)) count++;
    });
  }
  return count;
}

/** While people work in the trough of an enclosed conveyor the air is tested again at the plant's interval. */
function repeatTests(job: Job, planned: readonly PlannedStep[]): JobPlan['repeatGasTests'] {
  const every = job.conveyor.plant.gasTestInterval?.value;
  if (!job.conveyor.confinedSpace || every === undefined || every <= 0) return undefined;
  const first = planned.find((each) => each.step.action === 'gas test');
  const last = planned.find((each) => each.step.action === 'remove isolation');
  if (!first || !last) return undefined;
  return { every, times: Math.max(0, Math.ceil((last.start - first.finish) / every) - 1) };
}

/** What was taken because nobody stated it. */
function defaultsOf(basis: PlanningBasis, schedule: TimedSchedule): string[] {
  const { job, works, ways, calendar, teams, lifts, rules } = basis;
  const moves = rules.moveAssumed ? accessMoves(rules, ways, schedule) : 0;
  const moved: readonly WorkItem[] = moves > 0 ? ['access move'] : [];
  const items: readonly WorkItem[] = [...new Set([...works.flatMap((work) => work.defaults), ...moved])];
  const unitTimes =
    items.length > 0
      ? [
          `Unit times of ${job.conveyor.plant.name} are not declared for ${items.join(', ')}: ` +
            'usual ones are taken, a judgement.',
        ]
      : [];
  const { sawKerf, minimumClosingPiece, measuringTolerance, jointClearance } = job;
  return [
    ...unitTimes,
    ...[calendar, ...teams, lifts.slingAngle].flatMap((each) => each.assumed ?? []),
    ...[sawKerf, minimumClosingPiece, measuringTolerance, jointClearance].flatMap(
      (each) => each.assumed ?? [],
    ),
  ];
}

/** About the same work for long orders as for short ones: a second or so. */
function usualEffort(
  steps: number,
  { shakes, nodes }: PlanEffort,
): { readonly shakes: number; readonly nodes: number } {
  return {
    shakes: shakes ?? Math.min(4000, Math.round(3_000_000 / (1 + steps ** 2))),
    nodes: nodes ?? (steps <= 60 ? 3000 : 500),
  };
}
