// The plan by the hour against the plan's own steps: counted up from them, and run on the simulator, which knows nothing of either.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Job } from '../../../src/domain/model/job.js';
import { groundOf } from '../../../src/domain/order/ground.js';
import { hourByHour, type PlanHour } from '../../../src/domain/plan/hour-by-hour.js';
import type { JobPlan } from '../../../src/domain/plan/job-plan.js';
import { planJob } from '../../../src/domain/plan/plan-job.js';
import { origin, plant, stated } from '../../kit/estate.js';
import { after, type Deed, type Machine } from '../order/simulator.js';
import { brace, cover, crew, holdDown, job, line, withOrder, worldOf } from '../order/stories.js';

const made = line([6], [20, 20], {
  covers: [0, 1, 2].map((k) => cover(k * 2000, (k + 1) * 2000)),
  braces: [1500, 3500].map(brace),
  holdDowns: [500, 2500, 4500].map(holdDown),
  confinedSpace: true,
  plant: plant({
    gasTestInterval: stated('duration', 2, '2 h'),
    shifts: [
      {
        from: { hours: 7, text: '', origin: origin() },
        to: { hours: 15, text: '', origin: origin() },
        days: [],
        origin: origin(),
      },
    ],
  }),
});
const machine: Machine = {
  runs: [{ from: 0, to: 6000, tailSlack: 20, headSlack: 20, holdsAtTail: true, holdsAtHead: true }],
  covers: made.covers.map((each) => [each.from.value, each.to.value]),
  braces: [1500, 3500],
  holdDowns: [500, 2500, 4500],
  enclosed: true,
  slippery: false,
  tolerance: 1,
  measuring: 2,
  scope: [[0, 6000]],
  newScrew: false,
};
const planned = (of: Job): { readonly plan: JobPlan; readonly hours: readonly PlanHour[] } => {
  const world = worldOf(of);
  const plan = planJob(of, world, { quick: true, shakes: 5, nodes: 50 });
  const steps = plan.steps.map(({ step }) => step);
  return { plan, hours: hourByHour(plan, groundOf(of, steps, world)) };
};

describe('at every moment at which nothing is under way', () => {
  test('the machine stands as the simulator has it', () => {
    let looked = 0;
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 6 }), fc.integer({ min: 1, max: 3 }), (people, split) => {
        const parts =
          split === 1
            ? ['fit run 1 starting at head']
            : ['fit panels 4 to 6 of run 1 starting at head', 'fit panels 1 to 3 of run 1 starting at head'];
        const hours = (text: string): string => (split === 3 ? `${text} takes 1 h` : text);
        const of = withOrder(job(made, ['all'], { crews: [crew('Alpha', people)] }), [
          hours('isolate'),
          hours('prove dead'),
          `gas test all${split === 3 ? ' takes 1 h' : ''} every 2 h`,
          ...['covers off all', 'braces off all', 'hold-downs off all', 'strip run 1', 'clean run 1'].map(
            hours,
          ),
          ...parts.map(hours),
          ...['hold-downs on all', 'braces on all', 'covers on all'].map(hours),
          ...['remove isolation', 'run empty', 'run loaded'].map(hours),
        ]);
        const { plan, hours: rows } = planned(of);
        for (const { to, stands } of rows) {
          if (plan.steps.some(({ start, finish }) => start < to - 1e-6 && finish > to + 1e-6)) continue;
          const done = plan.steps.filter(({ finish }) => finish <= to + 1e-6);
          const world = after(
            machine,
            done.map(({ step }): Deed => {
              const part = step.stretch?.kind === 'panels' ? step.stretch : undefined;
              return {
                action: step.action,
                from: part ? (part.first.count - 1) * 1000 : 0,
                to: part ? part.last.count * 1000 : 6000,
                ...(step.start ? { start: step.start } : {}),
              };
            }),
          );
          expect(world).toBeDefined();
          if (!world) continue;
          looked++;
          const [run] = stands.runs;
          expect({
            covers: stands.covers,
            braces: stands.braces,
            holdDowns: stands.holdDowns.places,
            power: stands.power,
            bare: run?.bare ?? 0,
            clean: run?.clean ?? 0,
            fitted: run?.fitted ?? 0,
            run: stands.run,
          }).toEqual({
            covers: 3 - world.covers.size,
            braces: 2 - world.braces.size,
            holdDowns: 3 - world.holdDowns.size,
            power: world.locked ? (world.tried ? 'proved dead' : 'isolated') : 'live',
            bare: 6 - world.solids.length,
            clean: [...world.swept].filter((cell) => !world.solids.some(({ from }) => from === cell)).length,
            fitted: world.solids.filter(({ fresh }) => fresh).length,
            run: ['not yet', 'empty', 'loaded'][world.proved],
          });
        }
      }),
      { numRuns: 12 },
    );
    expect(looked).toBeGreaterThan(20);
  });
});

describe('every hour', () => {
  const of = job(made, ['all'], { crews: [crew('Alpha', 3), crew('Bravo', 2)] });
  const { plan, hours } = planned(of);

  test('follows the one before, within one shift, to the end of the plan', () => {
    expect(hours[0]?.from).toBe(0);
    expect(hours.at(-1)?.to).toBeCloseTo(plan.duration, 9);
    hours.forEach(({ from, to }, k) => {
      if (k > 0) expect(from).toBe(hours[k - 1]?.to);
      expect(to - from).toBeLessThanOrEqual(1 + 1e-9);
      expect(Math.floor(from / 8 + 1e-9)).toBe(Math.floor((to - 1e-6) / 8));
    });
  });

  test('tells the work of every step, no more and no less', () => {
    plan.steps.forEach(({ start, finish, repeat, step }, p) => {
      const told = hours.flatMap(({ doing }) => doing.filter((each) => each.step === p));
      const sum = told.reduce((total, each) => total + each.hours, 0);
      const stops = plan.steps
        .filter((other) => other.repeat !== undefined && repeat === undefined)
        .reduce(
          (total, other) =>
            total + Math.max(0, Math.min(finish, other.finish) - Math.max(start, other.start)),
          0,
        );
      const out = plan.everybodyOut.reduce(
        (total, other) => total + Math.max(0, Math.min(finish, other.to) - Math.max(start, other.from)),
        0,
      );
      expect([step.action, sum.toFixed(6)]).toEqual([step.action, (finish - start - stops - out).toFixed(6)]);
    });
  });

  test('has nobody inside while the air is tested again', () => {
    const again = plan.steps.filter(({ repeat }) => repeat !== undefined);
    expect(again.length).toBeGreaterThan(1);
    for (const { from, to, doing } of hours) {
      const tests = again.reduce(
        (sum, { start, finish }) => sum + Math.max(0, Math.min(finish, to) - Math.max(start, from)),
        0,
      );
      for (const each of doing)
        if (plan.steps[each.step]?.repeat === undefined)
          expect(each.hours).toBeLessThanOrEqual(to - from - tests + 1e-9);
    }
  });

  test('parts come off and go on, panels go in, and in the end nothing is off', () => {
    const fitted = hours.map(({ stands }) => stands.runs[0]?.fitted ?? 0);
    fitted.slice(1).forEach((each, k) => expect(each).toBeGreaterThanOrEqual(fitted[k] ?? 0));
    const last = hours.at(-1)?.stands;
    expect([
      last?.covers,
      last?.braces,
      last?.holdDowns.places,
      last?.power,
      last?.run,
      fitted.at(-1),
    ]).toEqual([0, 0, 0, 'live', 'loaded', 6]);
  });
});

test('a place that dries is told for as long as it does, nights counted in', () => {
  const of = withOrder(job(made, ['all'], { crews: [crew('Alpha', 3)] }), [
    'isolate takes 1 h',
    'prove dead takes 1 h',
    'gas test all takes 1 h',
    'covers off all takes 1 h',
    'braces off all takes 1 h',
    'hold-downs off all takes 1 h',
    'strip run 1 takes 1 h',
    'clean run 1 takes 1 h dries 20 h',
    'fit run 1 starting at head takes 1 h',
  ]);
  const { plan, hours } = planned(of);
  const clean = plan.steps.findIndex(({ step }) => step.action === 'clean');
  const fit = plan.steps.find(({ step }) => step.action === 'fit');
  // Cleaned at 15:00, dry at 11:00: sixteen hours of night and four of the day, the test of the air among them.
  expect([plan.steps[clean]?.finish, fit?.start]).toEqual([8, 12]);
  const resting = hours.filter(({ stands }) => stands.resting.includes(clean));
  expect(resting.map(({ to }) => to)).toEqual([8, 9, 10, 11]);
});

test('who stands by is shown beside who works, for as long', () => {
  const of = withOrder(job(made, ['all'], { crews: [crew('Alpha', 3), crew('Bravo', 2)] }), [
    'isolate by Alpha',
    'prove dead by Alpha',
    'gas test all by Alpha',
    'covers off all by Alpha attended by Bravo takes 2 h',
    'braces off all by Bravo attended by Bravo',
  ]);
  const { plan, hours } = planned(of);
  const off = plan.steps.findIndex(({ step }) => step.action === 'covers off');
  const shown = hours.flatMap(({ doing }) => doing.filter(({ step }) => step === off));
  expect(shown.length).toBeGreaterThan(1);
  for (const { crews, standBy } of shown) expect([crews, standBy]).toEqual([['Alpha'], ['Bravo']]);
  const others = hours.flatMap(({ doing }) => doing.filter(({ step }) => step !== off));
  expect(others.every(({ standBy }) => standBy.length === 0)).toBe(true);
});
