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
  const chain = Math.max(0, ...Array.from({ length: n }, (_, i) => (head[i] ?? 0) + (shortest[i] ?? 0) + (tail[i] ?? 0)));
  raise(chain, 'the longest chain of steps that wait for one another');
  for (const clique of cliques(model)) raise(oneMachine(clique, head, shortest, tail), `steps that cannot overlap: ${names(model, clique)}`);
  for (const set of alternatives(model)) raise(sharedWork(model, set), `the work that ${set.map((r) => model.resources[r]?.name ?? '').join(' and ')} must share`);
  return best;
}

/** Preemptive one-machine bound with heads and tails: jobs by longest tail as they become available. */
export function oneMachine(jobs: readonly number[], head: ArrayLike<number>, duration: ArrayLike<number>, tail: ArrayLike<number>): number {
  const left = new Map(jobs.map((i) => [i, duration[i] ?? 0]));
  const arrivals = [...new Set(jobs.map((i) => head[i] ?? 0))].sort((a, b) => a - b);
  let time = 0;
  let bound = 0;
  while (left.size > 0) {
    let next = -1;
    for (const i of left.keys()) if ((head[i] ?? 0) <= time && (next < 0 || (tail[i] ?? 0) > (tail[next] ?? 0))) next = i;
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
  const byWork = Array.from({ length: n }, (_, i) => i).sort((a, b) => (shortest[b] ?? 0) - (shortest[a] ?? 0) || a - b);
  const found = new Map<string, number[]>();
  for (const seed of byWork) {
    const clique = [seed];
    for (const i of byWork) if (i !== seed && clique.every((j) => apart[i * n + j])) clique.push(i);
    clique.sort((a, b) => a - b);
    if (clique.length > 1) found.set(clique.join(' '), clique);
  }
  return [...found.values()];
}

/** Sets of resources of which every way of doing some activity takes one: single ones, and whole groups of alternatives. */
function alternatives(model: Model): number[][] {
  const found = new Map<string, number[]>();
  for (const { modes } of model.activities) {
    for (const { resource } of modes[0]?.uses ?? []) {
      const alone = modes.every((mode) => mode.uses.some((use) => use.resource === resource));
      if (alone) found.set(`${resource}`, [resource]);
    }
    const crews = [...new Set(modes.map((mode) => mode.uses[0]?.resource ?? -1))].filter((r) => r >= 0).sort((a, b) => a - b);
    if (crews.length > 1) found.set(crews.join(' '), crews);
  }
  return [...found.values()];
}

/**
 * Work over capacity with the least head and tail, for every threshold of both. Ways of unequal speed are weighed by
 * capacity and by speed; any weights give a valid bound, because each resource gives at most its weight in each unit of time.
 */
function sharedWork(model: Model, set: readonly number[]): number {
  const { n, head, tail, activities, resources } = model;
  const inSet = new Set(set);
  const users = Array.from({ length: n }, (_, i) => i).filter((i) => activities[i]?.modes.every((mode) => mode.uses.some((use) => inSet.has(use.resource))));
  let best = 0;
  for (const weights of [set.map(() => 1), set.map((r) => 1 / Math.max(1, meanDuration(model, r, users)))]) {
    const weight = new Map(set.map((r, k) => [r, weights[k] ?? 1]));
    const total = set.reduce((sum, r) => sum + (weight.get(r) ?? 1) * (resources[r]?.capacity ?? 1), 0);
    const work = users.map((i) => Math.min(...(activities[i]?.modes ?? []).map((mode) =>
      mode.duration * mode.uses.reduce((sum, use) => sum + (inSet.has(use.resource) ? use.amount * (weight.get(use.resource) ?? 1) : 0), 0))));
    const heads = [...new Set(users.map((i) => head[i] ?? 0))];
    const tails = [...new Set(users.map((i) => tail[i] ?? 0))];
    for (const r of heads) {
      for (const q of tails) {
        let sum = 0;
        users.forEach((i, k) => { if ((head[i] ?? 0) >= r && (tail[i] ?? 0) >= q) sum += work[k] ?? 0; });
        if (sum > 0) best = Math.max(best, r + q + Math.ceil(sum / total - 1e-6));
      }
    }
  }
  return best;
}

function meanDuration(model: Model, resource: number, users: readonly number[]): number {
  const durations = users.flatMap((i) => (model.activities[i]?.modes ?? []).filter((mode) => mode.uses.some((use) => use.resource === resource)).map((mode) => mode.duration));
  return durations.length === 0 ? 1 : durations.reduce((sum, duration) => sum + duration, 0) / durations.length;
}

function names(model: Model, clique: readonly number[]): string {
  const shown = clique.slice(0, 3).map((i) => `"${model.activities[i]?.name ?? ''}"`);
  return shown.join(', ') + (clique.length > 3 ? ` and ${clique.length - 3} more` : '');
}
