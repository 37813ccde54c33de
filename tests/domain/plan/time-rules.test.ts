// What the clock adds to a plan, looked at from outside: the plan's days and hours are read as a fitter would read them.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Job } from '../../../src/domain/model/job.js';
import type { Plant, Shift } from '../../../src/domain/model/plant.js';
import type { JobPlan, PlannedStep } from '../../../src/domain/plan/job-plan.js';
import { planJob } from '../../../src/domain/plan/plan-job.js';
import { floatsOf } from '../../../src/domain/plan/floats.js';
import { mm, on, origin, plant, screw, stated } from '../../kit/estate.js';
import {
  cover,
  crew,
  everywhere,
  holdDown,
  job,
  line,
  platform,
  withOrder,
  worldOf,
} from '../order/stories.js';

const plan = (of: Job, effort = {}): JobPlan => planJob(of, worldOf(of), { quick: true, ...effort });
const shift = (from: number, to: number): Shift => ({
  from: { hours: from, text: '', origin: origin() },
  to: { hours: to, text: '', origin: origin() },
  days: [],
  origin: origin(),
});
const spiral = screw({ flight: { width: mm(80), thickness: mm(25), origin: origin() } });

const said = (found: JobPlan): string[] => found.problems.map((each) => each.kind);

/** Hours on the clock from the first day's midnight. */
const clock = (moment: PlannedStep['from']): number => (moment ? moment.day * 24 + moment.hour : NaN);
const called = (found: JobPlan, action: string): PlannedStep[] =>
  found.steps.filter((each) => each.step.action === action);

describe('shift ends', () => {
  const of = (shifts: readonly Shift[], metres: number): Job => {
    const base = line([metres], [10, 0], { plant: plant({ shifts }) });
    return job({ ...base, screw: spiral }, ['all'], {
      crews: [crew('Alpha', 3, ['welding'])],
      window: { from: on('2027-02-01'), to: on('2027-02-28'), origin: origin() },
      screwChange: { screw: spiral, origin: origin(), joints: 'bolted', cut: 'cold' } as NonNullable<
        Job['screwChange']
      >,
      liftLimit: stated('mass', 2000),
    });
  };

  test('lifts, unbolting and handing back are begun and finished in one shift, whatever the shift', () => {
    for (const length of [4, 5, 6, 8]) {
      const found = plan(of([shift(7, 7 + length)], 4));
      for (const action of [
        'remove screw',
        'insert screw',
        'unbolt drive',
        'bolt drive',
        'release screw',
        'remove isolation',
        'run empty',
      ])
        for (const each of called(found, action)) {
          if (each.finish - each.start > length) continue;
          expect([action, length, each.from?.day]).toEqual([action, length, each.to?.day]);
          expect(clock(each.to) - clock(each.from)).toBeCloseTo(each.finish - each.start, 6);
        }
    }
  });

  test('what is longer than a shift is said, and only that', () => {
    const found = plan(of([shift(7, 7.5)], 4));
    const kinds = found.problems.map((each) => each.kind);
    expect(kinds).toContain('longer than a shift');
    expect(
      found.longerThanShift.every((p) => (found.steps[p]?.finish ?? 0) - (found.steps[p]?.start ?? 0) > 0.5),
    ).toBe(true);
    expect(plan(of([shift(0, 24)], 4)).problems.map((each) => each.kind)).not.toContain(
      'longer than a shift',
    );
  });
});

describe('a platform that must be moved', () => {
  const unit = (hours: number): Plant['unitTimes'] => [
    { item: 'access move', time: stated('duration', hours), origin: origin() },
  ];
  const of = (hours: number): Job => {
    const base = line([4, 4], [10, 60, 60], { plant: plant({ unitTimes: unit(hours) }) });
    return job({ ...base, access: [{ ...everywhere, kind: 'mobile platform' }] }, ['all'], {
      crews: [crew('Alpha', 4), crew('Bravo', 4)],
      accessUnits: [platform('MP1')],
    });
  };

  test('the time of a move is in the plan: it passes between two places', () => {
    for (const hours of [0, 1, 3]) {
      const found = plan(of(hours));
      const visits = found.steps.filter((each) => each.unit === 'MP1');
      expect(visits.length).toBeGreaterThan(3);
      for (const [k, each] of visits.entries()) {
        const before = visits[k - 1];
        if (!before || runOf(before) === runOf(each)) continue;
        expect(each.start - before.finish).toBeGreaterThanOrEqual(hours - 1e-9);
      }
    }
  });

  test('moves that take longer make a longer plan, and a longer bound', () => {
    const [none, some, many] = [0, 1, 4].map((hours) => plan(of(hours)));
    expect(some?.duration).toBeGreaterThan(none?.duration ?? 0);
    expect(many?.duration).toBeGreaterThan(some?.duration ?? 0);
    expect(none?.optimal && some?.optimal).toBe(true);
  });

  test('nothing is moved for the drive, which is a single place at the end of the length worked on', () => {
    const change = { screw: spiral, origin: origin(), joints: 'bolted', cut: 'cold' };
    const base = line([4], [10, 0]);
    const durations = [0, 5].map((hours) => {
      const found = plan(
        job(
          {
            ...base,
            plant: plant({ unitTimes: unit(hours) }),
            screw: spiral,
            access: [{ ...everywhere, kind: 'mobile platform' }],
          },
          ['all'],
          {
            crews: [crew('Alpha', 4, ['welding'])],
            accessUnits: [platform('MP1')],
            screwChange: change as NonNullable<Job['screwChange']>,
            liftLimit: stated('mass', 2000),
          },
        ),
      );
      expect(called(found, 'unbolt drive').map((each) => each.unit)).toEqual(['MP1']);
      return found.duration;
    });
    expect(durations[1]).toBe(durations[0]);
  });
});

/** Number of the run that the step is at; the platform's steps of this job are all at one run. */
const runOf = (each: PlannedStep): string => {
  expect(each.step.stretch?.kind).toBe('run');
  return stretchOf(each);
};

const stretchOf = (each: PlannedStep): string =>
  JSON.stringify(each.step.stretch, (key, value: unknown) => (key === 'origin' ? undefined : value));

test('covers come off no more than a shift of work before the work under them begins', () => {
  const base = line([12, 12], [10, 60, 60], { plant: plant({ shifts: [shift(7, 11)] }) });
  const length = base.length.value;
  const of = job(
    {
      ...base,
      covers: [cover(0, length / 2), cover(length / 2, length)],
      holdDowns: [holdDown(1000), holdDown(length - 1000)],
    },
    ['all'],
    { crews: [crew('Alpha', 2)] },
  );
  const found = plan(of);
  expect(found.openTooLong).toBe(0);
  expect(called(found, 'covers off').length).toBe(2);
  for (const off of called(found, 'covers off')) {
    const under = found.steps.filter(
      (each) =>
        each.start >= off.finish - 1e-9 &&
        each.step.action === 'hold-downs off' &&
        stretchOf(each) === stretchOf(off),
    );
    expect(Math.min(...under.map((each) => each.start)) - off.finish).toBeLessThanOrEqual(4 + 1e-9);
  }
});

describe('hot work', () => {
  const of = (shifts: readonly Shift[]): Job => {
    const base = line([4, 4], [10, 60, 60], { plant: plant({ shifts }) });
    return job({ ...base, screw: spiral }, ['all'], {
      crews: [crew('Alpha', 3, ['welding']), crew('Bravo', 3)],
      window: { from: on('2027-02-01'), to: on('2027-02-28'), origin: origin() },
      screwChange: { screw: spiral, origin: origin() } as NonNullable<Job['screwChange']>,
      liftLimit: stated('mass', 200),
    });
  };

  test('is watched from the moment it ends, within the same shift', () => {
    for (const length of [6, 7, 9, 24]) {
      const found = plan(of([shift(0, length)]));
      expect(found.watchTooLate).toBe(0);
      const watches = called(found, 'fire watch');
      expect(watches.length).toBeGreaterThan(1);
      for (const watch of watches) {
        const hot = found.steps.filter(
          (each) => each.step.heat?.kind === 'hot' && each.finish <= watch.start + 1e-9,
        );
        expect(Math.max(...hot.map((each) => each.finish))).toBeCloseTo(watch.start, 9);
        expect(watch.from?.day).toBe(watch.to?.day);
      }
    }
  });

  test('a watch that an order puts off is said', () => {
    const { liftLimit: _, ...rest } = of([shift(0, 24)]);
    const found = plan(
      withOrder(rest, [
        'h: remove screw by Alpha hot work shielded wet fire watch 60 min',
        'c: clean run 1 by Alpha after h',
        'fire watch by Alpha after h, c',
      ]),
    );
    expect(found.watchTooLate).toBeGreaterThan(0);
    expect(said(found)).toContain('fire watch too late');
  });
});

test('a float is time by which a step can move to the right with nothing else touched but what follows', () => {
  const step = fc.record({ length: fc.integer({ min: 1, max: 5 }), idle: fc.integer({ min: 0, max: 3 }) });
  fc.assert(
    fc.property(
      fc.array(step, { minLength: 1, maxLength: 6 }),
      fc.integer({ min: 0, max: 2 }),
      (steps, move) => {
        // A chain with idle time: each step may be late by all the idle time behind it.
        let at = 0;
        const placed = steps.map(({ length, idle }, p) => {
          const start = at + (p > 0 ? move : 0);
          at = start + length + idle;
          return {
            start,
            finish: start + length,
            after: p > 0 ? [p - 1] : [],
            whole: false,
            unit: 'MP1',
            extent: [10 * p, 10 * p + 10] as const,
          };
        });
        const floats = floatsOf(placed, { nights: [], move });
        const idle = steps.map((each) => each.idle);
        expect(floats).toEqual(steps.map((_, p) => idle.slice(p, -1).reduce((sum, each) => sum + each, 0)));
      },
    ),
    { numRuns: 100, seed: 5 },
  );
});
