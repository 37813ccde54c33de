// Good schedules fast: several priority rules, each justified, then a population of schedules that are crossed two and two
// (activity lists and ways of doing things; after Hartmann 1998 and, for the double justification of every child, Valls,
// Ballestín and Quintanilla 2008). Chance comes from a fixed stream of numbers, so the same problem always gives the same
// schedule.

import type { Model } from './model.js';
import { builderOf, drawnTogether, listBy, tooFarApart, type Builder, type Timing } from './serial.js';

interface Member {
  readonly timing: Timing;
  /** In order of start. */
  readonly list: readonly number[];
  readonly apart: number;
  readonly price: number;
}

/** The best of all rules and of `tries` more. Among schedules of one length the one with the smaller cost is kept. */
export function bestSchedule(
  model: Model,
  tries: number,
  stopAt: number,
  cost: (timing: Timing) => number,
): Timing {
  const builder = builderOf(model);
  const random = numbers(20_240_229);
  const member = (timing: Timing): Member => memberOf(model, timing, cost);
  let left = tries;
  let best: Member | undefined;
  const consider = (one: Member): Member => {
    if (!best || better(one, best)) best = one;
    return one;
  };
  const done = (): boolean => {
    if (!best || best.apart > 0 || best.timing.makespan > stopAt) return left <= 0;
    // Nothing shorter exists: a few more only for a cheaper one of the same length.
    left = best.price === 0 ? 0 : Math.min(left, 12);
    return left <= 0;
  };
  let members = rules(model).map((keys) =>
    consider(member(builder.justify(builder.build(listBy(model, keys))))),
  );
  const size = Math.max(8, Math.round(1.4 * Math.sqrt(tries)));
  while (members.length < size && !done()) {
    left--;
    members.push(consider(member(shaken(builder, members[Math.floor(random() * 8)] ?? members[0]!, random))));
  }
  members.sort(order);
  let stale = 0;
  while (!done()) {
    const children: Member[] = [];
    const before = best;
    for (let k = 0; k < size && !done(); k++) {
      left--;
      const a = picked(members, random);
      const b = picked(members, random);
      children.push(consider(member(crossed(builder, a, b, random))));
    }
    members = distinct([...members, ...children].sort(order)).slice(0, size);
    stale = best === before ? stale + 1 : 0;
    // A population that finds nothing more is renewed around its best few.
    if (stale >= 12 || members.length < size / 2) {
      stale = 0;
      members = members.slice(0, 4);
      while (members.length < size && !done()) {
        left--;
        members.push(consider(member(shaken(builder, members[members.length % 4] ?? members[0]!, random))));
      }
      members.sort(order);
    }
  }
  return (best ?? members[0]!).timing; // there is a member for every rule
}

function memberOf(model: Model, timing: Timing, cost: (timing: Timing) => number): Member {
  const drawn = drawnTogether(model, timing);
  const rank = positions(model);
  const list = [...model.order].sort(
    (a, b) => (drawn.start[a] ?? 0) - (drawn.start[b] ?? 0) || (rank[a] ?? 0) - (rank[b] ?? 0),
  );
  return { timing: drawn, list, apart: tooFarApart(model, drawn), price: cost(drawn) };
}

function order(a: Member, b: Member): number {
  return a.apart - b.apart || a.timing.makespan - b.timing.makespan || a.price - b.price;
}

function better(a: Member, b: Member): boolean {
  return order(a, b) < 0;
}

/** One of each schedule only. */
function distinct(sorted: readonly Member[]): Member[] {
  return sorted.filter(
    (one, k) =>
      k === 0 ||
      order(one, sorted[k - 1] ?? one) !== 0 ||
      one.timing.start.some((at, i) => at !== sorted[k - 1]?.timing.start[i]),
  );
}

/** The better of two. */
function picked(members: readonly Member[], random: () => number): Member {
  const a = Math.floor(random() * members.length);
  const b = Math.floor(random() * members.length);
  return members[Math.min(a, b)]!; // both are positions
}

/** The one's middle part between the other's beginning and end, ways along with the places; a little is changed by chance. */
function crossed(builder: Builder, a: Member, b: Member, random: () => number): Timing {
  const { model } = builder;
  const n = model.n;
  const from = Math.floor(random() * n);
  const to = from + Math.floor(random() * (n - from + 1));
  const taken = new Uint8Array(n);
  const list: number[] = [];
  const modes = a.timing.mode.slice();
  const take = (i: number, ways: Int32Array): void => {
    if (taken[i] === 1) return;
    taken[i] = 1;
    modes[i] = ways[i] ?? 0;
    list.push(i);
  };
  for (let k = 0; k < from; k++) take(a.list[k] ?? 0, a.timing.mode);
  for (const i of b.list) {
    if (list.length >= to) break;
    take(i, b.timing.mode);
  }
  for (const i of a.list) take(i, a.timing.mode);
  mutate(model, list, modes, random);
  return builder.justify(builder.build(list, modes));
}

/** Neighbours in the list change places where neither waits for the other; now and then another way is taken. */
function mutate(model: Model, list: number[], modes: Int32Array, random: () => number): void {
  const { n, before, activities } = model;
  for (let k = 0; k + 1 < n; k++) {
    const a = list[k] ?? 0;
    const b = list[k + 1] ?? 0;
    if (random() < 0.05 && !before[a * n + b]) {
      list[k] = b;
      list[k + 1] = a;
    }
    const ways = activities[a]?.modes.length ?? 1;
    if (ways > 1 && random() < 0.04) modes[a] = Math.floor(random() * ways);
  }
}

/** The same order with starts moved by chance; ways kept, chosen for the earliest finish, or a few changed. */
function shaken(builder: Builder, one: Member, random: () => number): Timing {
  const { model } = builder;
  const spread = (0.05 + 0.5 * random() * random()) * one.timing.makespan;
  const keys = Float64Array.from(one.timing.start, (start) => start + (random() - 0.5) * spread);
  const free = random() < 0.4;
  const modes = one.timing.mode.slice();
  for (let i = 0; i < model.n; i++) {
    const ways = model.activities[i]?.modes.length ?? 1;
    if (ways > 1 && random() < 0.08) modes[i] = Math.floor(random() * ways);
  }
  return builder.justify(builder.build(listBy(model, keys), free ? undefined : modes));
}

const ranks = new WeakMap<Model, Int32Array>();
function positions(model: Model): Int32Array {
  const known = ranks.get(model);
  if (known) return known;
  const rank = new Int32Array(model.n);
  model.order.forEach((i, k) => {
    rank[i] = k;
  });
  ranks.set(model, rank);
  return rank;
}

/** Priority keys, smaller first: latest finish, latest start, least float, most followers, most work behind, as written … */
function rules(model: Model): ArrayLike<number>[] {
  const { n, head, tail, shortest, before, activities } = model;
  const all = Array.from({ length: n }, (_, i) => i);
  const count = new Int32Array(n);
  const behind = Int32Array.from(shortest);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++)
      if (before[i * n + j]) {
        count[i] = (count[i] ?? 0) + 1;
        behind[i] = (behind[i] ?? 0) + (shortest[j] ?? 0);
      }
  const work = (i: number): number =>
    (activities[i]?.modes ?? []).reduce(
      (sum, mode) => sum + mode.uses.reduce((amount, use) => amount + use.amount, 0) * mode.duration,
      0,
    );
  return [
    all.map((i) => -(tail[i] ?? 0)),
    all.map((i) => -(tail[i] ?? 0) - (shortest[i] ?? 0)),
    all.map((i) => (head[i] ?? 0) - (tail[i] ?? 0)),
    all.map((i) => -(count[i] ?? 0)),
    all.map((i) => -(behind[i] ?? 0)),
    all,
    all.map((i) => head[i] ?? 0),
    all.map((i) => -work(i)),
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
