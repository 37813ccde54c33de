// The critical path method by two published examples, through what a plan is made of: the shortest time by the scheduler,
// floats backwards from the end, and the chain of which every delay delays the end.

import { expect, test } from 'vitest';
import { chainOf } from '../../../src/domain/plan/arrange.js';
import { floatsOf } from '../../../src/domain/plan/floats.js';
import type { PlannedStep } from '../../../src/domain/plan/job-plan.js';
import { scheduleJobs } from '../../../src/domain/plan/schedule-jobs.js';

interface Activity {
  readonly name: string;
  readonly duration: number;
  readonly after: readonly string[];
}
const list = (rows: readonly (readonly [string, number, string])[]): Activity[] =>
  rows.map(([name, duration, after]) => ({ name, duration, after: after === '' ? [] : after.split(' ') }));

// Data of cpp.mod among the examples of GLPK (building a house), which states the optimum 46.
const house = list([
  ['A', 3, ''],
  ['B', 4, 'A'],
  ['C', 3, 'B'],
  ['D', 10, 'B'],
  ['E', 8, 'D'],
  ['F', 4, 'D'],
  ['G', 6, 'D'],
  ['H', 8, 'C E F G'],
  ['I', 5, 'H'],
  ['J', 5, 'H'],
  ['K', 4, 'I'],
  ['L', 2, 'J'],
  ['M', 4, 'K L'],
]);

// A study text's worked example of the method: 16 h, critical A-B-D-E-G, slack 1 for C and F.
const study = list([
  ['A', 6, ''],
  ['B', 2, 'A'],
  ['C', 2, 'A'],
  ['D', 3, 'B'],
  ['F', 2, 'C'],
  ['E', 4, 'D F'],
  ['G', 1, 'E'],
]);

/** Every activity as soon as what it waits for is done, in the order of starts. */
function timed(activities: readonly Activity[]) {
  const position = (name: string): number => activities.findIndex((each) => each.name === name);
  const plan = scheduleJobs({
    activities: activities.map(({ name, duration, after }) => ({
      name,
      after: after.map(position),
      modes: [{ duration, uses: [] }],
    })),
    resources: [],
  });
  if (plan.kind !== 'schedule') throw new Error(plan.kind);
  const { start, finish } = plan;
  const order = start
    .map((_, i) => i)
    .sort((a, b) => (start[a] ?? 0) - (start[b] ?? 0) || (finish[a] ?? 0) - (finish[b] ?? 0));
  const after = order.map((i) => (activities[i]?.after ?? []).map((name) => order.indexOf(position(name))));
  const float = floatsOf(
    order.map((i, p) => ({
      start: start[i] ?? 0,
      finish: finish[i] ?? 0,
      after: after[p] ?? [],
      whole: false,
      unit: undefined,
      extent: undefined,
    })),
    { nights: [], move: 0 },
  );
  const rows = order.map((i, p) => ({
    start: start[i],
    finish: finish[i],
    after: after[p],
    critical: float[p] === 0,
  })) as unknown as readonly PlannedStep[]; // what the chain reads of them
  const name = (p: number): string => activities[order[p] ?? -1]?.name ?? '?';
  return {
    plan,
    path: chainOf(rows).map(name),
    floats: Object.fromEntries(float.map((each, p) => [name(p), each])),
  };
}

test('GLPK example: 46, proven', () => {
  const { plan } = timed(house);
  expect([plan.makespan, plan.lowerBound, plan.optimal]).toEqual([46, 46, true]);
});

test('study text: 16 h, the critical chain, and the slack of the others', () => {
  const { plan, path, floats } = timed(study);
  expect(plan.makespan).toBe(16);
  expect(path).toEqual(['A', 'B', 'D', 'E', 'G']);
  expect(floats).toEqual({ A: 0, B: 0, C: 1, D: 0, E: 0, F: 1, G: 0 });
});
