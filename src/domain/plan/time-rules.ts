// What the clock adds to an order of work: shift ends that some steps may not be split by, the time a platform takes to be
// moved, covers that are not to lie open for longer than a shift before somebody works under them, and a fire watch that
// begins when the hot work ends. Times in whole minutes of working time since the first shift began.

import type { Job, Step, StepAction } from '../model/job.js';
import type { Area, Ground } from '../order/ground.js';
import { mustNotBeSplit } from '../order/unsplit.js';
import type { TimeGap } from './schedule-jobs.js';
import type { Way } from './teams.js';
import { unitTime } from './unit-times.js';
import type { WorkCalendar } from './work-calendar.js';

/** mm */
export type Extent = readonly [from: number, to: number];

export interface TimeRules {
  /** Ends of shifts after which nobody works on. */
  readonly breaks: readonly number[];
  /** Of each step: never under way at one of them. */
  readonly whole: readonly boolean[];
  /** Positions of steps that may not be split and are longer than any shift; they are split all the same. */
  readonly tooLong: readonly number[];
  /** The stretch of each step from its first millimetre to its last; undefined where it has none. */
  readonly extents: readonly (Extent | undefined)[];
  /** Clock time to bring a mobile platform to another place. */
  readonly move: number;
  /** True where the move's time is a default. */
  readonly moveAssumed: boolean;
  /** Covers and the first work under them. */
  readonly covers: readonly TimeGap[];
  /** Hot work and the watch after it. */
  readonly watches: readonly TimeGap[];
}

const minutes = 60;

export function timeRules(
  job: Job,
  steps: readonly Step[],
  ways: readonly (readonly Way[])[],
  ground: Ground,
  waits: readonly (readonly number[])[],
  calendar: WorkCalendar,
): TimeRules {
  const work = ways.reduce((sum, list) => sum + Math.max(0, ...list.map((way) => way.minutes)), 0);
  const move = unitTime(job, 'access move');
  const moveMinutes = Math.round(move.hours * minutes);
  const breaks = calendar
    .shiftEnds((2 * (work + steps.length * moveMinutes)) / minutes)
    .map((at) => Math.round(at * minutes));
  const longest = Math.max(0, ...breaks.map((at, k) => at - (breaks[k - 1] ?? 0)));
  const shortest = (i: number): number => Math.min(...(ways[i] ?? []).map((way) => way.minutes));
  const unsplit = steps.map((step) => breaks.length > 0 && mustNotBeSplit(step));
  return {
    breaks,
    whole: unsplit.map((each, i) => each && shortest(i) <= longest),
    tooLong: unsplit.flatMap((each, i) => (each && shortest(i) > longest ? [i] : [])),
    extents: steps.map((_, i) => extentOf(ground.areas[i] ?? [])),
    move: moveMinutes,
    moveAssumed: move.assumed,
    covers: breaks.length > 0 ? openCovers(steps, ground, waits, longest) : [],
    watches: firesWatched(steps, waits, (i) => Math.max(0, ...(ways[i] ?? []).map((way) => way.minutes))),
  };
}

/** A single place counts as two millimetres, so that it lies within what holds it. */
function extentOf(areas: readonly Area[]): Extent | undefined {
  if (areas.length === 0) return undefined;
  const from = Math.min(...areas.map((area) => area.from));
  const to = Math.max(...areas.map((area) => area.to));
  return from === to ? [from - 1, to + 1] : [from, to];
}

/** Ways that fit into a shift where the step may not be split; all of them where none does. */
export function fittingWays(ways: readonly Way[], step: Step, calendar: WorkCalendar): readonly Way[] {
  if (!mustNotBeSplit(step)) return ways;
  const longest = calendar.longestShift * minutes;
  const fitting = ways.filter((way) => way.minutes <= longest);
  return fitting.length > 0 ? fitting : ways;
}

/** Work under covers that have been taken off, in the order in which it comes. */
const under: readonly StepAction[] = [
  'braces off',
  'hold-downs off',
  'restrain screw',
  'strip',
  'clean',
  'fit',
];

/** The first work under each stretch of covers begins within a shift of their coming off. */
function openCovers(
  steps: readonly Step[],
  ground: Ground,
  waits: readonly (readonly number[])[],
  shift: number,
): TimeGap[] {
  return steps.flatMap((step, first): TimeGap[] => {
    if (step.action !== 'covers off') return [];
    const followers = steps.flatMap((other, then) =>
      waits[then]?.includes(first) &&
      under.includes(other.action) &&
      meet(ground.areas[first], ground.areas[then])
        ? [{ then, rank: under.indexOf(other.action) }]
        : [],
    );
    const next = followers.sort((a, b) => a.rank - b.rank || a.then - b.then)[0];
    return next ? [{ first, then: next.then, most: shift }] : [];
  });
}

/** The watch begins when the hot work ends; where it follows several, when they end if done one right after another. */
function firesWatched(
  steps: readonly Step[],
  waits: readonly (readonly number[])[],
  longest: (i: number) => number,
): TimeGap[] {
  const watched = new Map<number, number[]>();
  steps.forEach((step, hot) => {
    if (step.heat?.kind !== 'hot') return;
    const after = steps.flatMap((other, i) =>
      other.action === 'fire watch' && waits[i]?.includes(hot) ? [i] : [],
    );
    const first = after.find((i) => after.every((other) => other === i || !waits[i]?.includes(other)));
    if (first !== undefined) watched.set(first, [...(watched.get(first) ?? []), hot]);
  });
  return [...watched].flatMap(([then, all]) =>
    all.map((first) => ({
      first,
      then,
      most: all.reduce((sum, other) => sum + (other === first ? 0 : longest(other)), 0),
    })),
  );
}

function meet(a: readonly Area[] = [], b: readonly Area[] = []): boolean {
  return a.some((x) => b.some((y) => Math.min(x.to, y.to) - Math.max(x.from, y.from) > 1));
}
