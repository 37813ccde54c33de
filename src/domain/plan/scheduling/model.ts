// A scheduling problem in numbers, ready for search: times are whole units, precedence is closed, and pairs that can never
// overlap are known.

import { between, leavesTime, passed, type Pause } from './clock.js';

export interface ResourceUse {
  readonly resource: number;
  readonly amount: number;
  /** The stretch it serves, for resources that take time to move: from one to another that does not overlap it. */
  readonly place?: readonly [from: number, to: number];
}

export interface WorkMode {
  readonly duration: number;
  /** Amount of each resource used, by resource. */
  readonly uses: readonly ResourceUse[];
}

/**
 * The second starts no sooner (`least`) or no later (`most`) than so long after the first is finished: in working time, or by
 * the clock (`leastClock` counts every pause in, `mostClock` those at the breaks).
 */
export interface TimeGap {
  readonly first: number;
  readonly then: number;
  readonly least?: number;
  readonly most?: number;
  readonly leastClock?: number;
  readonly mostClock?: number;
}

export interface ScheduleProblem {
  readonly activities: readonly {
    readonly name: string;
    /** Ways of doing it; at least one. */
    readonly modes: readonly WorkMode[];
    /** Positions of what must be finished first. */
    readonly after: readonly number[];
    /** Never under way at one of the `breaks`: begun and finished between two of them. */
    readonly whole?: boolean;
    /** With `whole`: so much time must be left after it before the next break. */
    readonly room?: number;
  }[];
  readonly resources: readonly {
    readonly name: string;
    readonly capacity: number;
    /** Time between two uses of it on stretches that do not overlap; for resources of capacity 1. */
    readonly move?: number;
  }[];
  /** Pairs that may not overlap, whichever is first. */
  readonly exclusions?: readonly (readonly [number, number])[];
  /** Ascending times, as of shift ends. */
  readonly breaks?: readonly number[];
  /** What passes by the clock and is no working time, at the breaks and elsewhere; ascending. */
  readonly pauses?: readonly Pause[];
  readonly gaps?: readonly TimeGap[];
}

/** At least so long after another is finished: `least` of working time, `clock` by the clock. */
export interface Wait {
  readonly on: number;
  readonly least: number;
  readonly clock: number;
}

export interface Model extends ScheduleProblem {
  readonly n: number;
  /** Topological order. */
  readonly order: readonly number[];
  readonly followers: readonly (readonly number[])[];
  /** What each waits for, with the least time between; no `most`. */
  readonly waits: readonly (readonly Wait[])[];
  /** Shortest duration of each activity. */
  readonly shortest: Int32Array;
  /** Longest chain of shortest durations and waits before, and after, each activity. */
  readonly head: Int32Array;
  readonly tail: Int32Array;
  /** n × n: 1 where row must be finished before column starts. */
  readonly before: Uint8Array;
  /** n × n: 1 where the two cannot overlap in any way of doing them. */
  readonly apart: Uint8Array;
  readonly excluded: readonly (readonly number[])[];
  /** Pauses at the breaks: what a longest time by the clock counts in. */
  readonly nights: readonly Pause[];
  /** Pairs with a longest time between. */
  readonly within: readonly Within[];
}

export interface Within {
  readonly first: number;
  readonly then: number;
  readonly most: number;
  readonly byClock: boolean;
}

/** Undefined where activities wait for one another in a circle. */
export function modelOf(problem: ScheduleProblem): Model | undefined {
  const { activities, resources } = problem;
  const n = activities.length;
  checkAmounts(problem);
  const stated = waitsOf(problem);
  const followers: number[][] = activities.map(() => []);
  const left = stated.map((list) => list.length);
  stated.forEach((list, i) => {
    for (const { on } of list) followers[on]?.push(i);
  });
  const order = left.flatMap((count, i) => (count === 0 ? [i] : []));
  for (let k = 0; k < order.length; k++) {
    for (const j of followers[order[k] ?? 0] ?? []) {
      left[j] = (left[j] ?? 0) - 1;
      if (left[j] === 0) order.push(j);
    }
  }
  if (order.length < n) return undefined;
  const { before, waits } = closure(n, order, stated);
  followers.forEach((list) => (list.length = 0));
  waits.forEach((list, i) => {
    for (const { on } of list) followers[on]?.push(i);
  });

  const shortest = Int32Array.from(activities, ({ modes }) =>
    Math.min(...modes.map((mode) => mode.duration)),
  );
  const head = new Int32Array(n);
  for (const j of order) {
    let at = 0;
    for (const wait of waits[j] ?? [])
      at = Math.max(
        at,
        afterWait(problem.pauses ?? [], (head[wait.on] ?? 0) + (shortest[wait.on] ?? 0), wait),
      );
    const room = activities[j]?.room ?? 0;
    head[j] = activities[j]?.whole ? pastBreak(problem.breaks ?? [], at, (shortest[j] ?? 0) + room) : at;
  }
  const tail = new Int32Array(n);
  for (const j of [...order].reverse())
    for (const { on, least, clock } of waits[j] ?? [])
      tail[on] = Math.max(
        tail[on] ?? 0,
        (tail[j] ?? 0) +
          (shortest[j] ?? 0) +
          Math.max(least, clock - mostPaused(problem.pauses ?? [], clock)),
      );

  const excluded: number[][] = activities.map(() => []);
  for (const [i, j] of problem.exclusions ?? []) {
    excluded[i]?.push(j);
    excluded[j]?.push(i);
  }
  const apart = new Uint8Array(n * n);
  const clashing = clashes(problem);
  for (let i = 0; i < n; i++) {
    for (const j of excluded[i] ?? []) apart[i * n + j] = 1;
    for (let j = 0; j < i; j++) {
      if (before[i * n + j] || before[j * n + i] || clashing(i, j)) apart[i * n + j] = apart[j * n + i] = 1;
    }
  }
  return {
    ...problem,
    n,
    order,
    followers,
    waits,
    shortest,
    head,
    tail,
    before,
    apart,
    excluded,
    nights: (problem.pauses ?? []).filter(({ at }) => problem.breaks?.includes(at)),
    within: (problem.gaps ?? []).flatMap(({ first, then, most, mostClock }): Within[] => [
      ...(most === undefined ? [] : [{ first, then, most, byClock: false }]),
      ...(mostClock === undefined ? [] : [{ first, then, most: mostClock, byClock: true }]),
    ]),
    resources,
  };
}

function checkAmounts({ activities, resources }: ScheduleProblem): void {
  for (const { name, modes } of activities) {
    if (modes.length === 0) throw new RangeError(`"${name}" has no way of being done.`);
    for (const mode of modes) {
      if (!Number.isInteger(mode.duration) || mode.duration < 0)
        throw new RangeError(`"${name}" cannot take ${mode.duration}: whole units of time are needed.`);
      for (const { resource, amount } of mode.uses) {
        const found = resources[resource];
        if (!found || amount > found.capacity)
          throw new RangeError(
            `"${name}" needs ${amount} of ${found?.name ?? 'an unknown resource'}, which has ${found?.capacity ?? 0}.`,
          );
      }
    }
  }
}

/** The first time from `at` at which so much can be done without a break in between; beyond the last where nothing is so long. */
export function pastBreak(breaks: readonly number[], at: number, duration: number): number {
  let time = at;
  for (let k = firstBreak(breaks, at); k < breaks.length; k++) {
    const next = breaks[k] ?? 0;
    if (next >= time + duration) return time;
    time = next;
  }
  return time;
}

/** Position of the first break after the time. */
function firstBreak(breaks: readonly number[], at: number): number {
  let a = 0;
  let b = breaks.length;
  while (a < b) {
    const mid = (a + b) >> 1;
    if ((breaks[mid] ?? 0) > at) b = mid;
    else a = mid + 1;
  }
  return a;
}

/** The first time at which the wait is over, after a finish. */
export function afterWait(pauses: readonly Pause[], finish: number, { least, clock }: Wait): number {
  return clock > 0 ? Math.max(finish + least, passed(pauses, finish, clock)) : finish + least;
}

/** The latest finish that leaves the wait before a start. */
export function beforeWait(pauses: readonly Pause[], start: number, { least, clock }: Wait): number {
  return clock > 0 ? Math.min(start - least, leavesTime(pauses, start, clock)) : start - least;
}

/** From a finish to a start, as the limit counts it. */
export function apartBy(
  nights: readonly Pause[],
  { byClock }: Within,
  finish: number,
  start: number,
): number {
  return byClock ? between(nights, finish, start) : start - finish;
}

/** Most of a wait that can pass in pauses, wherever it lies. */
function mostPaused(pauses: readonly Pause[], wait: number): number {
  let most = 0;
  pauses.forEach((first, k) => {
    let sum = 0;
    for (let j = k; j < pauses.length; j++) {
      const pause = pauses[j];
      if (!pause || pause.at - first.at + sum >= wait) break;
      sum += pause.length;
    }
    most = Math.max(most, sum);
  });
  return Math.min(most, wait);
}

/** Each predecessor once, with the longest of its waits. A gap is a wait too, or "no later than" would have no "after". */
function waitsOf({ activities, resources, gaps = [] }: ScheduleProblem): Wait[][] {
  const found = activities.map(({ after }) => new Map(after.map((on) => [on, { least: 0, clock: 0 }])));
  for (const { first, then, least = 0, leastClock = 0 } of gaps) {
    const known = found[then]?.get(first) ?? { least: 0, clock: 0 };
    found[then]?.set(first, {
      least: Math.max(least, known.least),
      clock: Math.max(leastClock, known.clock),
    });
  }
  if (resources.some((resource) => (resource.move ?? 0) > 0))
    found.forEach((map, j) => {
      for (const [on, { least, clock }] of map)
        map.set(on, {
          least: Math.max(least, leastMove(resources, activities[on], activities[j])),
          clock,
        });
    });
  return found.map((map) => [...map].map(([on, { least, clock }]) => ({ on, least, clock })));
}

/** What has to be moved between the two however they are done. */
function leastMove(
  resources: ScheduleProblem['resources'],
  a: ScheduleProblem['activities'][number] | undefined,
  b: ScheduleProblem['activities'][number] | undefined,
): number {
  let least = Infinity;
  for (const x of a?.modes ?? [])
    for (const y of b?.modes ?? []) least = Math.min(least, moveBetween(resources, x, y));
  return Number.isFinite(least) ? least : 0;
}

/** Who must be finished before whom, by rows of bits; and the waits without those that follow from others. */
function closure(
  n: number,
  order: readonly number[],
  stated: readonly (readonly Wait[])[],
): { readonly before: Uint8Array; readonly waits: Wait[][] } {
  const words = (n + 31) >> 5;
  const ancestors = new Int32Array(n * words);
  const has = (j: number, i: number): boolean =>
    (((ancestors[j * words + (i >> 5)] ?? 0) >> (i & 31)) & 1) === 1;
  const waits: Wait[][] = stated.map(() => []);
  for (const j of order) {
    const list = stated[j] ?? [];
    for (const { on } of list)
      for (let w = 0; w < words; w++)
        ancestors[j * words + w] = (ancestors[j * words + w] ?? 0) | (ancestors[on * words + w] ?? 0);
    waits[j] = list.filter(({ on, least, clock }) => least > 0 || clock > 0 || !has(j, on));
    for (const { on } of list) {
      const word = j * words + (on >> 5);
      ancestors[word] = (ancestors[word] ?? 0) | (1 << (on & 31));
    }
  }
  const before = new Uint8Array(n * n);
  for (let j = 0; j < n; j++) for (let i = 0; i < n; i++) if (has(j, i)) before[i * n + j] = 1;
  return { before, waits };
}

/** Whether every way of doing the one overloads a resource together with every way of doing the other. */
function clashes({ activities, resources }: ScheduleProblem): (i: number, j: number) => boolean {
  // Activities that can be done in the same ways are alike: each pair of kinds is compared once.
  const kinds = new Map<string, number>();
  const kind = activities.map(({ modes }) => {
    const key = JSON.stringify(
      modes.map((mode) => mode.uses.map(({ resource, amount }) => [resource, amount])),
    );
    const known = kinds.get(key) ?? kinds.size;
    kinds.set(key, known);
    return known;
  });
  const answers = new Map<number, boolean>();
  return (i, j) => {
    const key = (kind[i] ?? 0) * kinds.size + (kind[j] ?? 0);
    const known = answers.get(key);
    if (known !== undefined) return known;
    const a = activities[i]?.modes ?? [];
    const b = activities[j]?.modes ?? [];
    const answer = a.every((x) => b.every((y) => overloads(resources, x, y)));
    answers.set(key, answer);
    return answer;
  };
}

export function overloads(resources: ScheduleProblem['resources'], x: WorkMode, y: WorkMode): boolean {
  return x.uses.some(({ resource, amount }) =>
    y.uses.some(
      (other) => other.resource === resource && amount + other.amount > (resources[resource]?.capacity ?? 0),
    ),
  );
}

/** Whether two stretches have nothing in common; what only touches has not. */
export function isElsewhere(
  a: readonly [from: number, to: number],
  b: readonly [from: number, to: number],
): boolean {
  return a[1] <= b[0] || b[1] <= a[0];
}

/** Time that must pass between the two, whichever is first, to bring what both use from the one place to the other. */
export function moveBetween(resources: ScheduleProblem['resources'], x: WorkMode, y: WorkMode): number {
  let most = 0;
  for (const { resource, place } of x.uses) {
    const move = resources[resource]?.move ?? 0;
    if (move <= most || place === undefined) continue;
    if (y.uses.some((use) => use.resource === resource && use.place && isElsewhere(use.place, place)))
      most = move;
  }
  return most;
}
