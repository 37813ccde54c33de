import { describe, expect, it } from 'vitest';
import { forecastUnit } from '../../../src/domain/wear/forecast.js';
import { cholesky, logDeterminant, solveCholesky } from '../../../src/domain/wear/numeric/cholesky.js';
import { seeded } from './fleet.js';
import type { Seen } from './kit.js';
import { fitted, reduced } from './kit.js';

/** Wear that wanders: normal steps of variance (ψ·rate)² an hour. */
function wandering(units: number, psi: number, seed: number): Seen[] {
  const random = seeded(seed);
  const rows: Seen[] = [];
  for (let unit = 0; unit < units; unit++) {
    const rate = 1e-3 * Math.exp(0.3 * random.normal());
    let wear = 0;
    let before = 0;
    for (const at of [1200, 2600, 4100, 5500]) {
      wear += rate * (at - before + psi * Math.sqrt(at - before) * random.normal());
      before = at;
      rows.push({ unit, at, saw: Math.max(0.05, 12 - wear + 0.3 * random.normal()) });
    }
  }
  return rows;
}

describe('hours that are not all alike', () => {
  const psi = 0.3 * Math.sqrt(1500);
  const rows = wandering(30, psi, 17);

  it('the likelihood is that of the whole covariance σ²·I + (ψ·eᵘ)²·min(x, x′), integrated over u', () => {
    const fit = fitted(rows, 30, { priors: 'none', dutyNoise: { ratio: 0.3, per: 1500 } });
    const units = reduced(rows, 30);
    const [middle, spread, error] = [Math.log(fit.rate.median), fit.rate.spread, fit.readingError];
    // Declared, and met by rounds: within a thousandth.
    expect(Math.abs(fit.dutyNoise.psi / psi - 1)).toBeLessThan(1e-3);
    let total = 0;
    for (let unit = 0; unit < 30; unit++) {
      const first = units.start[unit] ?? 0;
      const n = (units.start[unit + 1] ?? 0) - first;
      const x = units.exposure.subarray(first, first + n);
      const y = units.wear.subarray(first, first + n);
      const logs: number[] = [];
      const step = spread / 60;
      for (let u = middle - 7 * spread; u <= middle + 7 * spread; u += step) {
        const rate = Math.exp(u);
        const covariance = new Float64Array(n * n);
        for (let i = 0; i < n; i++)
          for (let j = 0; j < n; j++)
            covariance[i * n + j] =
              (fit.dutyNoise.psi * rate) ** 2 * Math.min(x[i] ?? 0, x[j] ?? 0) + (i === j ? error ** 2 : 0);
        const factor = cholesky(covariance, n);
        if (!factor) throw new Error('not positive definite');
        const miss = y.map((wear, i) => wear - rate * (x[i] ?? 0));
        const solved = solveCholesky(factor, n, miss);
        const squares = miss.reduce((sum, m, i) => sum + m * (solved[i] ?? 0), 0);
        logs.push(
          -0.5 * squares -
            0.5 * logDeterminant(factor, n) -
            (n / 2) * Math.log(2 * Math.PI) -
            0.5 * ((u - middle) / spread) ** 2 -
            Math.log(spread) -
            0.5 * Math.log(2 * Math.PI),
        );
      }
      const top = Math.max(...logs);
      total += top + Math.log(logs.reduce((sum, l) => sum + Math.exp(l - top), 0) * step);
    }
    expect(Math.abs(fit.logLikelihood - total)).toBeLessThan(5e-3);
  });

  it('is found from the readings where there are enough', () => {
    const many = fitted(wandering(400, psi, 23), 400, { gaugeError: 0.3 });
    expect(many.dutyNoise.from).toBe('estimated');
    // ratio is over `per`; on the scale of 1500 h, and within three standard errors of about 4 %.
    const ratio = many.dutyNoise.psi / Math.sqrt(1500);
    expect(ratio).toBeGreaterThan(0.26);
    expect(ratio).toBeLessThan(0.34);
    expect(many.rate.median).toBeGreaterThan(0.95e-3);
    expect(many.rate.median).toBeLessThan(1.06e-3);
  });

  it('widens what is far off more than what is near, and starts from the last thickness', () => {
    const even = fitted(rows, 30, { dutyNoise: 'none' });
    const uneven = fitted(rows, 30, { dutyNoise: { ratio: 0.3, per: 1500 } });
    const spreadOf = (fit: typeof even, depth: number): number => {
      const forecast = forecastUnit(fit, 3, depth, { depthSpread: 0 });
      if (forecast.kind !== 'life') throw new Error(forecast.kind);
      return forecast.quantiles.q95 - forecast.quantiles.q05;
    };
    const wear = 12 - Number(rows.filter((r) => r.unit === 3).at(-1)?.saw);
    expect(spreadOf(uneven, wear + 5)).toBeGreaterThan(spreadOf(even, wear + 5));
    expect(spreadOf(uneven, wear + 8)).toBeGreaterThan(spreadOf(uneven, wear + 2));
  });
});
