// How late may a step be without delaying the end, given who does what in which order? Backwards from the end: each step as
// late as what follows it allows, with the time a platform takes to move, and not across a shift end where it may not be split.

import { isElsewhere } from './schedule-jobs.js';
import { leavesTime, type Pause } from './scheduling/clock.js';
import type { Extent } from './time-rules.js';

export interface Placed {
  readonly start: number;
  readonly finish: number;
  /** When it must start to be finished by a time; left out: its own length before. */
  readonly begins?: (finish: number) => number;
  /** Positions of what must be finished first, all earlier in the list. */
  readonly after: readonly number[];
  readonly whole: boolean;
  readonly unit: string | undefined;
  /** Stretch that the unit serves. */
  readonly extent: Extent | undefined;
  /** Stands of the cranes that it lifts with, by name. */
  readonly stands?: ReadonlyMap<string, Extent>;
  /** How long, by the clock, must pass after others before it starts. */
  readonly rests?: readonly { readonly on: number; readonly clock: number }[];
}

export interface FloatRules {
  readonly nights: readonly Pause[];
  readonly move: number;
  readonly craneMove?: number;
}

/** In the unit of the times, by position; never negative. `placed` is in the order of starts. */
export function floatsOf(placed: readonly Placed[], rules: FloatRules): number[] {
  const end = Math.max(0, ...placed.map((each) => each.finish));
  const latest: number[] = [];
  const float: number[] = [];
  for (const [p, step] of [...placed.entries()].reverse()) {
    const begins = step.begins ?? ((finish: number): number => finish - step.finish + step.start);
    const start = Math.max(step.start, fitted(begins, latest[p] ?? end, step.whole, rules.nights));
    float[p] = start - step.start;
    for (const q of step.after) {
      const before = placed[q];
      const moves =
        before?.unit !== undefined &&
        before.unit === step.unit &&
        before.extent !== undefined &&
        step.extent !== undefined &&
        isElsewhere(before.extent, step.extent);
      const craned = before !== undefined && changesStand(before, step) ? (rules.craneMove ?? 0) : 0;
      latest[q] = Math.min(latest[q] ?? end, start - Math.max(moves ? rules.move : 0, craned));
    }
    for (const { on, clock } of step.rests ?? [])
      latest[on] = Math.min(latest[on] ?? end, leavesTime(rules.nights, start, clock));
  }
  return float;
}

function changesStand({ stands: a }: Placed, { stands: b }: Placed): boolean {
  return [...(a ?? [])].some(([name, place]) => {
    const other = b?.get(name);
    return other !== undefined && isElsewhere(place, other);
  });
}

/** The latest start by which it is finished in time and not across the end of a shift. */
function fitted(
  begins: (finish: number) => number,
  finish: number,
  whole: boolean,
  nights: readonly Pause[],
): number {
  let end = finish;
  if (whole) for (const { at } of [...nights].reverse()) if (at > begins(end) && at < end) end = at;
  return begins(end);
}
