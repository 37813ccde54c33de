import { describe, expect, it } from 'vitest';
import { pooledMiss, toldBeyond, type Miss } from '../../../src/domain/wear/pooled-miss.js';
import { seeded } from './fleet.js';

const steadyMiss = (foretold: number, miss: number, gauge = 0.2): Miss => ({
  foretold,
  miss,
  variance: 2 * gauge ** 2,
  shared: 0,
});

describe('pooled miss', () => {
  it('of one point is its miss over what was foretold', () => {
    const pooled = pooledMiss([steadyMiss(2, 1)]);
    expect(pooled?.excess).toBeCloseTo(0.5, 12);
    // Own variance 2·0.2² + (0.15·2)² = 0.17, over 2² = 0.0425; with 5 % shared 0.045.
    expect(pooled?.error).toBeCloseTo(Math.sqrt(0.0425 + 0.0025), 12);
  });

  it('is the generalised least squares answer where nothing is shared', () => {
    const misses = [steadyMiss(1, 0.3), steadyMiss(2, 0.1), steadyMiss(3, 1.2)];
    const own = misses.map((m) => m.variance + (0.15 * m.foretold) ** 2);
    const weight = misses.reduce((sum, m, i) => sum + m.foretold ** 2 / (own[i] ?? NaN), 0);
    const product = misses.reduce((sum, m, i) => sum + (m.foretold * m.miss) / (own[i] ?? NaN), 0);
    expect(pooledMiss(misses)?.excess).toBeCloseTo(product / weight, 12);
    expect(pooledMiss(misses)).toMatchObject({ points: 3, more: 3 });
  });

  it('a hundred points do not average out what they share', () => {
    const many = Array.from({ length: 100 }, () => ({ ...steadyMiss(2, 0.2), shared: 0.2 }));
    expect(pooledMiss(many)?.error).toBeGreaterThan(Math.hypot(0.05, 0.1));
  });

  it('says nothing of nothing, and leaves out what cannot be a miss', () => {
    expect(pooledMiss([])).toBeUndefined();
    expect(pooledMiss([steadyMiss(0, 1), steadyMiss(NaN, 1), steadyMiss(1, NaN)])).toBeUndefined();
    expect(pooledMiss([steadyMiss(2, 1), steadyMiss(-1, 1)])?.points).toBe(1);
  });

  it('is told in about 2 % of steady conveyors, and in most whose rate doubled', () => {
    // An independent simulator: shared and own duty, a look that reads off, gauge error; what the docstring says, drawn.
    const random = seeded(20261126);
    const told = (factor: number): number => {
      let count = 0;
      for (let fleet = 0; fleet < 2000; fleet++) {
        const [gauge, duty, bias] = [0.4, 0.05 * random.normal(), 0.2 * random.normal()];
        const pooled = pooledMiss(
          Array.from({ length: 12 }, () => {
            const foretold = 1.5 * Math.exp(0.3 * random.normal());
            const wear = foretold * (factor * (1 + duty) + 0.15 * random.normal());
            const rate = 0.2 * random.normal();
            return {
              foretold,
              miss: wear + bias + gauge * random.normal() + rate - foretold,
              variance: gauge ** 2 + 0.2 ** 2,
              shared: 0.5 * gauge,
            };
          }),
        );
        if (pooled && pooled.z > toldBeyond) count++;
      }
      return count / 2000;
    };
    expect(told(1)).toBeGreaterThan(0.003);
    expect(told(1)).toBeLessThan(0.025);
    expect(told(2)).toBeGreaterThan(0.99);
    // What would have stayed hidden is told in four of five.
    const hidden =
      pooledMiss(Array.from({ length: 12 }, () => ({ foretold: 1.5, miss: 0, variance: 0.2, shared: 0.2 })))
        ?.hidden ?? NaN;
    expect(told(1 + hidden)).toBeGreaterThan(0.7);
    expect(told(1 + hidden)).toBeLessThan(0.9);
  });
});
