// Who does what when: the plan of a job. Where the author wrote an order, it is timed as written; where not, one is proposed
// that obeys everything the order checker knows (precedence.ts turns the checker round, so the two cannot disagree), as short
// as can be found for the crews, access units and shifts at hand, with a proven lower bound. What stands in the way is listed
// with what would do; a plan still comes back.

import type { Estate } from '../model/estate.js';
import type { Job } from '../model/job.js';
import type { WorkItem } from '../model/plant.js';
import { checkOrder } from '../order/check-order.js';
import { restAfter, usualCooling } from '../order/rest.js';
import { sequenceOf } from '../order/sequence.js';
import { formatHours } from '../units/format.js';
import { arrange, byStart, chainOf } from './arrange.js';
import type { JobPlan } from './job-plan.js';
import { layOver, type Arranged, type LaidOver } from './lay-over.js';
import { planProblems } from './plan-problems.js';
import {
  fitting,
  mostSteps,
  mostTeams,
  planningBasis,
  waysBy,
  type PlanningBasis,
} from './planning-basis.js';
import { proposeSteps } from './proposed-steps.js';
import { repeatsOf, withRepeatedTests } from './repeated-tests.js';
import { between } from './scheduling/clock.js';
import { isElsewhere, type ScheduleProblem, type TimeGap } from './schedule-jobs.js';
import { scheduledBefore } from './scheduled-before.js';
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
  const { arranged, laid } = scheduleOf(basis, effort, tooMany);
  const order = byStart(laid);
  const rows = arrange(basis, laid, order, proposal !== undefined);
  const written: Job =
    proposal && rows.length > 0
      ? { ...job, order: { steps: rows.map((each) => each.step), origin: job.nameOrigin } }
      : job;
  const planned = withRepeatedTests(job, rows, laid, basis.calendar);
  const position = (p: number): number => planned.position[p] ?? p;
  const plan = {
    job,
    order: job.order ? ('as written' as const) : ('proposed' as const),
    steps: planned.steps,
    ...timesOf(basis, arranged, laid),
    criticalPath: chainOf(rows).map(position),
    longerThanShift: rows.flatMap((each, p) =>
      basis.rules.tooLong.some((i) => order[p] === i) && each.finish > each.start ? [position(p)] : [],
    ),
    repeatGasTests: repeatsOf(job, planned.steps),
    everybodyOut: basis.rules.axis.lost
      .filter(({ to }) => planned.steps.some(({ repeat, start }) => repeat && start * minutes >= to - 1e-6))
      .map(({ from, to }) => ({ from: from / minutes, to: to / minutes })),
    runs: proposal?.runs ?? [],
    lifts: basis.lifts,
    defaults: defaultsOf(basis, laid),
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
    shorten: looksFurther ? shorterWith(basis, arranged.makespan) : [],
  };
}

interface Scheduled {
  /** In net time, and laid over the shifts. */
  readonly arranged: Arranged;
  readonly laid: LaidOver;
}

function scheduleOf(basis: PlanningBasis, effort: PlanEffort, tooMany: boolean): Scheduled {
  const { job, steps, ways, waits, apart, teams, rules } = basis;
  const listed = (because: string): Scheduled => {
    const all = { ...rules, handBack: [] };
    const arranged = inLine(asProblem(steps, ways, waits, apart, teams, all), because);
    return { arranged, laid: layOver(arranged, steps, ways, all) };
  };
  if (tooMany) return listed('there is too much of it to be scheduled');
  // The order of a circle is read with one of its waits left out: nothing could be proven of what was written.
  const circular = job.order !== undefined && sequenceOf(steps).circles.length > 0;
  const arranged = circular
    ? undefined
    : scheduledBefore(asProblem(steps, ways, waits, apart, teams, rules), {
        ...usualEffort(steps.length, effort),
        cost: (timing) => accessMoves(rules, ways, timing),
      });
  return arranged?.kind === 'schedule'
    ? { arranged, laid: layOver(arranged, steps, ways, rules) }
    : listed('the order goes in a circle, so nothing is proven');
}

/** How long it takes, how short it could be, and what of it lies too far apart; hours. */
function timesOf(
  { rules, ways, calendar }: PlanningBasis,
  arranged: Arranged,
  schedule: LaidOver,
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
    boundBecause: arranged.because,
    gap: schedule.lowerBound > 0 ? schedule.makespan / schedule.lowerBound - 1 : 0,
    optimal: arranged.optimal,
    openTooLong: openBeyond(rules.covers, arranged) / minutes,
    watchTooLate: watchedTooLate(rules, arranged, schedule) / minutes,
    accessMoves: accessMoves(rules, ways, schedule),
    available: calendar.available,
    finish: calendar.finishAt(duration),
  };
}

function shorterWith(basis: PlanningBasis, makespan: number): JobPlan['shorten'] {
  const { job, steps, waits, apart, rules } = basis;
  const withTeamsOf = (more: Job): ScheduleProblem => {
    const teams = teamsOf(more);
    const ways = fitting(waysBy(teams, { ...basis, job: more }), steps, rules.axis);
    return asProblem(steps, ways, waits, apart, teams, rules);
  };
  return whatShortens(job, withTeamsOf, makespan);
}

/** For orders that go in circles or are too long: one step after another as listed, so that there is still something to look at. */
function inLine(problem: ScheduleProblem, because: string): Arranged {
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

/** By how many net minutes covers lie open too long before somebody works under them, in all. */
function openBeyond(gaps: readonly TimeGap[], { start, finish }: Arranged): number {
  return gaps.reduce(
    (sum, { first, then, most = Infinity }) =>
      sum + Math.max(0, (start[then] ?? 0) - (finish[first] ?? 0) - most),
    0,
  );
}

/**
 * By how much watches begin too late by the clock, in all. Whether one does is judged as the schedule was made, between tests of
 * the air; how late is told as it will be: the tests that lie between are time in which nobody watches.
 */
function watchedTooLate(rules: TimeRules, net: Arranged, laid: LaidOver): number {
  const { axis } = rules;
  const breaks = axis.pauses.filter(({ at }) => axis.breaks.includes(at));
  return rules.watches.reduce((sum, { first, then, mostClock = Infinity }) => {
    const late = between(breaks, net.finish[first] ?? 0, net.start[then] ?? 0) - mostClock;
    if (late <= 0) return sum;
    return sum + between(axis.nights, laid.finish[first] ?? 0, laid.start[then] ?? 0) - mostClock;
  }, 0);
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

/** True where a crane lifts from more than one stand. */
function changesStands({ stands }: TimeRules): boolean {
  const first = new Map<string, Extent>();
  return stands.some((step) =>
    [...step].some(([name, place]) => {
      const known = first.get(name) ?? place;
      first.set(name, known);
      return isElsewhere(known, place) || place[1] - place[0] > 1;
    }),
  );
}

/** What was taken because nobody stated it. */
function defaultsOf(basis: PlanningBasis, schedule: LaidOver): string[] {
  const { job, steps, ground, works, ways, calendar, teams, lifts, rules } = basis;
  const moves = rules.moveAssumed ? accessMoves(rules, ways, schedule) : 0;
  const moved: readonly WorkItem[] = moves > 0 ? ['access move'] : [];
  const craned: readonly WorkItem[] = rules.craneMoveAssumed && changesStands(rules) ? ['crane move'] : [];
  const items: readonly WorkItem[] = [
    ...new Set([...works.flatMap((work) => work.defaults), ...moved, ...craned]),
  ];
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
    ...(steps.some((step) => restAfter(ground, step)?.assumed)
      ? [`A welded patch cools for ${formatHours(usualCooling)} before anybody works there, a judgement.`]
      : []),
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
