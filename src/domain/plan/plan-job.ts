// Who does what when: the plan of a job. Where the author wrote an order, it is timed as written; where not, one is proposed
// that obeys everything the order checker knows (precedence.ts turns the checker round, so the two cannot disagree), as short
// as can be found for the crews, access units and shifts at hand, with a proven lower bound. What stands in the way is listed
// with what would do; a plan still comes back.

import type { Estate } from '../model/estate.js';
import type { Job, Step } from '../model/job.js';
import type { WorkItem } from '../model/plant.js';
import { groundOf, type Ground } from '../order/ground.js';
import { apartPairs, precedenceOf } from '../order/precedence.js';
import { sequenceOf } from '../order/sequence.js';
import { checkOrder } from '../order/check-order.js';
import { floatsOf } from './floats.js';
import { liftsOf, type LiftTable } from './lifts.js';
import { namedSteps, waitsOf } from './named-steps.js';
import { planProblems } from './plan-problems.js';
import { proposeSteps } from './proposed-steps.js';
import {
  isElsewhere,
  scheduleJobs,
  type Schedule,
  type ScheduleProblem,
  type TimeGap,
} from './schedule-jobs.js';
import { teamsOf, waysOf, type Team, type Way } from './teams.js';
import { workOf, type Work } from './unit-times.js';
import { fittingWays, timeRules, type Extent, type TimeRules } from './time-rules.js';
import { asProblem, whatShortens } from './what-shortens.js';
import { workCalendar, type WorkCalendar } from './work-calendar.js';
import type { JobPlan, PlannedStep } from './job-plan.js';

/** How hard to look; the editor looks less hard than a report. */
export interface PlanEffort {
  readonly shakes?: number;
  readonly nodes?: number;
  /** Leave out what would shorten the plan. */
  readonly quick?: boolean;
}

const minutes = 60;
/** Beyond these a plan is a list: whoever has so much on one conveyor plans it as several jobs. */
const mostSteps = 2000;
const mostTeams = 200;

export function planJob(job: Job, estate: Estate, effort: PlanEffort = {}): JobPlan {
  const proposal = job.order ? undefined : proposeSteps(job, estate);
  const steps = job.order?.steps ?? proposal?.steps ?? [];
  const calendar = workCalendar(job);
  const teams = teamsOf(job);
  const { ground, waits, apart } = bindings(job, steps, estate);
  const relined = ground.scope.flatMap((area) =>
    ground.runs.map((run) => ({ run, from: area.from, to: area.to })),
  );
  const lifts = liftsOf(job, estate, relined);
  const works = steps.map((step, i) =>
    workOf(ground, step, ground.areas[i] ?? [], lifts.spiral?.pieces.length ?? 1),
  );
  const ways = steps.map((step, i) =>
    fittingWays(waysOf(job, step, ground.areas[i] ?? [], works[i] ?? noWork, teams), step, calendar),
  );
  const rules = timeRules(job, steps, ways, ground, waits, calendar);
  const problem = asProblem(steps, ways, waits, apart, teams, rules);
  const tooMany = steps.length > mostSteps || teams.length > mostTeams;
  const schedule: Schedule = tooMany
    ? { kind: 'circular' }
    : scheduleJobs(problem, {
        ...usualEffort(steps.length, effort),
        cost: (timing) => accessMoves(rules, ways, timing),
      });
  const arranged =
    schedule.kind === 'schedule'
      ? schedule
      : inLine(problem, tooMany ? 'there is too much of it to be scheduled' : 'the order goes in a circle');
  const order = byStart(arranged);
  const planned = arrange(
    job,
    steps,
    works,
    ways,
    arranged,
    order,
    waits,
    apart,
    calendar,
    rules,
    proposal !== undefined,
  );
  const written: Job =
    proposal && planned.length > 0
      ? { ...job, order: { steps: planned.map((each) => each.step), origin: job.nameOrigin } }
      : job;
  const violations = checkOrder(written, estate);
  const duration = arranged.makespan / minutes;
  const moves = accessMoves(rules, ways, arranged);
  const available = calendar.available;
  const found: Omit<JobPlan, 'problems' | 'buildable' | 'shorten'> = {
    job,
    order: job.order ? 'as written' : 'proposed',
    steps: planned,
    duration,
    lowerBound: arranged.lowerBound / minutes,
    boundBecause: arranged.because,
    gap: arranged.lowerBound > 0 ? arranged.makespan / arranged.lowerBound - 1 : 0,
    optimal: arranged.optimal,
    criticalPath: chainOf(planned),
    longerThanShift: planned.flatMap((each, p) =>
      rules.tooLong.some((i) => order[p] === i) && each.finish > each.start ? [p] : [],
    ),
    openTooLong: beyond(rules.covers, arranged) / minutes,
    watchTooLate: beyond(rules.watches, arranged) / minutes,
    accessMoves: moves,
    available,
    finish: calendar.finishAt(duration),
    repeatGasTests: repeatTests(job, planned),
    runs: proposal?.runs ?? [],
    lifts,
    defaults: defaultsOf(job, works, calendar, teams, lifts, rules, moves),
    ground,
    violations,
  };
  const problems = planProblems(
    found,
    calendar,
    teams,
    tooMany ? { steps: mostSteps, teams: mostTeams } : undefined,
  );
  return {
    ...found,
    problems,
    buildable: !problems.some((each) => each.stops),
    shorten:
      effort.quick || tooMany || steps.length === 0
        ? []
        : whatShortens(
            job,
            (more) => {
              const others = teamsOf(more);
              return asProblem(
                steps,
                steps.map((step, i) =>
                  fittingWays(
                    waysOf(more, step, ground.areas[i] ?? [], works[i] ?? noWork, others),
                    step,
                    calendar,
                  ),
                ),
                waits,
                apart,
                others,
                rules,
              );
            },
            arranged.makespan,
          ),
  };
}

/** Which steps wait for which: as written, or as the checker binds them. */
function bindings(
  job: Job,
  steps: readonly Step[],
  estate: Estate,
): {
  readonly ground: Ground;
  readonly waits: readonly (readonly number[])[];
  readonly apart: readonly (readonly [number, number])[];
} {
  if (!job.order) {
    const { ground, bound, apart } = precedenceOf(job, steps, estate);
    return {
      ground,
      apart,
      waits: steps.map((step, j) => [
        ...new Set([
          ...bound.filter(([, after]) => after === j).map(([before]) => before),
          ...spiralFirst(steps, step, j),
        ]),
      ]),
    };
  }
  const ground = groundOf(job, steps, estate);
  if (steps.length > mostSteps)
    return { ground, apart: [], waits: steps.map((_, j) => (j > 0 ? [j - 1] : [])) };
  const sequence = sequenceOf(steps);
  return {
    ground,
    apart: apartPairs(job, steps, ground, sequence),
    waits: steps.map((_, j) => steps.flatMap((__, i) => (i !== j && sequence.before(i, j) ? [i] : []))),
  };
}

/** The old spiral is out before the liner under it is touched: nothing is cut over new liner that need not be. */
function spiralFirst(steps: readonly Step[], step: Step, j: number): number[] {
  if (step.action !== 'strip') return [];
  return steps.flatMap((other, i) => (i < j && other.action === 'remove screw' ? [i] : []));
}

/** For orders that go in circles or are too long: one step after another as listed, so that there is still something to look at. */
function inLine(problem: ScheduleProblem, because: string): Extract<Schedule, { kind: 'schedule' }> {
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
function beyond(
  gaps: readonly TimeGap[],
  { start, finish }: Extract<Schedule, { kind: 'schedule' }>,
): number {
  return gaps.reduce(
    (sum, { first, then, most = Infinity }) =>
      sum + Math.max(0, (start[then] ?? 0) - (finish[first] ?? 0) - most),
    0,
  );
}

/** Positions of the steps by start, then by finish, then as listed. */
function byStart({ start, finish }: Extract<Schedule, { kind: 'schedule' }>): number[] {
  return start
    .map((_, i) => i)
    .sort((a, b) => (start[a] ?? 0) - (start[b] ?? 0) || (finish[a] ?? 0) - (finish[b] ?? 0) || a - b);
}

function arrange(
  job: Job,
  steps: readonly Step[],
  works: readonly Work[],
  ways: readonly (readonly Way[])[],
  schedule: Extract<Schedule, { kind: 'schedule' }>,
  order: readonly number[],
  waits: readonly (readonly number[])[],
  apart: readonly (readonly [number, number])[],
  calendar: WorkCalendar,
  rules: TimeRules,
  rename: boolean,
): PlannedStep[] {
  const way = (i: number): Way | undefined => ways[i]?.[schedule.mode[i] ?? 0];
  const position = new Map(order.map((i, p) => [i, p]));
  const after = waitsOf(order, schedule.finish, schedule.start, waits, apart, (i) => way(i)?.teams ?? []);
  const named = rename
    ? namedSteps(
        order.map((i) => withTeam(steps[i], way(i), job)).filter((step) => step !== undefined),
        after,
      )
    : order.flatMap((i) => steps[i] ?? []);
  const float = floatsOf(
    order.map((i, p) => ({
      start: schedule.start[i] ?? 0,
      finish: schedule.finish[i] ?? 0,
      after: after[p] ?? [],
      whole: rules.whole[i] ?? false,
      unit: way(i)?.unit,
      extent: rules.extents[i],
    })),
    rules,
  );
  return order.flatMap((i, p): PlannedStep[] => {
    const step = named[p];
    const work = works[i];
    if (!step || !work || !position.has(i)) return [];
    const start = (schedule.start[i] ?? 0) / minutes;
    const finish = (schedule.finish[i] ?? 0) / minutes;
    return [
      {
        step,
        work,
        start,
        finish,
        from: calendar.startAt(start),
        to: calendar.finishAt(finish),
        crews: way(i)?.crews ?? [],
        people: way(i)?.people ?? 0,
        unit: way(i)?.unit,
        float: (float[p] ?? 0) / minutes,
        critical: (float[p] ?? 0) === 0,
        after: after[p] ?? [],
      },
    ];
  });
}

function withTeam(step: Step | undefined, way: Way | undefined, job: Job): Step | undefined {
  if (!step) return undefined;
  const crews = job.crews.filter(({ use }) => way?.crews.includes(use.name));
  const unit = job.accessUnits.find(({ use }) => use.name === way?.unit);
  const aboard = way?.aboard === undefined ? undefined : { count: way.aboard, origin: job.nameOrigin };
  return { ...step, crews, ...(unit ? { unit } : {}), ...(unit && aboard ? { aboard } : {}) };
}

/** Back from the end, each time to the last of what was waited for; as far as a delay delays the end. */
function chainOf(planned: readonly PlannedStep[]): number[] {
  const last = Math.max(0, ...planned.map((each) => each.finish));
  let at = planned.findIndex((each) => each.finish >= last - 1e-9);
  const chain: number[] = [];
  while (at >= 0) {
    chain.unshift(at);
    const before: readonly number[] = planned[at]?.after ?? [];
    at = before.reduce(
      (best, p) => (best < 0 || (planned[p]?.finish ?? 0) > (planned[best]?.finish ?? 0) ? p : best),
      -1,
    );
  }
  return chain.filter((p) => planned[p]?.critical);
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

function defaultsOf(
  job: Job,
  works: readonly Work[],
  calendar: WorkCalendar,
  teams: readonly Team[],
  lifts: LiftTable,
  rules: TimeRules,
  moves: number,
): string[] {
  const moved: readonly WorkItem[] = moves > 0 && rules.moveAssumed ? ['access move'] : [];
  const items: readonly WorkItem[] = [...new Set([...works.flatMap((work) => work.defaults), ...moved])];
  const said = [
    ...(items.length > 0
      ? [
          `Unit times of ${job.conveyor.plant.name} are not declared for ${items.join(', ')}: usual ones are taken, a judgement.`,
        ]
      : []),
    ...(calendar.assumed ? [calendar.assumed] : []),
    ...teams.flatMap((team) => team.assumed ?? []),
    ...(lifts.slingAngle.assumed ? [lifts.slingAngle.assumed] : []),
  ];
  const { sawKerf, minimumClosingPiece, measuringTolerance, jointClearance } = job;
  return [
    ...said,
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

const noWork: Work = { personHours: 0, mostPeople: 1, basis: '', defaults: [] };
