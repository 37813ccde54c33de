// A screw change with four welded joints over a new liner: planned with shields, water, fire watches and whole welds, and
// accepted by the checker as it stands.

import { describe, expect, test } from 'vitest';
import { planJob } from '../../../src/domain/plan/plan-job.js';
import { checkOrder } from '../../../src/domain/order/check-order.js';
import { stepText } from '../../../src/domain/order/words.js';
import type { Job } from '../../../src/domain/model/job.js';
import { mm, origin, plant, screw, stated } from '../../kit/estate.js';
import { cover, crew, holdDown, job, line, platform, worldOf } from '../order/stories.js';

const spiral = screw({ flight: { width: mm(80), thickness: mm(25), origin: origin() } });
const made = line([8, 6], [0, 20, 20], {
  incline: stated('angle', 20),
  confinedSpace: true,
  screw: spiral,
  covers: [0, 1, 2, 3, 4, 5, 6].map((k) => cover(k * 2000, (k + 1) * 2000)),
  holdDowns: [1000, 5000, 9000, 13_000].map(holdDown),
  plant: plant({ gasTestInterval: stated('duration', 2, '2 h') }),
});
const of = (facts: Partial<Job> = {}): Job =>
  job(made, ['all'], {
    crews: [crew('Alpha', 4, ['welding']), crew('Bravo', 3)],
    accessUnits: [platform('MP1')],
    liftLimit: stated('mass', 150, '150 kg'),
    screwChange: { screw: spiral, origin: origin() },
    ...facts,
  });

describe('four welded joints', () => {
  const change = of();
  const plan = planJob(change, worldOf(change), { quick: true, shakes: 20, nodes: 0 });
  // Repeated tests of the air are rows of the plan and no steps of the order.
  const steps = plan.steps.flatMap(({ step, repeat }) => (repeat === undefined ? [step] : []));
  const joins = plan.steps.filter(({ step }) => step.action === 'join screw');

  test('five pieces, four joints, each shielded, wet and watched, to be confirmed by the crew', () => {
    expect(plan.lifts.spiral?.pieces).toHaveLength(5);
    expect(joins).toHaveLength(4);
    for (const { step } of joins)
      expect(stepText(step)).toContain('hot work shielded wet fire watch 60 min to be confirmed');
    expect(steps.filter(({ action }) => action === 'fire watch').length).toBe(2);
  });

  test('the joints tile the whole spiral, one joint in each', () => {
    const bounds = joins
      .map(({ step }) => (step.stretch?.kind === 'chainage' ? step.stretch : undefined))
      .map((stretch) => [stretch?.from.value ?? -1, stretch?.to.value ?? -1] as const)
      .sort((a, b) => a[0] - b[0]);
    expect(bounds[0]?.[0]).toBe(0);
    expect(bounds.at(-1)?.[1]).toBe(made.length.value);
    bounds.slice(1).forEach(([from], k) => expect(from).toBe(bounds[k]?.[1]));
    const cuts = (plan.lifts.spiral?.pieces ?? []).slice(1).map(({ from }) => from);
    cuts.forEach((cut, k) => {
      expect(cut).toBeGreaterThan(bounds[k]?.[0] ?? NaN);
      expect(cut).toBeLessThan(bounds[k]?.[1] ?? NaN);
    });
  });

  test('no weld and no watch is under way at the end of a shift', () => {
    for (const { step, start, finish } of plan.steps)
      if (step.action === 'join screw' || step.action === 'fire watch')
        expect(Math.floor(start / 8 + 1e-9)).toBe(Math.floor((finish - 1e-6) / 8));
  });

  test('the checker has nothing against what is proposed', () => {
    const written: Job = { ...change, order: { steps, origin: origin() } };
    expect(checkOrder(written, worldOf(change)).map(({ message }) => message)).toEqual([]);
  });
});

test.each([
  ['bolted joints, cut cold', { joints: 'bolted', cut: 'cold' } as const, 0],
  ['bolted joints, cut hot', { joints: 'bolted' } as const, 1],
  ['welded joints, cut cold', { cut: 'cold' } as const, 1],
])('%s: a fire watch for what is hot, and accepted', (_, how, watches) => {
  const change = of({ screwChange: { screw: spiral, origin: origin(), ...how } });
  const plan = planJob(change, worldOf(change), { quick: true, shakes: 5, nodes: 0 });
  expect(plan.violations.map(({ message }) => message)).toEqual([]);
  expect(plan.steps.filter(({ step }) => step.action === 'fire watch')).toHaveLength(watches);
});
