// When to do what so that all of it is done soonest: activities with durations, precedence, ways of being done (modes), and
// resources of limited capacity. Answers with a schedule and with a proven lower bound; where the two meet, the schedule is
// the shortest there is. Fast rules first, then, where they leave a gap, an exact search up to a number of nodes.

import { branch } from './scheduling/branch.js';
import { cliques, lowerBound } from './scheduling/bounds.js';
import { modelOf, type ScheduleProblem } from './scheduling/model.js';
import { bestSerial, type Timing } from './scheduling/serial.js';

export type { WorkMode, ScheduleProblem } from './scheduling/model.js';

export interface Effort {
  /** Schedules tried from shaken orders. */
  readonly shakes?: number;
  /** Nodes of the exact search; 0 leaves it out. */
  readonly nodes?: number;
  /** Among schedules of one length the one with the smaller cost is kept. */
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
    }
  | { readonly kind: 'circular' };

/** Whole units of time throughout. Throws RangeError for an activity without modes or beyond a resource's capacity. */
export function scheduleJobs(problem: ScheduleProblem, effort: Effort = {}): Schedule {
  const { shakes = 200, nodes: mostNodes = 20_000, cost = () => 0 } = effort;
  const model = modelOf(problem);
  if (!model) return { kind: 'circular' };
  const bound = lowerBound(model);
  const quick = bestSerial(model, shakes, bound.value, cost);
  const searched =
    quick.makespan > bound.value && mostNodes > 0
      ? branch(model, quick, bound.value, mostNodes, cliques(model).slice(0, 8))
      : { best: quick, complete: quick.makespan <= bound.value, nodes: 0 };
  const timing: Timing = searched.best;
  const optimal = searched.complete || timing.makespan <= bound.value;
  return {
    kind: 'schedule',
    makespan: timing.makespan,
    start: [...timing.start],
    mode: [...timing.mode],
    finish: Array.from(
      timing.start,
      (start, i) => start + (problem.activities[i]?.modes[timing.mode[i] ?? 0]?.duration ?? 0),
    ),
    lowerBound: optimal ? timing.makespan : bound.value,
    because:
      optimal && timing.makespan > bound.value ? 'every shorter schedule was tried and fails' : bound.because,
    optimal,
    nodes: searched.nodes,
  };
}
