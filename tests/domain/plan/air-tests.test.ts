// Repeated tests of the air in the plan, looked at by somebody with a watch: nobody is inside longer than the interval after a
// test, nobody goes in after a night before one, work takes the time it takes besides, and what is claimed shortest is.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Job } from '../../../src/domain/model/job.js';
import type { Shift } from '../../../src/domain/model/plant.js';
import { reachesInside } from '../../../src/domain/order/people.js';
import type { JobPlan, PlannedStep } from '../../../src/domain/plan/job-plan.js';
import { planJob } from '../../../src/domain/plan/plan-job.js';
import { workAxis } from '../../../src/domain/plan/work-axis.js';
import { writeOrder } from '../../../src/domain/plan/write-order.js';
import { on, origin, plant, stated } from '../../kit/estate.js';
import { cover, crew, job, line, withOrder, worldOf } from '../order/stories.js';

const shift = (from: number, to: number): Shift => ({
  from: { hours: from, text: '', origin: origin() },
  to: { hours: to, text: '', origin: origin() },
  days: [],
  origin: origin(),
});
const plan = (of: Job, effort = {}): JobPlan => planJob(of, worldOf(of), { quick: true, ...effort });

/** `every` in hours; 0 for none. */
function enclosed(every: number, length: number, metres: readonly number[], test?: number): Job {
  const made = line(metres, [20, 60, 60, 60], {
    confinedSpace: true,
    plant: plant({
      shifts: [shift(7, 7 + length)],
      ...(every > 0 ? { gasTestInterval: stated('duration', every, `${every} h`) } : {}),
      ...(test === undefined
        ? {}
        : { unitTimes: [{ item: 'gas test', time: stated('duration', test), origin: origin() }] }),
    }),
  });
  const end = made.length.value;
  return job({ ...made, covers: [cover(0, end / 2), cover(end / 2, end)] }, ['all'], {
    crews: [crew('Alpha', 3), crew('Bravo', 3)],
    window: { from: on('2027-02-01'), to: on('2027-02-28'), origin: origin() },
  });
}

const tests = (found: JobPlan): PlannedStep[] => found.steps.filter(({ step }) => step.action === 'gas test');
const clock = (moment: PlannedStep['from']): number => (moment ? moment.day * 24 + moment.hour : NaN);

/** Stretches of working time in which somebody is inside, tests taken out. */
function inside(found: JobPlan): [number, number][] {
  const off = tests(found).map(({ start, finish }) => [start, finish] as const);
  return found.steps
    .filter(({ step, repeat }) => repeat === undefined && reachesInside(step))
    .flatMap(({ start, finish }) =>
      off.reduce<[number, number][]>(
        (left, [from, to]) =>
          left.flatMap(([a, b]): [number, number][] =>
            to <= a || from >= b
              ? [[a, b]]
              : (
                  [
                    [a, from],
                    [to, b],
                  ] as [number, number][]
                ).filter(([x, y]) => y > x + 1e-9),
          ),
        [[start, finish]],
      ),
    );
}

describe('the air', () => {
  const cases = fc.record({
    every: fc.constantFrom(1, 2, 3, 0),
    length: fc.constantFrom(6, 8, 10),
    metres: fc.array(fc.integer({ min: 4, max: 16 }), { minLength: 1, maxLength: 3 }),
    test: fc.constantFrom(0.25, 0.5, undefined),
  });
  test('is never older than its interval, nor from before a night, while anybody is inside', () => {
    let repeated = 0;
    fc.assert(
      fc.property(cases, ({ every, length, metres, test: takes }) => {
        const found = plan(enclosed(every, length, metres, takes), { shakes: 5, nodes: 50 });
        const done = tests(found);
        for (const [from, to] of inside(found)) {
          // Somebody looks at the watch at the end of every stretch, and at every end of a shift within it.
          for (const at of [to, ...nightsWithin(from, to, length)]) {
            const last = done
              .filter(({ finish }) => finish <= Math.max(from, at - length) + 1e-6 || finish < at - 1e-6)
              .at(-1);
            expect(last).toBeDefined();
            if (!last) continue;
            // Too little is left of a shift for a test and some work: everybody is out.
            const over =
              Math.abs(at / length - Math.round(at / length)) < 1e-6 ? last.finish - last.start : 0;
            if (every > 0) expect(at - last.finish).toBeLessThanOrEqual(every + over + 1e-6);
            // Work at the moment before the last one lies in the same shift as its test.
            expect(Math.floor((at - 1e-6) / length)).toBe(Math.floor((last.start + 1e-6) / length));
          }
        }
        repeated += done.filter(({ repeat }) => repeat !== undefined).length;
      }),
      { numRuns: 40 },
    );
    expect(repeated).toBeGreaterThan(100);
  });

  test('each test is a row with its time and somebody who does it, and no step of the written order', () => {
    const of = enclosed(2, 8, [16, 12], 0.25);
    const found = plan(of);
    const again = tests(found).filter(({ repeat }) => repeat !== undefined);
    expect(again.length).toBe(found.repeatGasTests?.times);
    expect(again.length).toBeGreaterThan(5);
    for (const each of again) {
      expect(each.finish - each.start).toBeCloseTo(0.25, 9);
      expect(each.people).toBe(1);
      expect(each.crews.length).toBeGreaterThan(0);
      expect(clock(each.to) - clock(each.from)).toBeCloseTo(0.25, 6);
    }
    expect(writeOrder(found).filter((text) => text.includes('gas test'))).toHaveLength(1);
    expect(found.violations).toEqual([]);
  });

  test('work takes its own time and that of the tests within it', () => {
    const free = plan(enclosed(0, 24, [4, 3], 0.5));
    const found = plan(enclosed(2, 24, [4, 3], 0.5));
    const own = (each: PlannedStep): number =>
      tests(found)
        .filter(({ start, finish }) => start >= each.start - 1e-9 && finish <= each.finish + 1e-9)
        .reduce((sum, { start, finish }) => sum - finish + start, each.finish - each.start);
    const total = (steps: readonly PlannedStep[], of: (each: PlannedStep) => number): number =>
      steps.filter(({ step }) => step.action === 'fit').reduce((sum, each) => sum + of(each), 0);
    expect(total(found.steps, own)).toBeCloseTo(
      total(free.steps, (each) => each.finish - each.start),
      9,
    );
    expect(found.duration).toBeGreaterThan(free.duration);
  });

  test('nobody tests for handing back and running, and a shorter interval never makes a shorter plan', () => {
    const lengths = [0, 4, 2, 1].map((every) => {
      const found = plan(enclosed(every, 8, [3], 0.25));
      const last = found.steps.find(({ step }) => step.action === 'remove isolation');
      expect(tests(found).every(({ finish }) => finish <= (last?.start ?? 0) + 1e-9)).toBe(true);
      expect(found.optimal).toBe(true);
      return found.duration;
    });
    lengths.slice(1).forEach((each, k) => expect(each).toBeGreaterThanOrEqual((lengths[k] ?? 0) - 1e-9));
  });

  test('a chain of work is as long as somebody with a watch reckons, minute by minute', () => {
    fc.assert(
      fc.property(
        fc.record({
          every: fc.constantFrom(1, 2, 3),
          length: fc.constantFrom(4, 6, 8),
          takes: fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 4 }),
          test: fc.constantFrom(0.25, 0.5),
        }),
        ({ every, length, takes, test: hours }) => {
          const of = enclosed(every, length, [4], hours);
          const lines = [
            'isolate takes 1 h',
            'prove dead takes 1 h',
            `gas test all every ${every} h`,
            ...takes.map((each) => `clean all takes ${each} h`),
            'remove isolation takes 1 h',
          ];
          const found = plan(withOrder(of, lines));
          // Minute by minute: a clock that runs through shifts, a worker, and a tester who must come first.
          let at = 120 + hours * 60;
          let fresh = every * 60;
          let left = takes.reduce((sum, each) => sum + each * 60, 0);
          const shiftMinutes = length * 60;
          const night = (): boolean => at % shiftMinutes === 0;
          while (left > 0) {
            if (night() || fresh === 0) {
              const end = (Math.floor(at / shiftMinutes) + 1) * shiftMinutes;
              // Too little is left of the shift for a test and some work.
              if (at + hours * 60 >= end) at = end;
              at += hours * 60;
              fresh = every * 60;
              continue;
            }
            at++;
            fresh--;
            left--;
          }
          if (at % shiftMinutes > shiftMinutes - 60) at = (Math.floor(at / shiftMinutes) + 1) * shiftMinutes;
          expect(found.duration * 60).toBeCloseTo(at + 60, 6);
          expect(found.optimal).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });
});

function nightsWithin(from: number, to: number, length: number): number[] {
  const found: number[] = [];
  for (let at = Math.ceil((from + 1e-6) / length) * length; at < to - 1e-6; at += length) found.push(at);
  return found;
}

describe('net time and working time', () => {
  test('there and back again, and never fewer hours than minutes of work', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 6 }),
        fc.option(fc.integer({ min: 30, max: 200 }), { nil: undefined }),
        fc.integer({ min: 5, max: 40 }),
        fc.integer({ min: 0, max: 900 }),
        fc.integer({ min: 0, max: 3000 }),
        (shifts, every, length, first, net) => {
          const nights = Array.from({ length: shifts }, (_, k) => ({ at: (k + 1) * 480, length: 960 }));
          const axis = workAxis(nights, { first, length, every });
          for (const side of ['start', 'finish'] as const) {
            expect(axis.toNet(axis.toWork(net, side))).toBe(net);
            expect(axis.toWork(net, side)).toBeGreaterThanOrEqual(net);
          }
          expect(axis.toWork(net, 'start')).toBeGreaterThanOrEqual(axis.toWork(net, 'finish'));
          // Between the end before it and the beginning after it lie exactly the pauses at that moment.
          const off = axis.pauses.filter(({ at }) => at === net).reduce((sum, each) => sum + each.length, 0);
          const gap = axis.toWork(net, 'start') - axis.toWork(net, 'finish');
          const slept = nights.filter(
            ({ at }) => at > axis.toWork(net, 'finish') - 1 && at <= axis.toWork(net, 'start'),
          );
          if (axis.breaks.filter((at) => at === net).length < 2)
            expect(gap + slept.reduce((sum, each) => sum + each.length, 0)).toBe(off);
        },
      ),
    );
  });
});
