// What the clock adds to an order of work: shift ends that some steps may not be split by, the time a platform takes to be
// moved, covers that are not to lie open for longer than a shift before somebody works under them, a fire watch that begins when
// the hot work ends, and places that dry or cool. Times in whole minutes of net working time (work-axis.ts).

import type { Job, Step, StepAction } from '../model/job.js';
import type { Area, Ground } from '../order/ground.js';
import { disturbs, meet as meetAt, restAfter } from '../order/rest.js';
import { hangsLoads, standsAlong } from '../order/lifting-gear.js';
import { mustNotBeSplit } from '../order/unsplit.js';
import type { TimeGap } from './schedule-jobs.js';
import { craneTeam, type Way } from './teams.js';
import { unitTime } from './unit-times.js';
import type { WorkAxis } from './work-axis.js';

/** mm */
export type Extent = readonly [from: number, to: number];

export interface TimeRules {
  readonly axis: WorkAxis;
  /** Of each step: never under way at the end of a shift. */
  readonly whole: readonly boolean[];
  /** Of each step: minutes that must be left after it before the shift ends, for the watch. */
  readonly room: readonly number[];
  /** Positions of steps that may not be split and are longer than any shift; they are split all the same. */
  readonly tooLong: readonly number[];
  /** The stretch of each step from its first millimetre to its last; undefined where it has none. */
  readonly extents: readonly (Extent | undefined)[];
  /** Clock time to bring a mobile platform to another place. */
  readonly move: number;
  /** True where the move's time is a default. */
  readonly moveAssumed: boolean;
  /** From which stands each step lifts with which crane, by the name of its team; a stand is a place of its own. */
  readonly stands: readonly ReadonlyMap<string, Extent>[];
  /** Clock time to bring a crane to another stand. */
  readonly craneMove: number;
  readonly craneMoveAssumed: boolean;
  /** Covers and the first work under them. */
  readonly covers: readonly TimeGap[];
  /** Hot work and the watch after it. */
  readonly watches: readonly TimeGap[];
  /** What dries or cools, and the next work there. */
  readonly rests: readonly TimeGap[];
  /** Positions of the steps at the end that are laid over the shifts without tests of the air. */
  readonly handBack: readonly number[];
}

const minutes = 60;

export function timeRules(
  job: Job,
  steps: readonly Step[],
  ways: readonly (readonly Way[])[],
  ground: Ground,
  waits: readonly (readonly number[])[],
  axis: WorkAxis,
  handBack: readonly number[],
): TimeRules {
  const move = unitTime(job, 'access move');
  const craneMove = unitTime(job, 'crane move');
  const shifts = axis.breaks.length > 0;
  const shortest = (i: number): number => Math.min(...(ways[i] ?? []).map((way) => way.minutes));
  const unsplit = steps.map((step) => shifts && mustNotBeSplit(step));
  const watches = firesWatched(steps, waits, (i) =>
    Math.max(0, ...(ways[i] ?? []).map((way) => way.minutes)),
  );
  const room = steps.map((_, i) =>
    Math.max(0, ...watches.filter(({ first }) => first === i).map(({ then }) => shortest(then))),
  );
  return {
    axis,
    whole: unsplit.map((each, i) => each && shortest(i) <= axis.longest),
    room: room.map((each, i) => (shortest(i) + each <= axis.longest ? each : 0)),
    tooLong: unsplit.flatMap((each, i) => (each && shortest(i) > axis.longest ? [i] : [])),
    extents: steps.map((step, i) => extentOf(ground.areas[i] ?? [], step.gate ? besideGate : 0)),
    move: Math.round(move.hours * minutes),
    moveAssumed: move.assumed,
    stands: steps.map((step, i) => standsOf(job, step, ground.areas[i] ?? [])),
    craneMove: Math.round(craneMove.hours * minutes),
    craneMoveAssumed: craneMove.assumed,
    covers: shifts ? openCovers(steps, ground, waits, axis.longest) : [],
    watches,
    rests: restsKept(steps, ground, waits),
    handBack,
  };
}

/** Stands apart from one another on a line of their own: the same stand is one place, whatever lies beside it on site. */
function standsOf(job: Job, step: Step, areas: readonly Area[]): ReadonlyMap<string, Extent> {
  const found = new Map<string, Extent>();
  if (!hangsLoads(step)) return found;
  for (const [name, stands] of standsAlong(job, areas))
    found.set(craneTeam(name), [10 * Math.min(...stands), 10 * Math.max(...stands) + 1]);
  return found;
}

/** mm from which a gate is reached: whoever works beside it need not move the platform for it; judgement. */
const besideGate = 1000;

/** A single place counts as two millimetres: a drive at the end of a stretch lies within it, and no platform moves for it. */
function extentOf(areas: readonly Area[], reach: number): Extent | undefined {
  if (areas.length === 0) return undefined;
  const from = Math.min(...areas.map((area) => area.from)) - reach;
  const to = Math.max(...areas.map((area) => area.to)) + reach;
  return from === to ? [from - 1, to + 1] : [from, to];
}

/** Ways that fit into a shift of so many minutes where the step may not be split; all of them where none does. */
export function fittingWays(ways: readonly Way[], step: Step, longest: number): readonly Way[] {
  if (!mustNotBeSplit(step)) return ways;
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

/**
 * The watch begins when the hot work ends, by the clock: not the next morning. Where it follows several, each ends no longer
 * before it than the others take.
 */
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
      mostClock: all.reduce((sum, other) => sum + (other === first ? 0 : longest(other)), 0),
    })),
  );
}

/** Nobody works on a place until it has dried or cooled, by the clock; for the nearest of those who wait for it. */
function restsKept(steps: readonly Step[], ground: Ground, waits: readonly (readonly number[])[]): TimeGap[] {
  return steps.flatMap((step, first): TimeGap[] => {
    const rest = restAfter(ground, step);
    if (!rest) return [];
    const there = steps.flatMap((other, then) =>
      waits[then]?.includes(first) && disturbs(other) && meetAt(ground, first, then) ? [then] : [],
    );
    return there
      .filter((then) => !there.some((other) => waits[then]?.includes(other)))
      .map((then) => ({ first, then, leastClock: Math.ceil(rest.hours * minutes - 1e-6) }));
  });
}

function meet(a: readonly Area[] = [], b: readonly Area[] = []): boolean {
  return a.some((x) => b.some((y) => Math.min(x.to, y.to) - Math.max(x.from, y.from) > 1));
}
