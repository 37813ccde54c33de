// What is remembered is what a new search finds, whichever single fact of a problem has changed since.

import { expect, test } from 'vitest';
import { scheduledBefore } from '../../../src/domain/plan/scheduled-before.js';
import { scheduleJobs, type ScheduleProblem } from '../../../src/domain/plan/schedule-jobs.js';

const start: ScheduleProblem = {
  activities: [
    { name: 'strip', after: [], modes: [{ duration: 4, uses: [{ resource: 0, amount: 1, place: [0, 2] }] }] },
    {
      name: 'clean',
      after: [],
      modes: [{ duration: 3, uses: [{ resource: 0, amount: 1, place: [5, 6] }] }],
      whole: true,
      room: 1,
    },
    {
      name: 'fit',
      after: [0, 1],
      modes: [
        { duration: 6, uses: [{ resource: 1, amount: 1 }] },
        { duration: 5, uses: [{ resource: 0, amount: 1 }] },
      ],
    },
    { name: 'measure', after: [1], modes: [{ duration: 2, uses: [{ resource: 1, amount: 1 }] }] },
  ],
  resources: [
    { name: 'platform', capacity: 1, move: 2 },
    { name: 'crew', capacity: 1 },
  ],
  exclusions: [[2, 3]],
  breaks: [8, 16, 24],
  pauses: [{ at: 8, length: 16 }],
  gaps: [{ first: 0, then: 2, least: 1 }],
};

/** The value with one number in it changed, for each of its numbers. */
function* oneChanged(value: unknown): Iterable<unknown> {
  if (typeof value === 'number') yield value + 1;
  else if (Array.isArray(value))
    for (const [i, each] of value.entries()) for (const other of oneChanged(each)) yield value.with(i, other);
  else if (typeof value === 'object' && value !== null)
    for (const [key, each] of Object.entries(value))
      for (const other of oneChanged(each)) yield { ...value, [key]: other };
}

test('each number of a problem changed alone', () => {
  const answer = (of: typeof scheduledBefore, problem: ScheduleProblem): unknown => {
    try {
      return of(problem, { shakes: 20, nodes: 50 });
    } catch (fault) {
      return String(fault);
    }
  };
  const first = answer(scheduledBefore, start);
  const others = new Set<string>();
  for (const other of oneChanged(start) as Iterable<ScheduleProblem>) {
    expect(answer(scheduledBefore, other)).toEqual(answer(scheduleJobs, other));
    expect(answer(scheduledBefore, start)).toEqual(first);
    others.add(JSON.stringify(answer(scheduleJobs, other)));
  }
  expect(others.size).toBeGreaterThan(10);
});

test('another effort is another question, and so is a preference among schedules of one length', () => {
  const late = { cost: ({ start: at }: { start: ArrayLike<number> }) => -(at[3] ?? 0) };
  expect(scheduledBefore(start, late)).toEqual(scheduleJobs(start, late));
  expect(scheduledBefore(start, {})).toEqual(scheduleJobs(start, {}));
  expect(scheduledBefore(start, { nodes: 0 })).toEqual(scheduleJobs(start, { nodes: 0 }));
});

test('is the same object while it is among the last that were asked for, and only then', () => {
  const chain = (count: number, first: number): ScheduleProblem => ({
    activities: Array.from({ length: count }, (_, i) => ({
      name: `step ${i}`,
      after: i === 0 ? [] : [i - 1],
      modes: [{ duration: i === 0 ? first : 1, uses: [] }],
    })),
    resources: [],
    exclusions: [],
  });
  const ask = (first: number) => scheduledBefore(chain(2, first), {});
  const isKept = (first: number): boolean => ask(first) === kept.get(first);
  const kept = new Map(Array.from({ length: 64 }, (_, i) => [i + 1, ask(i + 1)]));
  // All 64 are there; asking for the oldest makes the second the oldest.
  expect(isKept(1)).toBe(true);
  ask(100);
  expect([1, 3, 64].map(isKept)).toEqual([true, true, true]);
  expect(isKept(2)).toBe(false);
  // A problem is remembered up to 250 steps, and with a preference apart from without one.
  for (const [count, same] of [
    [250, true],
    [251, false],
  ] as const)
    expect(scheduledBefore(chain(count, 1), {}) === scheduledBefore(chain(count, 1), {})).toBe(same);
  const cost = (): number => 0;
  expect(scheduledBefore(start, { cost })).toBe(scheduledBefore(start, { cost }));
  expect(scheduledBefore(start, { cost })).not.toBe(scheduledBefore(start, {}));
});
