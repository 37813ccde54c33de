// A pool of four against its whole posterior by brute force (tests/reference/small-pool.py): parameters are integrated, not plugged in.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { forecastFirst } from '../../../src/domain/wear/forecast-first.js';
import { forecastUnit } from '../../../src/domain/wear/forecast.js';
import type { Seen } from './kit.js';
import { fitted } from './kit.js';

const { readings, depth, lives, first, firstOfTwelveNotInspected } = JSON.parse(
  readFileSync(new URL('small-pool.fixture.json', import.meta.url), 'utf8'),
) as {
  readonly readings: readonly (readonly (readonly [number, number])[])[];
  readonly depth: number;
  readonly lives: readonly (readonly number[])[];
  readonly first: readonly number[];
  readonly firstOfTwelveNotInspected: readonly number[];
};

describe('four units and one not inspected', () => {
  const rows: Seen[] = readings.flatMap((unit, k) => unit.map(([at, saw]) => ({ unit: k, at, saw })));
  const fit = fitted([...rows, { unit: 2, at: 4000, saw: 'ivory' }], 16, {
    expectedLife: { depth: 12, exposure: 12_000 },
    gaugeError: 0.5,
    dutyNoise: 'none',
    outliers: 'keep',
  });

  it('is integrated', () => {
    expect(fit.method).toBe('integrated');
    expect(fit.nodes.length).toBeGreaterThan(20);
  });

  it.each([0, 1, 2, 3, 4])('quantiles of unit %i within half a percent of the exact ones', (unit) => {
    const forecast = forecastUnit(fit, unit, depth);
    if (forecast.kind !== 'life') throw new Error(forecast.kind);
    const { q05, q10, q50, q90, q95 } = forecast.rate;
    [q95, q90, q50, q10, q05].forEach((rate, k) =>
      expect(Math.abs(depth / rate / (lives[unit]?.[k] ?? NaN) - 1)).toBeLessThan(0.005),
    );
  });

  // Drawn 300 000 times, so good to about half a percent itself.
  it.each([
    ['the four and two not inspected', [0, 1, 2, 3, 4, 5], first],
    ['twelve not inspected', [4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15], firstOfTwelveNotInspected],
  ] as const)('the first of %s, within 2.5 %%', (_, units, exact) => {
    const forecast = forecastFirst(
      fit,
      units.map((unit) => ({ unit, depth, now: 0 })),
    );
    if (forecast.kind !== 'life') throw new Error(forecast.kind);
    const { q05, q10, q50, q90, q95 } = forecast.quantiles;
    [q05, q10, q50, q90, q95].forEach((q, k) =>
      expect(Math.abs(q / (exact[k] ?? NaN) - 1)).toBeLessThan(0.025),
    );
    expect(forecast.first.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
  });

  it('units that share a pool err together: the first is not what independent units would give', () => {
    const units = Array.from({ length: 12 }, (_, k) => k + 4);
    const alone = forecastUnit(fit, 4, depth);
    if (alone.kind !== 'life') throw new Error(alone.kind);
    // By the exact median, half have seen a first; independent units would have it that far more have.
    const independent = 1 - (1 - alone.reachedBy(firstOfTwelveNotInspected[2] ?? NaN)) ** units.length;
    expect(independent).toBeGreaterThan(0.6);
  });
});
