// Which steps are sure to be finished before which others start.
// A step waits for everything written above it. A step that says `after` waits for the steps it names, and for nothing
// else: it may then go on at the same time as its neighbours. So an order without `after` is one line of steps, and
// work side by side is always something the author said. Names that no step has are left to whoever resolves names.

import type { Step } from '../model/job.js';

export interface Sequence {
  readonly steps: readonly Step[];
  /** Positions in `steps` in an order that keeps every `before`, as close to the written one as can be. */
  readonly order: readonly number[];
  /** True where step i is sure to be finished before step j starts. */
  before(i: number, j: number): boolean;
  /** Each a ring of positions that wait for one another; their forward `after` is ignored in `order`. */
  readonly circles: readonly (readonly number[])[];
}

/** The step that is walked at a place. @throws RangeError for a place beyond the order. */
export function walkedAt({ order }: Pick<Sequence, 'order'>, place: number): number {
  const step = order[place];
  if (step === undefined) throw new RangeError(`Nothing is walked at ${place}.`);
  return step;
}

/** @throws RangeError for a position that the order does not have. */
export function stepAt({ steps }: Pick<Sequence, 'steps'>, i: number): Step {
  const step = steps[i];
  if (!step) throw new RangeError(`The order has no step ${i}.`);
  return step;
}

export function sequenceOf(steps: readonly Step[]): Sequence {
  const n = steps.length;
  const named = new Map<string, number>();
  steps.forEach((step, i) => {
    if (step.name !== undefined && !named.has(step.name)) named.set(step.name, i);
  });
  const after = steps.map((step) => step.after.flatMap((use) => named.get(use.name) ?? []));
  if (after.every((list) => list.length === 0))
    return { steps, order: steps.map((_, i) => i), circles: [], before: (i, j) => i < j };

  // A step that waits for everything above it need only look back to the last one that did so too.
  let since = 0;
  const waits = after.map((list, i) => {
    if (list.length > 0) return list;
    const found = Array.from({ length: i - since }, (_, k) => since + k);
    since = i;
    return found;
  });

  const circles = circlesOf(waits);
  const inCircle = new Map<number, number>();
  circles.forEach((circle, c) => {
    for (const i of circle) inCircle.set(i, c);
  });
  for (const [i, list] of waits.entries()) {
    const circle = inCircle.get(i);
    if (circle !== undefined) waits[i] = list.filter((j) => j < i || inCircle.get(j) !== circle);
  }

  const order = arrange(waits);
  const words = (n + 31) >> 5;
  const closure = new Uint32Array(n * words);
  for (const i of order) {
    for (const j of waits[i] ?? []) {
      for (let w = 0; w < words; w++) closure[i * words + w]! |= closure[j * words + w]!; // both rows lie inside the table
      closure[i * words + (j >> 5)]! |= 1 << (j & 31);
    }
  }
  return {
    steps,
    order,
    circles,
    before: (i, j) => ((closure[j * words + (i >> 5)]! >>> (i & 31)) & 1) === 1,
  };
}

/** Earliest written first among those whose waits are over. */
function arrange(waits: readonly (readonly number[])[]): number[] {
  const left = waits.map((list) => new Set(list).size);
  const followers: number[][] = waits.map(() => []);
  waits.forEach((list, i) => {
    for (const j of new Set(list)) followers[j]?.push(i);
  });
  const ready = new Set<number>();
  left.forEach((count, i) => {
    if (count === 0) ready.add(i);
  });
  const order: number[] = [];
  while (ready.size > 0) {
    const i = Math.min(...ready);
    ready.delete(i);
    order.push(i);
    for (const j of followers[i] ?? []) {
      left[j]! -= 1; // j is a step
      if (left[j] === 0) ready.add(j);
    }
  }
  return order;
}

/** Strongly connected groups of more than one step, or a step that waits for itself (Tarjan 1972). */
function circlesOf(waits: readonly (readonly number[])[]): number[][] {
  const index = new Int32Array(waits.length).fill(-1);
  const low = new Int32Array(waits.length);
  const onStack = new Uint8Array(waits.length);
  const stack: number[] = [];
  const found: number[][] = [];
  let next = 0;
  const visit = (root: number): void => {
    const calls: [number, number][] = [[root, 0]];
    while (calls.length > 0) {
      const call = calls[calls.length - 1]!; // not empty
      const [i, k] = call;
      if (k === 0) {
        index[i] = low[i] = next++;
        stack.push(i);
        onStack[i] = 1;
      }
      const j = waits[i]?.[k];
      if (j !== undefined) {
        call[1]++;
        if (index[j] === -1) calls.push([j, 0]);
        else if (onStack[j]) low[i] = Math.min(low[i]!, index[j]!); // i and j are steps
        continue;
      }
      if (low[i] === index[i]) {
        const group: number[] = [];
        for (;;) {
          const top = stack.pop();
          if (top === undefined) break;
          onStack[top] = 0;
          group.push(top);
          if (top === i) break;
        }
        if (group.length > 1 || waits[i]?.includes(i)) found.push(group.sort((a, b) => a - b));
      }
      calls.pop();
      const parent = calls[calls.length - 1];
      if (parent) low[parent[0]] = Math.min(low[parent[0]]!, low[i]!); // both are steps
    }
  };
  for (let i = 0; i < waits.length; i++) if (index[i] === -1) visit(i);
  return found.sort((a, b) => a[0]! - b[0]!); // groups are not empty
}
