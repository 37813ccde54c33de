import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { scheduleJobs, type ScheduleProblem } from '../../../src/domain/plan/schedule-jobs.js';
import { minimise, type Row, type Term } from './highs.js';

// Instance ft06 (Fisher and Thompson 1963), data as in jssp.mod among the examples of GLPK, which states the optimum 55:
// machine of each operation in order, and the time of each job on each machine.
const machines = [
  [3, 1, 2, 4, 6, 5],
  [2, 3, 5, 6, 1, 4],
  [3, 4, 6, 1, 2, 5],
  [2, 1, 3, 4, 5, 6],
  [3, 2, 5, 6, 1, 4],
  [2, 4, 6, 1, 5, 3],
];
const times = [
  [3, 6, 1, 7, 6, 3],
  [10, 8, 5, 4, 10, 10],
  [9, 1, 5, 4, 7, 8],
  [5, 5, 5, 3, 8, 9],
  [3, 3, 9, 1, 5, 4],
  [10, 3, 1, 3, 4, 9],
];
const ft06: ScheduleProblem = {
  activities: machines.flatMap((row, j) =>
    row.map((machine, t) => ({
      name: `${j + 1} on ${machine}`,
      after: t > 0 ? [j * 6 + t - 1] : [],
      modes: [{ duration: times[j]?.[machine - 1] ?? 0, uses: [{ resource: machine - 1, amount: 1 }] }],
    })),
  ),
  resources: Array.from({ length: 6 }, (_, i) => ({ name: `machine ${i + 1}`, capacity: 1 })),
};

function solved(problem: ScheduleProblem, effort = {}) {
  const result = scheduleJobs(problem, effort);
  if (result.kind !== 'schedule') throw new Error(result.kind);
  return result;
}

test('ft06: 55, proven', () => {
  const result = solved(ft06);
  expect([result.makespan, result.lowerBound, result.optimal]).toEqual([55, 55, true]);
  expect(faults(ft06, result)).toEqual([]);
});

test('the same problem gives the same schedule', () => {
  expect(solved(ft06)).toEqual(solved(ft06));
});

test('a circle is said, not scheduled', () => {
  const one = (after: number[]): ScheduleProblem['activities'][number] => ({
    name: 'x',
    after,
    modes: [{ duration: 1, uses: [] }],
  });
  expect(scheduleJobs({ activities: [one([1]), one([0])], resources: [] })).toEqual({ kind: 'circular' });
});

test('more than a resource has, or no way at all, is a fault', () => {
  const problem = (amount: number): ScheduleProblem => ({
    activities: [{ name: 'x', after: [], modes: [{ duration: 1, uses: [{ resource: 0, amount }] }] }],
    resources: [{ name: 'crew', capacity: 1 }],
  });
  expect(() => scheduleJobs(problem(2))).toThrow(RangeError);
  expect(() => scheduleJobs({ activities: [{ name: 'x', after: [], modes: [] }], resources: [] })).toThrow(
    RangeError,
  );
  expect(solved(problem(1)).makespan).toBe(1);
});

const instances = fc.integer({ min: 2, max: 6 }).chain((n) =>
  fc.record({
    activities: fc.tuple(
      ...Array.from({ length: n }, (_, i) =>
        fc.record({
          name: fc.constant(`a${i}`),
          after:
            i === 0
              ? fc.constant([] as number[])
              : fc.uniqueArray(fc.integer({ min: 0, max: i - 1 }), { maxLength: 2 }),
          modes: fc.array(
            fc.record({
              duration: fc.integer({ min: 1, max: 4 }),
              uses: fc
                .integer({ min: 0, max: 1 })
                .chain((resource) => fc.integer({ min: 1, max: 2 }).map((amount) => [{ resource, amount }])),
            }),
            { minLength: 1, maxLength: 2 },
          ),
        }),
      ),
    ),
    resources: fc.tuple(fc.constant({ name: 'r0', capacity: 2 }), fc.constant({ name: 'r1', capacity: 3 })),
    exclusions: fc.uniqueArray(
      fc
        .tuple(fc.integer({ min: 0, max: n - 1 }), fc.integer({ min: 0, max: n - 1 }))
        .filter(([a, b]) => a < b),
      { maxLength: 2, selector: ([a, b]) => `${a} ${b}` },
    ),
  }),
) as fc.Arbitrary<ScheduleProblem>;

describe('small random problems', () => {
  test('as short as the integer programme says, and sound', () => {
    fc.assert(
      fc.property(instances, (problem) => {
        const result = solved(problem);
        expect(faults(problem, result)).toEqual([]);
        expect(result.optimal).toBe(true);
        expect(result.makespan).toBe(byIntegerProgramme(problem));
      }),
      { numRuns: 120 },
    );
  });

  test('without the exact search the bound still holds and the schedule is still sound', () => {
    fc.assert(
      fc.property(instances, (problem) => {
        const result = solved(problem, { nodes: 0, shakes: 5 });
        expect(faults(problem, result)).toEqual([]);
        expect(result.lowerBound).toBeLessThanOrEqual(byIntegerProgramme(problem));
        expect(result.makespan).toBeGreaterThanOrEqual(byIntegerProgramme(problem));
      }),
      { numRuns: 60 },
    );
  });
});

// With what the work on site adds: work that no shift end may split, waits with a least and a most, a platform that takes time
// to move. The second road here is trying everything.
const siteWork = fc.integer({ min: 2, max: 4 }).chain((n) =>
  fc.record({
    activities: fc.tuple(
      ...Array.from({ length: n }, (_, i) =>
        fc.record({
          name: fc.constant(`a${i}`),
          whole: fc.boolean(),
          after:
            i === 0
              ? fc.constant([] as number[])
              : fc.uniqueArray(fc.integer({ min: 0, max: i - 1 }), { maxLength: 1 }),
          modes: fc.array(
            fc.record({
              duration: fc.integer({ min: 1, max: 3 }),
              uses: fc.oneof(
                fc.constant([{ resource: 0, amount: 1 }]),
                fc.integer({ min: 0, max: 2 }).map((place) => [
                  { resource: 0, amount: 1 },
                  { resource: 1, amount: 1, place: [place, place + 2] as const },
                ]),
              ),
            }),
            { minLength: 1, maxLength: 2 },
          ),
        }),
      ),
    ),
    resources: fc.tuple(
      fc.constant({ name: 'people', capacity: 2 }),
      fc.integer({ min: 0, max: 2 }).map((move) => ({ name: 'platform', capacity: 1, move })),
    ),
    breaks: fc.constantFrom([], [3, 6, 9, 12, 15, 18, 21, 24, 27, 30], [4, 8, 12, 16, 20, 24, 28]),
    gaps: fc.array(
      fc
        .tuple(
          fc.integer({ min: 0, max: n - 1 }),
          fc.integer({ min: 0, max: n - 1 }),
          fc.integer({ min: 0, max: 2 }),
          fc.integer({ min: 0, max: 3 }),
        )
        .filter(([a, b]) => a < b)
        .map(([first, then, least, more]) =>
          more === 3 ? { first, then, least } : { first, then, least, most: least + more },
        ),
      { maxLength: 2 },
    ),
  }),
) as fc.Arbitrary<ScheduleProblem>;

describe('work with shift ends, waits and a platform that moves', () => {
  test('as short as trying everything says, and sound', () => {
    let possible = 0;
    fc.assert(
      fc.property(siteWork, (problem) => {
        const least = byTryingAll(problem, 15);
        const result = solved(problem, { shakes: 20 });
        expect(result.lowerBound).toBeLessThanOrEqual(least);
        if (least === Infinity) {
          expect(result.tooFarApart).toBeGreaterThan(0);
          return;
        }
        possible++;
        expect(faults(problem, result)).toEqual([]);
        expect([result.makespan, result.optimal, result.tooFarApart]).toEqual([least, true, 0]);
      }),
      { numRuns: 120 },
    );
    expect(possible).toBeGreaterThan(80);
  });

  test('without the exact search: sound but for what it says is too far apart, and the bound holds', () => {
    fc.assert(
      fc.property(siteWork, (problem) => {
        const result = solved(problem, { nodes: 0, shakes: 10 });
        expect(result.lowerBound).toBeLessThanOrEqual(byTryingAll(problem, 15));
        if (result.tooFarApart === 0) expect(faults(problem, result)).toEqual([]);
        else expect(faults(problem, result).every((fault) => fault.includes('too late'))).toBe(true);
      }),
      { numRuns: 50 },
    );
  });
});

/** The least length by trying every way and every start up to the horizon; Infinity for none. */
function byTryingAll(problem: ScheduleProblem, horizon: number): number {
  const { activities } = problem;
  const start: number[] = [];
  const finish: number[] = [];
  const mode: number[] = [];
  let best = Infinity;
  const visit = (i: number): void => {
    if (i === activities.length) {
      best = Math.max(0, ...finish);
      return;
    }
    (activities[i]?.modes ?? []).forEach((way, m) => {
      for (let at = 0; at + way.duration < Math.min(best, horizon + 1); at++) {
        start[i] = at;
        finish[i] = at + way.duration;
        mode[i] = m;
        const part = { ...problem, activities: activities.slice(0, i + 1) };
        const fault = faults(part, { start: start.slice(0, i + 1), finish: finish.slice(0, i + 1), mode });
        if (fault.length === 0) visit(i + 1);
      }
    });
    start.length = finish.length = i;
  };
  visit(0);
  return best;
}

/** What is wrong with a schedule: precedence, capacity at any time, pairs that must not overlap, breaks, waits and moves. */
function faults(
  problem: ScheduleProblem,
  { start, finish, mode }: Pick<ReturnType<typeof solved>, 'start' | 'finish' | 'mode'>,
): string[] {
  const wrong: string[] = [];
  const { activities, resources } = problem;
  activities.forEach(({ after, whole }, i) => {
    for (const j of after) if ((finish[j] ?? 0) > (start[i] ?? 0)) wrong.push(`${j} before ${i}`);
    for (const at of problem.breaks ?? [])
      if (whole && at > (start[i] ?? 0) && at < (finish[i] ?? 0)) wrong.push(`${i} split at ${at}`);
  });
  for (let time = 0; time < Math.max(0, ...finish); time++) {
    resources.forEach(({ capacity }, r) => {
      const load = activities.reduce(
        (sum, activity, i) =>
          (start[i] ?? 0) <= time && (finish[i] ?? 0) > time
            ? sum + (activity.modes[mode[i] ?? 0]?.uses.find((use) => use.resource === r)?.amount ?? 0)
            : sum,
        0,
      );
      if (load > capacity) wrong.push(`resource ${r} at ${time}`);
    });
  }
  for (const [i, j] of problem.exclusions ?? [])
    if ((start[i] ?? 0) < (finish[j] ?? 0) && (start[j] ?? 0) < (finish[i] ?? 0))
      wrong.push(`${i} with ${j}`);
  for (const { first, then, least = 0, most = Infinity } of problem.gaps ?? []) {
    if (then >= activities.length) continue;
    const gap = (start[then] ?? 0) - (finish[first] ?? 0);
    if (gap < least) wrong.push(`${then} too soon after ${first}`);
    if (gap > most) wrong.push(`${then} too late after ${first}`);
  }
  const stand = (i: number, r: number): readonly number[] | undefined =>
    activities[i]?.modes[mode[i] ?? 0]?.uses.find((use) => use.resource === r)?.place;
  resources.forEach(({ move = 0 }, r) => {
    activities.forEach((_, i) => {
      activities.forEach((__, j) => {
        const [a, b] = [stand(i, r), stand(j, r)];
        if (!a || !b || (start[i] ?? 0) > (start[j] ?? 0)) return;
        // Stretches of two metres that begin at 0, 1 or 2: only the first and the last have nothing in common.
        if (Math.abs((a[0] ?? 0) - (b[0] ?? 0)) < 2) return;
        if ((start[j] ?? 0) < (finish[i] ?? 0) + move) wrong.push(`no time to move from ${i} to ${j}`);
      });
    });
  });
  return wrong;
}

/** Time-indexed: x is 1 where an activity starts in a mode at a time (Pritsker, Watters and Wolfe 1969). */
function byIntegerProgramme({ activities, resources, exclusions = [] }: ScheduleProblem): number {
  const horizon = activities.reduce(
    (sum, { modes }) => sum + Math.max(...modes.map((mode) => mode.duration)),
    0,
  );
  const slots = activities.flatMap(({ modes }, i) =>
    modes.flatMap((mode, m) =>
      Array.from({ length: horizon - mode.duration + 1 }, (_, t) => ({
        i,
        m,
        t,
        mode,
        name: `x${i}_${m}_${t}`,
      })),
    ),
  );
  const of = (i: number) => slots.filter((slot) => slot.i === i);
  const ends = (i: number, sign = 1): Term[] =>
    of(i).map((slot) => ({ by: sign * (slot.t + slot.mode.duration), of: slot.name }));
  const running = (i: number, time: number) =>
    of(i).filter((slot) => slot.t <= time && slot.t + slot.mode.duration > time);
  const rows: Row[] = [];
  activities.forEach(({ after }, i) => {
    rows.push({ sum: of(i).map((slot) => ({ by: 1, of: slot.name })), is: '=', value: 1 });
    rows.push({ sum: [{ by: 1, of: 'makespan' }, ...ends(i, -1)], is: '>=', value: 0 });
    for (const j of after)
      rows.push({
        sum: [
          ...of(i)
            .filter((slot) => slot.t > 0)
            .map((slot) => ({ by: slot.t, of: slot.name })),
          ...ends(j, -1),
        ],
        is: '>=',
        value: 0,
      });
  });
  for (let time = 0; time < horizon; time++) {
    resources.forEach(({ capacity }, r) => {
      const sum = activities.flatMap((_, i) =>
        running(i, time).flatMap((slot) =>
          slot.mode.uses
            .filter((use) => use.resource === r)
            .map((use) => ({ by: use.amount, of: slot.name })),
        ),
      );
      if (sum.length > 0) rows.push({ sum, is: '<=', value: capacity });
    });
    for (const [i, j] of exclusions)
      rows.push({
        sum: [...running(i, time), ...running(j, time)].map((slot) => ({ by: 1, of: slot.name })),
        is: '<=',
        value: 1,
      });
  }
  // The end is one variable with a larger range; the rest are 0 or 1 by the rows that sum to 1.
  const value = minimise(
    [{ by: 1, of: 'makespan' }],
    rows.filter((row) => row.sum.length > 0),
    ['makespan', ...slots.map((slot) => slot.name)],
    horizon,
  );
  if (value === undefined) throw new Error('The integer programme found nothing.');
  return Math.round(value);
}
