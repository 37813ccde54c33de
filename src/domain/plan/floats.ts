// How late may a step be without delaying the end, given who does what in which order? Backwards from the end: each step as
// late as what follows it allows, with the time a platform takes to move, and not across a shift end where it may not be split.

import { isElsewhere } from './schedule-jobs.js';
import type { Extent, TimeRules } from './time-rules.js';

export interface Placed {
  readonly start: number;
  readonly finish: number;
  /** Positions of what must be finished first, all earlier in the list. */
  readonly after: readonly number[];
  readonly whole: boolean;
  readonly unit: string | undefined;
  /** Stretch that the unit serves. */
  readonly extent: Extent | undefined;
}

/** In the unit of the times, by position; never negative. `placed` is in the order of starts. */
export function floatsOf(placed: readonly Placed[], rules: Pick<TimeRules, 'breaks' | 'move'>): number[] {
  const end = Math.max(0, ...placed.map((each) => each.finish));
  const latest = placed.map(() => end);
  const float = placed.map(() => 0);
  for (let p = placed.length - 1; p >= 0; p--) {
    const step = placed[p];
    if (!step) continue;
    const duration = step.finish - step.start;
    const start = Math.max(
      step.start,
      fitted((latest[p] ?? end) - duration, duration, step.whole, rules.breaks),
    );
    float[p] = start - step.start;
    for (const q of step.after) {
      const before = placed[q];
      if (!before) continue;
      const moves =
        before.unit !== undefined &&
        before.unit === step.unit &&
        before.extent !== undefined &&
        step.extent !== undefined &&
        isElsewhere(before.extent, step.extent);
      latest[q] = Math.min(latest[q] ?? end, start - (moves ? rules.move : 0));
    }
  }
  return float;
}

/** The latest start that is no later and not across a break. */
function fitted(start: number, duration: number, whole: boolean, breaks: readonly number[]): number {
  if (!whole) return start;
  let at = start;
  for (let k = breaks.length - 1; k >= 0; k--) {
    const end = breaks[k] ?? 0;
    if (end > at && end < at + duration) at = end - duration;
  }
  return at;
}
