// What a schedule stands on: the work of each step, the ways of doing it, what waits for what, and the rules of the clock.

import type { Estate } from '../model/estate.js';
import type { Job, Step } from '../model/job.js';
import { groundOf, type Ground } from '../order/ground.js';
import { apartPairs, precedenceOf } from '../order/precedence.js';
import { sequenceOf } from '../order/sequence.js';
import { liftsOf, type LiftTable } from './lifts.js';
import { teamsOf, waysOf, type Team, type Way } from './teams.js';
import { fittingWays, timeRules, type TimeRules } from './time-rules.js';
import { workOf, type Work } from './unit-times.js';
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
  const lifts = liftsOf(job, estate, relined);
  const spiralPieces = lifts.spiral?.pieces.length ?? 1;
  const works = steps.map((step, i) => workOf(ground, step, ground.areas[i] ?? [], spiralPieces));
  const calendar = workCalendar(job);
  const teams = teamsOf(job);
  const ways = waysBy(teams, { job, steps, ground, works, calendar });
  const rules = timeRules(job, steps, ways, ground, waits, calendar);
  return { job, steps, ground, waits, apart, lifts, works, calendar, teams, ways, rules };
}

/** The ways of doing each step with these teams. */
export function waysBy(
  teams: readonly Team[],
  {
    job,
    steps,
    ground,
    works,
    calendar,
  }: Pick<PlanningBasis, 'job' | 'steps' | 'ground' | 'works' | 'calendar'>,
): readonly (readonly Way[])[] {
  return steps.map((step, i) => {
    const ways = waysOf(job, step, ground.areas[i] ?? [], works[i] ?? noWork, teams);
    return fittingWays(ways, step, calendar);
  });
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
