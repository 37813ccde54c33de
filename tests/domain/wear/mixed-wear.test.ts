// The fit against an independent likelihood in R (tests/reference/mixed-wear.R; the fixture holds its data and its answers).
import { readFileSync } from 'node:fs';
import { area } from '../../../src/domain/wear/numeric/normal.js';
import { describe, expect, it } from 'vitest';
import type { ReadingColumns, UnitColumns } from '../../../src/domain/wear/columns.js';
import type { WearFit } from '../../../src/domain/wear/fit.js';
import { fitWear } from '../../../src/domain/wear/fit.js';
import { forecastUnit } from '../../../src/domain/wear/forecast.js';
import { reduceReadings } from '../../../src/domain/wear/reduce.js';

interface Case {
  readonly name: string;
  readonly units: number;
  readonly readings: readonly (readonly [number, number, number, number])[];
  readonly lives: readonly (readonly [number, number, number, number])[];
  readonly level: number;
  readonly spread: number;
  readonly error: number | null;
  readonly logLikelihood: number;
  readonly lifeTo9: readonly { readonly unit: number; readonly quantiles: readonly number[] }[];
}

const fixture = JSON.parse(readFileSync(new URL('mixed-wear.fixture.json', import.meta.url), 'utf8')) as {
  readonly cases: readonly Case[];
  readonly oneLayer: {
    readonly depth: number;
    readonly units: number;
    readonly readings: Case['readings'];
    readonly logLife: number;
    readonly scale: number;
    readonly logLikelihood: number;
  };
};

function columnsOf(rows: Case['readings']): ReadingColumns {
  return {
    unit: rows.map((r) => r[0]),
    exposure: rows.map((r) => r[1]),
    kind: rows.map((r) => r[2]),
    value: rows.map((r) => r[3]),
  };
}

function fitPlain(readings: ReadingColumns, units: UnitColumns): WearFit {
  const fit = fitWear(reduceReadings(readings, units), [], {
    priors: 'none',
    dutyNoise: 'none',
    outliers: 'keep',
    uncertainty: 'plug-in',
  });
  if (fit.kind !== 'fitted') throw new Error(fit.why);
  return fit;
}

const relative = (value: number, truth: number): number => Math.abs(value / truth - 1);

describe('maximum likelihood on exact and censored records', () => {
  for (const sample of fixture.cases) {
    const zeros = new Int32Array(sample.units);
    const lives = {
      unit: sample.lives.map((r) => r[0]),
      exposure: sample.lives.map((r) => r[1]),
      depth: sample.lives.map((r) => r[2]),
      reached: sample.lives.map((r) => r[3]),
    };
    const units: UnitColumns = {
      count: sample.units,
      fitted: new Float64Array(sample.units).fill(12),
      build: zeros,
      builds: [{ depths: [6, 12], tolerance: 0.05 }],
      lives,
    };
    const fit = fitPlain(columnsOf(sample.readings), units);

    it(`${sample.name}: estimates and ln likelihood within 1e-6 of R`, () => {
      expect(fit.convergence.converged).toBe(true);
      expect(relative(Math.log(fit.rate.median), sample.level)).toBeLessThan(1e-6);
      expect(relative(fit.rate.spread, sample.spread)).toBeLessThan(1e-6);
      if (sample.error !== null) expect(relative(fit.readingError, sample.error)).toBeLessThan(1e-6);
      expect(relative(fit.logLikelihood, sample.logLikelihood)).toBeLessThan(1e-6);
    });

    it(`${sample.name}: quantiles of the life to 9 mm within 1e-4 of R`, () => {
      for (const { unit, quantiles } of sample.lifeTo9) {
        // R's quantiles are those of 9 mm / rate by the unit's posterior; a forecast conditions on what was seen besides.
        const forecast = forecastUnit(fit, unit, 9);
        if (forecast.kind !== 'life') throw new Error(forecast.kind);
        const { q05, q10, q50, q90, q95 } = forecast.rate;
        [q95, q90, q50, q10, q05].forEach((rate, k) =>
          expect(relative(9 / rate, quantiles[k] ?? NaN)).toBeLessThan(1e-4),
        );
        if (forecast.shortAt === 0)
          expect(relative(forecast.quantiles.q10, quantiles[1] ?? NaN)).toBeLessThan(1e-4);
      }
    });
  }

  it('the standard error of the middle rate takes in that the spread is estimated too', () => {
    // A second road: the curvature of the censored likelihood itself, by differences, in (μ, ln τ), and its inverse.
    const { oneLayer } = fixture;
    const units: UnitColumns = {
      count: oneLayer.units,
      fitted: new Float64Array(oneLayer.units).fill(oneLayer.depth),
      build: new Int32Array(oneLayer.units),
      builds: [{ depths: [oneLayer.depth], tolerance: 0 }],
    };
    const fit = fitPlain(columnsOf(oneLayer.readings), units);
    const edges = Array.from({ length: oneLayer.units }, () => ({ reached: Infinity, short: 0 }));
    for (const [unit, exposure, kind, value] of oneLayer.readings) {
      const edge = edges[unit ?? -1];
      if (!edge || exposure === undefined) continue;
      // Kind 2 or the last layer's number: the layer is through.
      if (kind === 2 || value === 1) edge.reached = Math.min(edge.reached, exposure);
      else edge.short = Math.max(edge.short, exposure);
    }
    const minus = (level: number, logSpread: number): number =>
      -edges.reduce((sum, { reached, short }) => {
        const below = (exposure: number): number =>
          area((Math.log(oneLayer.depth / exposure) - level) / Math.exp(logSpread));
        return sum + Math.log((short > 0 ? below(short) : 1) - (reached < Infinity ? below(reached) : 0));
      }, 0);
    const [m, t, h] = [Math.log(fit.rate.median), Math.log(fit.rate.spread), 1e-3];
    const mm = (minus(m + h, t) - 2 * minus(m, t) + minus(m - h, t)) / h ** 2;
    const tt = (minus(m, t + h) - 2 * minus(m, t) + minus(m, t - h)) / h ** 2;
    const mt =
      (minus(m + h, t + h) - minus(m + h, t - h) - minus(m - h, t + h) + minus(m - h, t - h)) / (4 * h ** 2);
    expect(relative(fit.rate.logError, Math.sqrt(tt / (mm * tt - mt * mt)))).toBeLessThan(1e-4);
    // With the spread taken as known it would be smaller.
    expect(fit.rate.logError).toBeGreaterThan(Math.sqrt(1 / mm) * (1 + 1e-6));
  });

  it('one layer by colour only is a lognormal interval-censored regression (R survreg)', () => {
    const { oneLayer } = fixture;
    const columns = columnsOf(oneLayer.readings);
    for (const tolerance of [0, 0.05]) {
      const units: UnitColumns = {
        count: oneLayer.units,
        fitted: new Float64Array(oneLayer.units).fill(oneLayer.depth),
        build: new Int32Array(oneLayer.units),
        builds: [{ depths: [oneLayer.depth], tolerance }],
      };
      const fit = fitPlain(columns, units);
      expect(relative(Math.log(oneLayer.depth / fit.rate.median), oneLayer.logLife)).toBeLessThan(1e-6);
      // The layer's tolerance and the spread between units add up to survreg's scale.
      expect(relative(Math.hypot(fit.rate.spread, tolerance), oneLayer.scale)).toBeLessThan(1e-6);
      expect(relative(fit.logLikelihood, oneLayer.logLikelihood)).toBeLessThan(1e-6);
    }
  });
});
