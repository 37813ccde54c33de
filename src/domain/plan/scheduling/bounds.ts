// How short could the schedule be at best? Each of these is proven: the longest chain of work; the work that must pass
// through things that cannot overlap (one machine, with heads and tails, interruptible: Jackson 1955, Carlier 1982); and the
// work that must be shared by a set of crews or a resource of several units.

import type { Model } from './model.js';

export interface LowerBound {
  readonly value: number;
  readonly because: string;
}

export function lowerBound(model: Model): LowerBound {
  const { n, head, tail, shortest } = model;
  let best: LowerBound = { value: 0, because: 'there is nothing to do' };
  const raise = (value: number, because: string): void => {
    if (value > best.value) best = { value, because };
  };
  const chain = Math.max(
    0,
    ...Array.from({ length: n }, (_, i) => (head[i] ?? 0) + (shortest[i] ?? 0) + (tail[i] ?? 0)),
  );
  raise(chain, 'the longest chain of steps that wait for one another');
  for (const clique of cliques(model))
    raise(oneMachine(clique, head, shortest, tail), `steps that cannot overlap: ${names(model, clique)}`);
  const shared = sharedWork(model);
  raise(
    shared.value,
    `the work that ${shared.resources.map((r) => model.resources[r]?.name ?? '').join(' and ')} must share`,
  );
  return best;
}

/** Preemptive one-machine bound with heads and tails: jobs by longest tail as they become available. */
export function oneMachine(
  jobs: readonly number[],
  head: ArrayLike<number>,
  duration: ArrayLike<number>,
  tail: ArrayLike<number>,
): number {
  const left = new Map(jobs.map((i) => [i, duration[i] ?? 0]));
  const arrivals = [...new Set(jobs.map((i) => head[i] ?? 0))].sort((a, b) => a - b);
  let time = 0;
  let bound = 0;
  while (left.size > 0) {
    let next = -1;
    for (const i of left.keys())
      if ((head[i] ?? 0) <= time && (next < 0 || (tail[i] ?? 0) > (tail[next] ?? 0))) next = i;
    if (next < 0) {
      time = Math.min(...[...left.keys()].map((i) => head[i] ?? 0));
      continue;
    }
    const arrival = arrivals.find((at) => at > time) ?? Infinity;
    const spent = Math.min(left.get(next) ?? 0, arrival - time);
    time += spent;
    const rest = (left.get(next) ?? 0) - spent;
    if (rest > 0) left.set(next, rest);
    else {
      left.delete(next);
      bound = Math.max(bound, time + (tail[next] ?? 0));
    }
  }
  return bound;
}

/** Sets of activities that pairwise cannot overlap: one grown greedily from each activity, longest first. */
export function cliques(model: Model): number[][] {
  const { n, apart, shortest } = model;
  const byWork = Array.from({ length: n }, (_, i) => i).sort(
    (a, b) => (shortest[b] ?? 0) - (shortest[a] ?? 0) || a - b,
  );
  const found = new Map<string, number[]>();
  for (const seed of byWork.slice(0, Math.max(10, Math.ceil(20_000 / n)))) {
    const clique = [seed];
    for (const i of byWork) if (i !== seed && clique.every((j) => apart[i * n + j])) clique.push(i);
    clique.sort((a, b) => a - b);
    if (clique.length > 1) found.set(clique.join(' '), clique);
  }
  return [...found.values()];
}

/**
 * The work that resources must share, over every window from a least head to a least tail. A price on each resource's time,
 * together 1 for each unit of time, makes the cheapest ways of everything in the window a valid bound, whatever the prices;
 * good ones are sought from several starts by making dear what is overloaded (Lagrange; multiplicative weights).
 */
function sharedWork(model: Model): { readonly value: number; readonly resources: readonly number[] } {
  const { n, head, tail, activities, resources } = model;
  const users = Array.from({ length: n }, (_, i) => i).filter((i) =>
    activities[i]?.modes.every((mode) => mode.uses.length > 0 && mode.duration > 0),
  );
  let best = { value: 0, resources: [] as number[] };
  const starts = startingPrices(model, users);
  const tries: {
    readonly inside: readonly number[];
    readonly lead: number;
    readonly price: Float64Array;
    readonly value: number;
  }[] = [];
  const note = (lead: number, value: number, price: Float64Array): void => {
    if (!Number.isFinite(value)) return;
    const bound = lead + Math.ceil(value - 1e-6);
    const most = Math.max(...price.map((each, k) => each * (resources[k]?.capacity ?? 1)));
    if (bound > best.value)
      best = {
        value: bound,
        resources: [...price.keys()].filter(
          (k) => (price[k] ?? 0) * (resources[k]?.capacity ?? 1) > 0.02 * most,
        ),
      };
  };
  for (const r of spread([...new Set(users.map((i) => head[i] ?? 0))])) {
    for (const q of spread([...new Set(users.map((i) => tail[i] ?? 0))])) {
      const inside = users.filter((i) => (head[i] ?? 0) >= r && (tail[i] ?? 0) >= q);
      for (const price of inside.length > 0 ? starts : []) {
        const { value } = priced(model, inside, price);
        tries.push({ inside, lead: r + q, price, value: r + q + value });
        note(r + q, value, price);
      }
    }
  }
  tries.sort((a, b) => b.value - a.value);
  for (const { inside, lead, price: start } of tries.slice(0, 8)) {
    let price: Float64Array = start.map((each) => each + 1e-3 / resources.length);
    for (let step = 0; step < 60; step++) {
      price = normal(model, price);
      const { value, load } = priced(model, inside, price);
      note(lead, value, price);
      const rate = 0.5 / (1 + step / 8);
      price = price.map(
        (each, k) =>
          each *
          Math.exp(
            Math.min(2, rate * ((load[k] ?? 0) / (resources[k]?.capacity ?? 1) / Math.max(1, value) - 1)),
          ),
      );
    }
  }
  return best;
}

/** Each resource alone, each set of alternatives at equal prices and at prices by speed, and everything. */
function startingPrices(model: Model, users: readonly number[]): Float64Array[] {
  const { activities, resources } = model;
  const sets = new Map<string, number[]>();
  for (const i of users) {
    const modes = activities[i]?.modes ?? [];
    const width = Math.max(...modes.map((mode) => mode.uses.length));
    for (let place = -width; place < width; place++) {
      const set = [...new Set(modes.flatMap((mode) => mode.uses.at(place)?.resource ?? []))].sort(
        (a, b) => a - b,
      );
      if (set.length > 0) sets.set(set.join(' '), set);
    }
  }
  sets.set(
    'all',
    resources.map((_, r) => r),
  );
  return [...sets.values()].flatMap((set) =>
    [() => 1, (r: number) => 1 / Math.max(1, meanDuration(model, r, users))].map((worth) => {
      const price = new Float64Array(resources.length);
      for (const r of set) price[r] = worth(r);
      return normal(model, price);
    }),
  );
}

/** Prices that together cost 1 for each unit of time. */
function normal(model: Model, price: Float64Array): Float64Array {
  const total = price.reduce((sum, each, k) => sum + each * (model.resources[k]?.capacity ?? 1), 0);
  return total > 0 ? price.map((each) => each / total) : price;
}

/** The cheapest way of everything at the prices, and what that loads. */
function priced(
  model: Model,
  inside: readonly number[],
  price: Float64Array,
): { readonly value: number; readonly load: Float64Array } {
  const load = new Float64Array(model.resources.length);
  let value = 0;
  for (const i of inside) {
    let cheapest = Infinity;
    let chosen: Model['activities'][number]['modes'][number] | undefined;
    for (const mode of model.activities[i]?.modes ?? []) {
      let cost = 0;
      for (const { resource, amount } of mode.uses) cost += (price[resource] ?? 0) * amount * mode.duration;
      if (cost < cheapest) {
        cheapest = cost;
        chosen = mode;
      }
    }
    value += cheapest;
    for (const { resource, amount } of chosen?.uses ?? [])
      load[resource] = (load[resource] ?? 0) + amount * (chosen?.duration ?? 0);
  }
  return { value, load };
}

function meanDuration(model: Model, resource: number, users: readonly number[]): number {
  const durations = users.flatMap((i) =>
    (model.activities[i]?.modes ?? [])
      .filter((mode) => mode.uses.some((use) => use.resource === resource))
      .map((mode) => mode.duration),
  );
  return durations.length === 0
    ? 1
    : durations.reduce((sum, duration) => sum + duration, 0) / durations.length;
}

/** At most so many of the values, the extremes among them. */
function spread(values: readonly number[]): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  const most = 40;
  if (sorted.length <= most) return sorted;
  return Array.from(
    { length: most },
    (_, k) => sorted[Math.round((k * (sorted.length - 1)) / (most - 1))] ?? 0,
  );
}

function names(model: Model, clique: readonly number[]): string {
  const shown = clique.slice(0, 3).map((i) => `"${model.activities[i]?.name ?? ''}"`);
  return shown.join(', ') + (clique.length > 3 ? ` and ${clique.length - 3} more` : '');
}
