import { describe, expect, it } from 'vitest';
import {
  ageReplacement,
  ageReplacementWeibull,
  costPerExposure,
} from '../../../src/domain/wear/age-replacement.js';

const weibull = (shape: number, scale: number) => (t: number) => -Math.expm1(-((t / scale) ** shape));

describe('age replacement', () => {
  // Weibull 2.5 / 1000, planned 1, failure 5: recomputed with scipy (optimise the cost rate, integrate the survival function).
  const costs = { planned: 1, failure: 5 };

  it('replaces at 493.05 for 0.00346204 an hour', () => {
    const choice = ageReplacementWeibull(2.5, 1000, costs);
    if (choice.kind !== 'replace at') throw new Error(choice.kind);
    expect(Math.abs(choice.exposure / 493.04696 - 1)).toBeLessThan(1e-6);
    expect(Math.abs(choice.costRate / 0.00346204274 - 1)).toBeLessThan(1e-6);
  });

  it('finds the same age for any distribution given by its chances', () => {
    const choice = ageReplacement(weibull(2.5, 1000), 1000, costs);
    if (choice.kind !== 'replace at') throw new Error(choice.kind);
    expect(Math.abs(choice.exposure / 493.04696 - 1)).toBeLessThan(1e-5);
    expect(Math.abs(choice.costRate / 0.00346204274 - 1)).toBeLessThan(1e-6);
  });

  it('costs more at any other age', () => {
    const best = costPerExposure(weibull(2.5, 1000), 493.04696, costs);
    for (const age of [100, 300, 450, 550, 800, 2000])
      expect(costPerExposure(weibull(2.5, 1000), age, costs)).toBeGreaterThan(best);
  });

  it('runs to failure where age brings no more risk, or a failure costs no more', () => {
    expect(ageReplacementWeibull(1, 1000, costs)).toMatchObject({
      kind: 'run to failure',
      why: 'age brings no more risk',
    });
    expect(ageReplacementWeibull(0.8, 1000, costs)).toMatchObject({
      kind: 'run to failure',
      why: 'age brings no more risk',
    });
    expect(ageReplacement(weibull(0.8, 1000), 1000, costs)).toMatchObject({
      kind: 'run to failure',
      why: 'age brings no more risk',
    });
    expect(ageReplacementWeibull(2.5, 1000, { planned: 5, failure: 5 })).toMatchObject({
      kind: 'run to failure',
      why: 'a failure costs no more',
    });
    expect(ageReplacement(weibull(2.5, 1000), 1000, { planned: 6, failure: 5 })).toMatchObject({
      kind: 'run to failure',
      why: 'a failure costs no more',
    });
  });
});
