// Plans run on the simulator by the clock: what dries or cools is left alone, nights counted in, and a crane holds one load, at
// one stand at a time. And the checker tells of two steps side by side exactly what the simulator cannot do.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CranePlace, Job } from '../../../src/domain/model/job.js';
import type { Shift } from '../../../src/domain/model/plant.js';
import { groundOf } from '../../../src/domain/order/ground.js';
import type { PlannedStep } from '../../../src/domain/plan/job-plan.js';
import { planJob } from '../../../src/domain/plan/plan-job.js';
import { hours, mm, on, origin, plant, screw, stated, use } from '../../kit/estate.js';
import { keepsTime, type TimedDeed } from '../order/simulator.js';
import { crew, job, kinds, line, withOrder, worldOf } from '../order/stories.js';

const shift = (from: number, to: number): Shift => ({
  from: { hours: from, text: '', origin: origin() },
  to: { hours: to, text: '', origin: origin() },
  days: [],
  origin: origin(),
});
/** Two stands of one crane: each bears its load over half of the trough, 6 m and no further. */
const stand = (chainage: number): CranePlace => ({
  use: use('C1'),
  crane: {
    name: 'C1',
    chart: [{ radius: mm(3100), load: stated('mass', 4000) }],
    origin: origin(),
    nameOrigin: origin(),
  },
  at: mm(chainage),
  offset: mm(0),
  origin: origin(),
});
const spiral = screw({ flight: { width: mm(80), thickness: mm(25), origin: origin() } });
const made = (shiftHours: number, settingUp: number): Job =>
  job(
    line([6, 5], [20, 20, 20], {
      screw: spiral,
      plant: plant({
        shifts: [shift(7, 7 + shiftHours)],
        unitTimes: [{ item: 'crane move', time: hours(settingUp), origin: origin() }],
      }),
    }),
    ['all'],
    {
      crews: [crew('Alpha', 3), crew('Bravo', 3)],
      cranes: [stand(3000), stand(9100)],
      window: { from: on('2027-02-01'), to: on('2027-03-28'), origin: origin() },
      screwChange: { screw: spiral, cut: 'cold', joints: 'bolted', origin: origin() },
    },
  );

/** Hours since the first day began. */
const clock = (moment: PlannedStep['from']): number => (moment ? moment.day * 24 + moment.hour : NaN);

function timed(of: Job): { readonly deeds: readonly TimedDeed[]; readonly stops: readonly string[] } {
  const world = worldOf(of);
  const plan = planJob(of, world, { quick: true, shakes: 10, nodes: 100 });
  const steps = plan.steps.map(({ step }) => step);
  const { areas } = groundOf(of, steps, world);
  const deeds = plan.steps.flatMap(({ step, from, to }, i): TimedDeed[] =>
    (areas[i] ?? []).map((area) => ({
      action: step.action,
      ...area,
      begins: clock(from),
      ends: clock(to),
      ...(step.rest ? { rests: step.rest.time.value } : {}),
      ...(step.action === 'remove screw' || step.action === 'insert screw'
        ? { hook: { name: 'C1', stand: area.to <= 6100 ? 'low' : 'high' } }
        : {}),
    })),
  );
  return { deeds, stops: plan.problems.map(({ kind }) => kind) };
}

const written = (dries: number, cools: number, takes: readonly number[]): string[] => {
  const [a = 1, b = 1, c = 1, d = 1] = takes;
  return [
    'isolate by Alpha',
    'p: prove dead by Alpha',
    `a: remove screw from 0 mm to 6000 mm by Alpha after p takes ${a} h`,
    `b: remove screw from 6200 mm to 11200 mm by Alpha after a takes ${b} h`,
    `s: strip run 1 by Bravo after a takes ${c} h`,
    `t: strip run 2 by Alpha after b, s takes ${d} h`,
    `k: clean run 1 by Bravo after s takes ${a} h dries ${dries * 60} min`,
    `l: clean run 2 by Alpha after t takes ${b} h dries ${dries * 30} min`,
    `q: patch from 1000 mm to 2000 mm by Bravo after k takes ${c} h cools ${cools * 60} min cold work`,
    `f: fit run 1 by Bravo after q takes ${d} h`,
    `g: fit run 2 by Alpha after l takes ${a} h`,
    `i: insert screw from 6200 mm to 11200 mm by Alpha after f, g takes ${b} h`,
    `insert screw from 0 mm to 6000 mm by Bravo after i takes ${c} h`,
  ];
};

describe('a plan by the clock', () => {
  test('leaves wet and hot places alone, and brings the crane in time, whatever the shifts', () => {
    let waited = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(6, 8, 10, 24),
        fc.constantFrom(0.5, 1.5, 3),
        fc.constantFrom(1, 5, 14),
        fc.constantFrom(0.5, 4),
        fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 4, maxLength: 4 }),
        (shiftHours, settingUp, dries, cools, takes) => {
          const { deeds, stops } = timed(
            withOrder(made(shiftHours, settingUp), written(dries, cools, takes)),
          );
          expect(stops).not.toContain('no shift');
          expect(deeds.every(({ begins, ends }) => ends >= begins)).toBe(true);
          expect(keepsTime(deeds, settingUp)).toBe(true);
          // The same hours with a longer wait would not do: the simulator does look.
          const wetter = deeds.map((deed) => (deed.rests === undefined ? deed : { ...deed, rests: 999 }));
          if (!keepsTime(wetter, settingUp) && !keepsTime(deeds, 999)) waited++;
        },
      ),
      { numRuns: 40 },
    );
    expect(waited).toBe(40);
  });
});

describe('two steps side by side', () => {
  const places = ['run 1', 'run 2', 'from 1000 mm to 2000 mm'] as const;
  const extent = {
    'run 1': [0, 6000],
    'run 2': [6200, 11_200],
    'from 1000 mm to 2000 mm': [1000, 2000],
  } as const;

  test('drying is told exactly where one could begin too soon on the place of the other', () => {
    let told = 0;
    for (const first of places)
      for (const second of places)
        for (const action of ['patch', 'hold-downs off', 'gas test', 'fire watch'] as const)
          for (const rests of [undefined, 2]) {
            const wet = `a: patch ${first} by Alpha after p${rests === undefined ? '' : ` dries ${rests} h`} cold work`;
            const found = kinds(made(8, 1), [
              'isolate',
              'p: prove dead',
              wet,
              `${action} ${second} by Bravo after p${action === 'patch' ? ' cold work' : ''}`,
            ]);
            const one = { action: 'patch', from: extent[first][0], to: extent[first][1], begins: 0, ends: 1 };
            const late = [0, 0.5, 1, 2, 2.9].some((begins) => {
              const other = {
                action,
                from: extent[second][0],
                to: extent[second][1],
                begins,
                ends: begins + 1.5,
              };
              return !keepsTime([{ ...one, ...(rests === undefined ? {} : { rests }) }, other], 0);
            });
            if (late !== found.includes('still drying'))
              expect({ wet, action, second, found }).toEqual({ late });
            if (late) told++;
          }
    expect(told).toBeGreaterThan(5);
  });

  test('a crane is told exactly where one hook would hold two loads', () => {
    const pieces = [
      ['from 0 mm to 3000 mm', 'low'],
      ['from 3000 mm to 6000 mm', 'low'],
      ['from 6200 mm to 9000 mm', 'high'],
    ] as const;
    for (const [first, low] of pieces)
      for (const [second, high] of pieces)
        for (const after of ['p', 'a']) {
          if (first === second) continue;
          const lines = [
            'isolate by Alpha',
            'p: prove dead by Alpha',
            `a: remove screw ${first} by Alpha after p`,
            `remove screw ${second} by Bravo after ${after}`,
          ];
          const begins = after === 'a' ? 2 : 0;
          const at = (stand: string, begins: number): TimedDeed => ({
            action: 'remove screw',
            from: 0,
            to: 0,
            begins,
            ends: begins + 1,
            hook: { name: 'C1', stand },
          });
          expect(kinds(made(8, 1), lines).includes('crane in two places')).toBe(
            !keepsTime([at(low, 0), at(high, begins)], 1),
          );
        }
  });
});
