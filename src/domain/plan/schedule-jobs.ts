// When to do what so that all of it is done soonest: activities with durations, precedence, ways of being done (modes), and
// resources of limited capacity. Answers with a schedule and with a proven lower bound; where the two meet, the schedule is
// the shortest there is. Fast rules first, then, where they leave a gap, an exact search up to a number of conflicts.

import { lowerBound } from './scheduling/bounds.js';
import { bestSchedule } from './scheduling/improve.js';
import { searchExactly } from './scheduling/learning/exact.js';
import { modelOf, type Model, type ScheduleProblem } from './scheduling/model.js';
import { durationOf, tooFarApart, type Timing } from './scheduling/serial.js';

export { isElsewhere } from './scheduling/model.js';
export type { TimeGap, WorkMode, ScheduleProblem, ResourceUse } from './scheduling/model.js';

export interface Effort {
  /** Schedules tried before the exact search. */
  readonly shakes?: number;
  /** Conflicts of the exact search; 0 leaves it out. */
  readonly nodes?: number;
  /**
   * Of the schedules tried that have one length the cheapest is kept. It is not searched to its least: once nothing shorter can
   * exist only a few more are tried, and the exact search looks at the length alone.
   */
  readonly cost?: (schedule: {
    readonly start: ArrayLike<number>;
    readonly mode: ArrayLike<number>;
  }) => number;
}

export type Schedule =
  | {
      readonly kind: 'schedule';
      readonly makespan: number;
      readonly start: readonly number[];
      readonly finish: readonly number[];
      /** Way of being done of each. */
      readonly mode: readonly number[];
      readonly lowerBound: number;
      /** Why it cannot be shorter than the lower bound. */
      readonly because: string;
      readonly optimal: boolean;
      readonly nodes: number;
      /** Units of time by which things lie further apart than allowed; 0 in a schedule that keeps everything. */
      readonly tooFarApart: number;
    }
  | { readonly kind: 'circular' };

/** Whole units of time throughout. Throws RangeError for an activity without modes or beyond a resource's capacity. */
export function scheduleJobs(problem: ScheduleProblem, effort: Effort = {}): Schedule {
  const { shakes = 200, nodes: mostConflicts = 20_000, cost = () => 0 } = effort;
  const model = modelOf(problem);
  if (!model) return { kind: 'circular' };
  const bound = lowerBound(model);
  const { timing, complete, conflicts } = bestOf(model, bound.value, shakes, mostConflicts, cost);
  const apart = tooFarApart(model, timing);
  const optimal = apart === 0 && (timing.makespan <= bound.value || complete);
  return {
    kind: 'schedule',
    makespan: timing.makespan,
    start: [...timing.start],
    mode: [...timing.mode],
    finish: Array.from(timing.start, (start, i) => start + durationOf(model, timing, i)),
    lowerBound: optimal ? timing.makespan : bound.value,
    because:
      optimal && timing.makespan > bound.value ? 'every shorter schedule was tried and fails' : bound.because,
    optimal,
    nodes: conflicts,
    tooFarApart: apart,
  };
}

/** A few schedules, a short search that settles most small problems, then all the rest of the effort where it does not. */
function bestOf(
  model: Model,
  bound: number,
  shakes: number,
  mostConflicts: number,
  cost: (timing: Timing) => number,
): { readonly timing: Timing; readonly complete: boolean; readonly conflicts: number } {
  const exact = model.n <= mostForSearch;
  const few = exact && mostConflicts > 0 ? Math.min(shakes, fewShakes) : shakes;
  let timing = bestSchedule(model, few, bound, cost);
  let conflicts = 0;
  const enough = (): boolean => tooFarApart(model, timing) === 0 && timing.makespan <= bound;
  const search = (most: number): boolean => {
    const kept = tooFarApart(model, timing) === 0;
    const limit = kept ? timing.makespan - 1 : longest(model);
    const found = searchExactly(model, timing, limit, bound, { conflicts: most, raises: 2000 * most });
    conflicts += found.conflicts;
    if (found.best) timing = found.best;
    return found.complete;
  };
  if (enough() || !exact || mostConflicts <= 0) return { timing, complete: false, conflicts };
  if (search(Math.min(mostConflicts, fewConflicts)) || enough()) return { timing, complete: true, conflicts };
  if (shakes > few) {
    const more = bestSchedule(model, shakes, bound, cost);
    const nearer = tooFarApart(model, more) - tooFarApart(model, timing);
    if (nearer < 0 || (nearer === 0 && more.makespan < timing.makespan)) timing = more;
  }
  const complete = !enough() && mostConflicts > conflicts && search(mostConflicts - conflicts);
  return { timing, complete, conflicts };
}

const fewShakes = 200;
const fewConflicts = 400;

/** Pairs of activities are variables of the exact search: more of them than this cost more than they bring. */
const mostForSearch = 250;

/** A length in which everything can be done one after another. */
function longest({ activities, resources, gaps = [], breaks = [] }: Model): number {
  const move = Math.max(0, ...resources.map((resource) => resource.move ?? 0));
  const wait = gaps.reduce((sum, gap) => sum + (gap.least ?? 0) + (gap.leastClock ?? 0), 0);
  const work = activities.reduce(
    (sum, { modes }) => sum + Math.max(...modes.map((mode) => mode.duration)) + move,
    wait,
  );
  const rooms = activities.reduce((sum, { room = 0 }) => sum + room, 0);
  return breaks.length > 0 ? 2 * (work + rooms) : work;
}
