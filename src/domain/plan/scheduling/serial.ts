// Good schedules fast: activities are placed one by one, each as early as precedence and resources allow (serial schedule
// generation, Kelley 1963), in the order of several priority rules; then pushed to the end and back again (forward-backward
// justification, Li and Willis 1992). The order is shaken with a fixed sequence of numbers, so the same problem always gives
// the same schedule.

import type { WorkMode, Model } from './model.js';

export interface Timing {
  readonly start: Int32Array;
  /** Which way each is done. */
  readonly mode: Int32Array;
  readonly makespan: number;
}

/**
 * The best of all rules, each justified; then `shakes` more from the neighbourhood of the best one: its order shaken with the
 * ways of doing things chosen anew, or its ways kept but for one to three. Ties are broken by `cost`, smaller first.
 */
export function bestSerial(
  model: Model,
  shakes: number,
  stopAt: number,
  cost: (timing: Timing) => number,
): Timing {
  let best: Timing | undefined;
  let bestCost = Infinity;
  const consider = (timing: Timing): void => {
    const price = cost(timing);
    if (!best || timing.makespan < best.makespan || (timing.makespan === best.makespan && price < bestCost)) {
      best = timing;
      bestCost = price;
    }
  };
  for (const rule of rules(model)) consider(justify(model, serial(model, rule)));
  const random = numbers(20_240_229);
  const choices = model.activities.flatMap(({ modes }, i) => (modes.length > 1 ? [i] : []));
  let current: Timing = best ?? serial(model, model.head);
  let left = shakes;
  for (let k = 0; left > 0; k++) {
    left--;
    // Nothing shorter exists: a few more only for a cheaper one of the same length.
    if ((best?.makespan ?? Infinity) <= stopAt) left = bestCost === 0 ? -1 : Math.min(left, 12);
    if (left < 0) break;
    const from = current;
    const change = choices.length > 0 && k % 4 !== 0;
    const spread = (change ? 0.15 : 0.1 + 0.4 * random()) * random();
    const keys = Float64Array.from(from.start, (start) => start + (random() - 0.5) * spread * from.makespan);
    const modes = change ? from.mode.slice() : undefined;
    for (let c = modes ? Math.floor(random() * 3) : -1; c >= 0; c--) {
      const i = choices[Math.floor(random() * choices.length)] ?? 0;
      if (modes) modes[i] = Math.floor(random() * (model.activities[i]?.modes.length ?? 1));
    }
    const next = justify(model, serial(model, keys, modes));
    consider(next);
    // Equal ones are walked along; a slightly longer one now and then leads out of a dead end.
    if (next.makespan <= current.makespan || random() < 0.02) current = next;
    if (k % 100 === 99 && best) current = best;
  }
  return best ?? serial(model, model.head);
}

/** Smaller keys first among those whose predecessors are placed. Modes are chosen for the earliest finish unless given. */
export function serial(model: Model, keys: ArrayLike<number>, fixed?: Int32Array): Timing {
  const { n, activities, followers } = model;
  const start = new Int32Array(n).fill(-1);
  const finish = new Int32Array(n);
  const mode = new Int32Array(n);
  const left = Int32Array.from(activities, ({ after }) => new Set(after).size);
  const ready = new Set<number>();
  for (let i = 0; i < n; i++) if (left[i] === 0) ready.add(i);
  const placed: number[] = [];
  while (ready.size > 0) {
    let next = -1;
    for (const i of ready)
      if (next < 0 || (keys[i] ?? 0) < (keys[next] ?? 0) || (keys[i] === keys[next] && i < next)) next = i;
    ready.delete(next);
    let earliest = 0;
    for (const j of activities[next]?.after ?? []) earliest = Math.max(earliest, finish[j] ?? 0);
    let chosen = -1;
    let bestStart = 0;
    let bestEnd = Infinity;
    const modes = activities[next]?.modes ?? [];
    modes.forEach((each, m) => {
      if (fixed && fixed[next] !== m) return;
      const at = model.single
        ? firstGap(model, next, m, earliest, placed, start, finish, mode)
        : firstFit(model, next, each, earliest, placed, start, finish, mode);
      if (at + each.duration < bestEnd) {
        bestEnd = at + each.duration;
        bestStart = at;
        chosen = m;
      }
    });
    start[next] = bestStart;
    finish[next] = bestEnd;
    mode[next] = chosen;
    let slot = placed.length;
    while (slot > 0 && (start[placed[slot - 1] ?? 0] ?? 0) > bestStart) slot--;
    placed.splice(slot, 0, next);
    for (const j of followers[next] ?? []) {
      left[j] = (left[j] ?? 0) - 1;
      if (left[j] === 0) ready.add(j);
    }
  }
  return { start, mode, makespan: n === 0 ? 0 : Math.max(...finish) };
}

/**
 * The first time from `earliest` at which the mode fits beside what is placed, where there is one of every resource: `inOrder`
 * is what is placed by start, so the first gap that is long enough is the answer.
 */
function firstGap(
  model: Model,
  i: number,
  m: number,
  earliest: number,
  inOrder: readonly number[],
  start: Int32Array,
  finish: Int32Array,
  modes: Int32Array,
): number {
  const { n, masks, barred } = model;
  const duration = model.activities[i]?.modes[m]?.duration ?? 0;
  const mask = masks[i]?.[m] ?? 0;
  let at = earliest;
  if (duration === 0) return at;
  for (const j of inOrder) {
    if (
      (finish[j] ?? 0) <= at ||
      (((masks[j]?.[modes[j] ?? 0] ?? 0) & mask) === 0 && barred[i * n + j] === 0)
    )
      continue;
    if ((start[j] ?? 0) >= at + duration) break;
    at = finish[j] ?? 0;
  }
  return at;
}

/** The first time from `earliest` at which the mode fits beside what is placed: that time, or where something placed ends. */
function firstFit(
  model: Model,
  i: number,
  mode: WorkMode,
  earliest: number,
  placed: readonly number[],
  start: Int32Array,
  finish: Int32Array,
  modes: Int32Array,
): number {
  if (mode.duration === 0) return earliest;
  const times = [earliest];
  for (const j of placed) if ((finish[j] ?? 0) > earliest) times.push(finish[j] ?? 0);
  times.sort((a, b) => a - b);
  for (const at of times) if (fits(model, i, mode, at, placed, start, finish, modes)) return at;
  return times[times.length - 1] ?? earliest;
}

function fits(
  model: Model,
  i: number,
  mode: WorkMode,
  at: number,
  placed: readonly number[],
  start: Int32Array,
  finish: Int32Array,
  modes: Int32Array,
): boolean {
  const end = at + mode.duration;
  const overlapping = placed.filter((j) => (start[j] ?? 0) < end && (finish[j] ?? 0) > at);
  for (const j of overlapping) if (model.excluded[i]?.includes(j)) return false;
  for (const { resource, amount } of mode.uses) {
    const capacity = model.resources[resource]?.capacity ?? 0;
    // The load rises only where something starts, so the peaks are at `at` and at starts inside the window.
    const peaks = [at, ...overlapping.map((j) => start[j] ?? 0).filter((time) => time > at)];
    for (const time of peaks) {
      let load = amount;
      for (const j of overlapping) {
        if ((start[j] ?? 0) > time || (finish[j] ?? 0) <= time) continue;
        const used = model.activities[j]?.modes[modes[j] ?? 0]?.uses.find((use) => use.resource === resource);
        load += used?.amount ?? 0;
      }
      if (load > capacity) return false;
    }
  }
  return true;
}

/** Everything as late as it can be, then as early as it can be again; repeated while that shortens the schedule. */
export function justify(model: Model, timing: Timing): Timing {
  const mirror = mirrored(model);
  let best = timing;
  for (let k = 0; k < 4; k++) {
    const late = serial(
      mirror,
      best.start.map((start, i) => -(start + durationOf(model, best, i))),
      best.mode,
    );
    const keys = late.start.map((start, i) => late.makespan - start - durationOf(model, best, i));
    const early = serial(model, keys, best.mode);
    if (early.makespan >= best.makespan) return early.makespan < best.makespan ? early : best;
    best = early;
  }
  return best;
}

function durationOf(model: Model, timing: Timing, i: number): number {
  return model.activities[i]?.modes[timing.mode[i] ?? 0]?.duration ?? 0;
}

const mirrors = new WeakMap<Model, Model>();
function mirrored(model: Model): Model {
  const known = mirrors.get(model);
  if (known) return known;
  const mirror: Model = {
    ...model,
    activities: model.activities.map((activity, i) => ({ ...activity, after: model.followers[i] ?? [] })),
    followers: model.activities.map(({ after }) => [...new Set(after)]),
    order: [...model.order].reverse(),
    head: model.tail,
    tail: model.head,
  };
  mirrors.set(model, mirror);
  return mirror;
}

/** Priority keys, smaller first: latest finish, latest start, longest tail, most followers, most work behind, as written. */
function rules(model: Model): ArrayLike<number>[] {
  const { n, head, tail, shortest, before } = model;
  const all = Array.from({ length: n }, (_, i) => i);
  const count = (i: number): number => all.reduce((sum, j) => sum + (before[i * n + j] ?? 0), 0);
  const behind = (i: number): number =>
    all.reduce((sum, j) => sum + (before[i * n + j] ? (shortest[j] ?? 0) : 0), shortest[i] ?? 0);
  return [
    all.map((i) => -(tail[i] ?? 0)),
    all.map((i) => -(tail[i] ?? 0) - (shortest[i] ?? 0)),
    all.map((i) => (head[i] ?? 0) - (tail[i] ?? 0)),
    all.map((i) => -count(i)),
    all.map((i) => -behind(i)),
    all,
    all.map((i) => head[i] ?? 0),
    all.map((i) => -(shortest[i] ?? 0)),
  ];
}

/** A fixed stream of numbers in [0, 1): linear congruence (Numerical Recipes). */
export function numbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 4_294_967_296;
  };
}
