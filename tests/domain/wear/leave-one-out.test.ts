import { describe, expect, it } from 'vitest';
import { crowdWeight, leaveOneOut } from '../../../src/domain/wear/likelihood/leave-one-out.js';
import { cholesky, invertCholesky } from '../../../src/domain/wear/numeric/cholesky.js';
import { reduced } from './kit.js';

describe('each reading against all the others', () => {
  it('is what the whole covariance says: miss = [K⁻¹·e]ⱼ / [K⁻¹]ⱼⱼ (Rasmussen & Williams, Gaussian Processes, 2006, 5.4.2)', () => {
    const rows = [
      { at: 1000, saw: 11.2 },
      { at: 2500, saw: 9.1 },
      { at: 2500, saw: 9.4 },
      { at: 4200, saw: 8.3 },
      { at: 6000, saw: 5.2 },
    ];
    const units = reduced(rows);
    const [error, walk, prior] = [0.4, 300, { mean: 1e-3, variance: 9e-8 }];
    const rate = 1.1e-3;
    const { deviation, expected } = leaveOneOut(
      units,
      error,
      walk,
      Float64Array.of(rate),
      () => prior,
      new Float64Array(rows.length).fill(1),
    );
    const n = rows.length;
    const x = [...units.exposure];
    const covariance = new Float64Array(n * n);
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        const [a, b] = [x[i] ?? 0, x[j] ?? 0];
        covariance[i * n + j] =
          a * b * prior.variance +
          walk * error ** 2 * rate ** 2 * Math.min(a, b) +
          (i === j ? error ** 2 : 0);
      }
    }
    const factor = cholesky(covariance, n);
    if (!factor) throw new Error('not positive definite');
    const inverse = invertCholesky(factor, n);
    for (let j = 0; j < n; j++) {
      let sum = 0;
      for (let i = 0; i < n; i++)
        sum += (inverse[j * n + i] ?? 0) * ((units.wear[i] ?? 0) - prior.mean * (x[i] ?? 0));
      const own = inverse[j * n + j] ?? NaN;
      expect(deviation[j]).toBeCloseTo(sum / Math.sqrt(own), 8);
      expect(expected[j]).toBeCloseTo((units.wear[j] ?? 0) - sum / own, 8);
    }
  });

  it('weights leave the crowd alone and let strays go', () => {
    for (const z of [0, 1, -2, 3, -3.3]) expect(crowdWeight(z)).toBe(1);
    expect(crowdWeight(5)).toBeLessThan(0.01);
    expect(crowdWeight(-8)).toBeLessThan(1e-6);
  });
});
