// What a schedule stands on: the work of each step, the ways of doing it, what waits for what, and the rules of the clock.

import type { Estate } from '../model/estate.js';
import type { Job, Step } from '../model/job.js';
import { groundOf, type Ground } from '../order/ground.js';
import { apartPairs, precedenceOf } from '../order/precedence.js';
import { sequenceOf } from '../order/sequence.js';
import { reachesInside } from '../order/people.js';
import { restAfter } from '../order/rest.js';
import { mustNotBeSplit } from '../order/unsplit.js';
import { airTestsOf, handBackOf } from './air-tests.js';
import { liftsOf, type LiftTable } from './lifts.js';
import { teamsOf, waysOf, type Team, type Way } from './teams.js';
import { fittingWays, timeRules, type TimeRules } from './time-rules.js';
import { unitTime, workOf, type Work } from './unit-times.js';
import { workAxis, type WorkAxis } from './work-axis.js';
import { workCalendar, type WorkCalendar } from './work-calendar.js';

export interface PlanningBasis {
  readonly job: Job;
  readonly steps: readonly Step[];
  readonly ground: Ground;
  /** For each step the positions of those it waits for, and pairs that must not overlap. */
  readonly waits: readonly (readonly number[])[];
  readonly apart: readonly (readonly [number, number])[];
  readonly lifts: LiftTable;
  readonly works: readonly Work[];
  readonly calendar: WorkCalendar;
  readonly teams: readonly Team[];
  readonly ways: readonly (readonly Way[])[];
  readonly rules: TimeRules;
}

/** Beyond these a plan is a list: whoever has so much on one conveyor plans it as several jobs. */
export const mostSteps = 2000;
export const mostTeams = 200;

export function planningBasis(job: Job, steps: readonly Step[], estate: Estate): PlanningBasis {
  const { ground, waits, apart } = bindings(job, steps, estate);
  const relined = ground.scope.flatMap((area) =>
    ground.runs.map((run) => ({ run, from: area.from, to: area.to })),
  );
  const lifts = liftsOf(job, relined);
  const works = steps.map((step, i) => workOf(ground, step, ground.areas[i] ?? [], lifts.spiral));
  const calendar = workCalendar(job);
  const teams = teamsOf(job);
  const all = waysBy(teams, { job, steps, ground, works });
  const { axis, handBack } = axisOf(job, steps, ground, waits, calendar, all);
  const ways = fitting(all, steps, axis);
  const rules = timeRules(job, steps, ways, ground, waits, axis, handBack);
  return { job, steps, ground, waits, apart, lifts, works, calendar, teams, ways, rules };
}

/** The ways of doing each step with these teams. */
export function waysBy(
  teams: readonly Team[],
  { job, steps, ground, works }: Pick<PlanningBasis, 'job' | 'steps' | 'ground' | 'works'>,
): readonly (readonly Way[])[] {
  return steps.map((step, i) => waysOf(job, step, ground.areas[i] ?? [], works[i] ?? noWork, teams));
}

/** Those that are done within a shift, where a step may not be left half done. */
export function fitting(
  ways: readonly (readonly Way[])[],
  steps: readonly Step[],
  { longest }: WorkAxis,
): readonly (readonly Way[])[] {
  return steps.map((step, i) => fittingWays(ways[i] ?? [], step, longest));
}

/** The shifts with the tests of the air in them, and the steps at the end for which nobody tests. */
function axisOf(
  job: Job,
  steps: readonly Step[],
  ground: Ground,
  waits: readonly (readonly number[])[],
  calendar: WorkCalendar,
  ways: readonly (readonly Way[])[],
): { readonly axis: WorkAxis; readonly handBack: readonly number[] } {
  const longest = (list: readonly Way[]): number => Math.max(0, ...list.map((way) => way.minutes));
  const hours =
    ways.reduce((sum, list) => sum + longest(list), 0) / 60 +
    steps.length * Math.max(unitTime(job, 'access move').hours, unitTime(job, 'crane move').hours) +
    steps.reduce((sum, step) => sum + (restAfter(ground, step)?.hours ?? 0), 0);
  // Room enough for everything one after another, and tests in between.
  const nights = calendar
    .shiftEnds((job.conveyor.confinedSpace ? 4 : 2) * hours)
    .map(({ at, off }) => ({ at: Math.round(at * 60), length: Math.round(off * 60) }));
  const ends = nights.map(({ at }) => at);
  const air = airTestsOf(ground, steps, ways, waits, mustNotBeSplit, ends);
  return {
    axis: workAxis(nights, air),
    handBack: air ? handBackOf(steps, waits, reachesInside) : [],
  };
}

const noWork: Work = { personHours: 0, mostPeople: 1, basis: '', defaults: [] };

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
