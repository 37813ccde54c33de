// Waits by the clock in working time: against the definition itself, looked up time by time, and schedules with such waits, with
// room before a break and with pauses against every schedule there is.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  between,
  leavesTime,
  noLater,
  noSooner,
  passed,
  type Pause,
} from '../../../src/domain/plan/scheduling/clock.js';
import { scheduleJobs, type ScheduleProblem } from '../../../src/domain/plan/schedule-jobs.js';

const pauses = fc
  .uniqueArray(fc.integer({ min: 0, max: 20 }), { maxLength: 4 })
  .chain((at) =>
    fc.tuple(
      ...[...at]
        .sort((a, b) => a - b)
        .map((each) => fc.record({ at: fc.constant(each), length: fc.integer({ min: 1, max: 9 }) })),
    ),
  ) as fc.Arbitrary<readonly Pause[]>;
const time = fc.integer({ min: 0, max: 22 });
const all = Array.from({ length: 80 }, (_, k) => k - 30);

/** The definition: working time between the two, and every pause that begins at one of them or between. */
function apart(list: readonly Pause[], finish: number, start: number): number {
  return (
    start -
    finish +
    list.filter(({ at }) => at >= finish && at <= start).reduce((sum, { length }) => sum + length, 0)
  );
}

describe('by the clock', () => {
  test('from an end to a beginning', () => {
    fc.assert(
      fc.property(pauses, time, time, (list, a, b) => {
        const [finish, start] = [Math.min(a, b), Math.max(a, b)];
        expect(between(list, finish, start)).toBe(apart(list, finish, start));
      }),
    );
  });
  test('the first beginning and the last end that leave a wait', () => {
    fc.assert(
      fc.property(pauses, time, time, (list, at, wait) => {
        const after = all.filter((each) => each >= at && apart(list, at, each) >= wait);
        expect(passed(list, at, wait)).toBe(Math.min(...after));
        const before = all.filter((each) => each <= at && apart(list, each, at) >= wait);
        expect(leavesTime(list, at, wait)).toBe(Math.max(...before));
      }),
    );
  });
  test('the last beginning and the first end within a limit; none where a pause is too long', () => {
    fc.assert(
      fc.property(pauses, time, time, (list, at, most) => {
        const after = all.filter((each) => each >= at && apart(list, at, each) <= most);
        const last = noLater(list, at, most);
        if (after.length > 0) expect(last).toBe(Math.max(...after));
        else expect(last).toBeLessThan(at);
        const before = all.filter((each) => each <= at && apart(list, each, at) <= most);
        const first = noSooner(list, at, most);
        if (before.length > 0) expect(first).toBe(Math.min(...before));
        else expect(first).toBeGreaterThan(at);
      }),
    );
  });
});

/** The shortest by trying every start of everything; undefined where nothing works within the horizon. */
function shortest(problem: ScheduleProblem, horizon: number): number | undefined {
  const { activities, breaks = [], pauses: list = [], gaps = [], resources } = problem;
  let best: number | undefined;
  const start: number[] = [];
  const length = (i: number): number => activities[i]?.modes[0]?.duration ?? 0;
  const fits = (i: number): boolean => {
    const at = start[i] ?? 0;
    const end = at + length(i);
    const one = activities[i];
    if (!one) return false;
    if (one.after.some((j) => j < i && (start[j] ?? 0) + length(j) > at)) return false;
    if (one.whole && breaks.some((each) => each > at && each < end + (one.room ?? 0))) return false;
    for (const { first, then, leastClock, mostClock } of gaps) {
      if (then !== i || first > i) continue;
      const wait = apart(list, (start[first] ?? 0) + length(first), at);
      if (at < (start[first] ?? 0) + length(first)) return false;
      if (leastClock !== undefined && wait < leastClock) return false;
      if (mostClock !== undefined && wait > mostClock) return false;
    }
    return resources.every(({ capacity }, r) => {
      for (let t = at; t < end; t++) {
        let load = 0;
        for (let j = 0; j <= i; j++)
          if ((start[j] ?? 0) <= t && t < (start[j] ?? 0) + length(j))
            load += activities[j]?.modes[0]?.uses.find((use) => use.resource === r)?.amount ?? 0;
        if (load > capacity) return false;
      }
      return true;
    });
  };
  const place = (i: number): void => {
    if (i === activities.length) {
      const end = Math.max(0, ...activities.map((_, j) => (start[j] ?? 0) + length(j)));
      best = Math.min(best ?? Infinity, end);
      return;
    }
    for (let at = 0; at + length(i) <= (best ?? horizon + 1) - 1; at++) {
      start[i] = at;
      if (fits(i)) place(i + 1);
    }
    start.length = i;
  };
  place(0);
  return best;
}

test('schedules with waits by the clock are the shortest there are', () => {
  const activity = fc.record({
    length: fc.integer({ min: 1, max: 4 }),
    whole: fc.boolean(),
    room: fc.integer({ min: 0, max: 2 }),
    before: fc.integer({ min: -1, max: 2 }),
    kind: fc.constantFrom('least', 'most', 'none'),
    wait: fc.integer({ min: 1, max: 8 }),
  });
  let limited = 0;
  fc.assert(
    fc.property(
      fc.array(activity, { minLength: 2, maxLength: 4 }),
      fc.integer({ min: 5, max: 7 }),
      (list, shift) => {
        const breaks = [shift, 2 * shift, 3 * shift, 4 * shift, 5 * shift, 6 * shift];
        const problem: ScheduleProblem = {
          activities: list.map(({ length, whole, room, before }, i) => ({
            name: `a${i}`,
            after: before >= 0 && before < i ? [before] : [],
            modes: [{ duration: length, uses: [{ resource: 0, amount: i % 2 === 0 ? 2 : 1 }] }],
            whole: whole && length + room <= shift,
            room,
          })),
          resources: [{ name: 'R', capacity: 2 }],
          breaks,
          pauses: breaks.map((at) => ({ at, length: 7 })),
          gaps: list.flatMap(({ before, kind, wait }, i) =>
            before >= 0 && before < i && kind !== 'none'
              ? [
                  {
                    first: before,
                    then: i,
                    ...(kind === 'most' ? { mostClock: wait - 1 } : { leastClock: wait }),
                  },
                ]
              : [],
          ),
        };
        const best = shortest(problem, 6 * shift);
        fc.pre(best !== undefined);
        const found = scheduleJobs(problem, { shakes: 30, nodes: 20_000 });
        expect(found.kind).toBe('schedule');
        if (found.kind !== 'schedule') return;
        expect([found.tooFarApart, found.makespan, found.optimal]).toEqual([0, best, true]);
        expect(found.lowerBound).toBeLessThanOrEqual(best ?? 0);
        if (problem.gaps?.some((gap) => gap.mostClock !== undefined)) limited++;
      },
    ),
    { numRuns: 150 },
  );
  expect(limited).toBeGreaterThan(20);
});
