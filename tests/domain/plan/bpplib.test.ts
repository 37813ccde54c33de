// Cut lists against published optima (source in bpplib.json); the whole sets are for tests/bench/public/cutting.ts.

import { describe, expect, test } from 'vitest';
import { cuttingStock, type CuttingProblem } from '../../../src/domain/plan/cutting-stock.js';
import sample from './bpplib.json' with { type: 'json' };

type Instance = (typeof sample.instances)[number];

const lengthsOf = (instance: Instance): number[] => instance.lengths.split(' ').map(Number);
const problemOf = (instance: Instance): CuttingProblem => ({
  stock: [{ length: instance.capacity, cost: 1 }],
  pieces: lengthsOf(instance).map((length) => ({ length, count: 1 })),
});
const small = sample.instances.filter((instance) => lengthsOf(instance).length <= 100);

describe('at most a hundred pieces', () => {
  test.each(small)('$name: $high sticks, proven', (instance) => {
    const plan = cuttingStock(problemOf(instance));
    expect(plan).toMatchObject({ cost: instance.high, lowerBound: instance.high, optimal: true });
    if (plan.kind !== 'plan') return;
    const cut = plan.sticks.flatMap((stick) =>
      Array.from({ length: stick.times }, () => stick.pieces).flat(),
    );
    expect(cut.sort((a, b) => a - b)).toEqual(lengthsOf(instance).map((_, i) => i));
    for (const stick of plan.sticks)
      expect(stick.pieces.reduce((sum, i) => sum + (lengthsOf(instance)[i] ?? 0), 0)).toBeLessThanOrEqual(
        instance.capacity,
      );
  });
});

// BPP13 needs one stick more than its relaxation says: whoever calls the relaxation's cost proven is wrong there.
describe('hard ones, with little time', () => {
  test.each(sample.instances.filter((instance) => !small.includes(instance)))(
    '$name: no bound above $high, none proven that is not',
    (instance) => {
      const plan = cuttingStock(problemOf(instance), 3e8);
      if (plan.kind !== 'plan') throw new Error(plan.kind);
      expect(plan.cost).toBeGreaterThanOrEqual(instance.low);
      expect(plan.cost).toBeLessThanOrEqual(instance.high + 1);
      expect(plan.lowerBound).toBeLessThanOrEqual(instance.high);
      if (plan.optimal) expect(plan.cost).toBe(instance.high);
    },
  );
});

test('with no time to settle the bound is low, and the list is not called proven', () => {
  for (const instance of small) {
    const plan = cuttingStock(problemOf(instance), 20_000);
    if (plan.kind !== 'plan') throw new Error(plan.kind);
    expect(plan.lowerBound).toBeLessThanOrEqual(instance.high);
    if (plan.optimal) expect(plan.cost).toBe(instance.high);
  }
});
