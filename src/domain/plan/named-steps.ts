// Gives scheduled steps their place in a written order: who waits for whom, in as few words as will do. A step that waits for
// everything above it says nothing; any other names the last of what it waits for.

import type { Step } from '../model/job.js';

/**
 * For each position of `order`, the positions that must be finished first: what it waits for, and what was done before by the
 * same team or must not overlap with it. All of them, not only the nearest.
 */
export function waitsOf(
  order: readonly number[],
  finish: readonly number[],
  start: readonly number[],
  waits: readonly (readonly number[])[],
  apart: readonly (readonly [number, number])[],
  teams: (i: number) => readonly number[],
): number[][] {
  const position = new Map(order.map((i, p) => [i, p]));
  const partners = new Map<number, number[]>();
  for (const [a, b] of apart) {
    partners.set(a, [...(partners.get(a) ?? []), b]);
    partners.set(b, [...(partners.get(b) ?? []), a]);
  }
  return order.map((i) => {
    const mine = teams(i);
    const found = new Set<number>(waits[i] ?? []);
    for (const j of order) {
      if ((finish[j] ?? 0) > (start[i] ?? 0) || (position.get(j) ?? 0) >= (position.get(i) ?? 0)) continue;
      if (teams(j).some((team) => mine.includes(team)) || partners.get(i)?.includes(j)) found.add(j);
    }
    return [...found].flatMap((j) => position.get(j) ?? []).sort((a, b) => a - b);
  });
}

/** Steps in their order with names and `after`, so that they mean exactly these waits. */
export function namedSteps(steps: readonly Step[], waits: readonly (readonly number[])[]): Step[] {
  const all: Set<number>[] = [];
  const nearest: number[][] = [];
  steps.forEach((_, p) => {
    const direct = waits[p] ?? [];
    const closed = new Set<number>();
    for (const q of direct) {
      closed.add(q);
      for (const r of all[q] ?? []) closed.add(r);
    }
    all.push(closed);
    nearest.push(direct.filter((q) => !direct.some((other) => all[other]?.has(q))));
  });
  const inLine = steps.map((_, p) => (all[p]?.size ?? 0) === p);
  const named = new Set<number>();
  nearest.forEach((list, p) => {
    if (!inLine[p]) for (const q of list) named.add(q);
  });
  const names = new Map([...named].sort((a, b) => a - b).map((p, k) => [p, `s${k + 1}`]));
  return steps.map((step, p) => {
    const name = names.get(p);
    const after = inLine[p]
      ? []
      : (nearest[p] ?? []).map((q) => ({ name: names.get(q) ?? '', origin: step.origin }));
    return { ...step, after, ...(name === undefined ? {} : { name }) };
  });
}
