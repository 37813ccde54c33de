// Poor records: each says what it can and cannot conclude. Nowhere a NaN, a crash, or a date that nothing supports.
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { fitWear } from '../../../src/domain/wear/fit.js';
import type { Forecast } from '../../../src/domain/wear/forecast.js';
import { forecastUnit } from '../../../src/domain/wear/forecast.js';
import { forecastFirst } from '../../../src/domain/wear/forecast-first.js';
import { reduceReadings } from '../../../src/domain/wear/reduce.js';
import { columnsOf, expectedLife, fitted, reduced, unitsOf } from './kit.js';

function life(forecast: Forecast): Extract<Forecast, { kind: 'life' }> {
  if (forecast.kind !== 'life') throw new Error(forecast.kind);
  return forecast;
}

describe('hardly any records', () => {
  it('no records and nothing expected: cannot say', () => {
    expect(fitWear(reduced([]))).toMatchObject({
      kind: 'cannot say',
      why: 'no records and nothing expected',
    });
    expect(fitWear(reduced([{ at: 5000, saw: 'not seen' }]))).toMatchObject({
      kind: 'cannot say',
      why: 'no records and nothing expected',
    });
  });

  it('no units: cannot say', () => {
    expect(fitWear(reduced([], 0))).toMatchObject({ kind: 'cannot say', why: 'no units' });
  });

  it('no records but an expected life: the expectation, wide, marked not inspected', () => {
    const forecast = life(forecastUnit(fitted([]), 0, 12));
    expect(forecast.basis).toBe('not inspected');
    expect(forecast.quantiles.q50 / 12_000).toBeGreaterThan(0.9);
    expect(forecast.quantiles.q50 / 12_000).toBeLessThan(1.1);
    // The expectation is good to a factor of two either way at most.
    expect(forecast.quantiles.q95 / forecast.quantiles.q05).toBeGreaterThan(8);
  });

  it('one reading: the pool rules, and the forecast says so', () => {
    const forecast = life(forecastUnit(fitted([{ at: 3000, saw: 9.5 }]), 0, 9));
    expect(forecast.basis).toBe('one reading');
    expect(forecast.readings).toBe(1);
    expect(forecast.quantiles.q95 / forecast.quantiles.q05).toBeGreaterThan(1.5);
  });

  it('one reading and nothing expected still gives an interval, not a point', () => {
    const fit = fitWear(reduced([{ at: 3000, saw: 9 }]));
    if (fit.kind !== 'fitted') throw new Error(fit.why);
    const { quantiles } = life(forecastUnit(fit, 0, 9));
    expect(quantiles.q05).toBeGreaterThan(3000);
    expect(quantiles.q95 / quantiles.q05).toBeGreaterThan(1.3);
    expect(Number.isFinite(quantiles.q95)).toBe(true);
  });

  it('a unit beside the only one inspected, with nothing expected, borrows from it or cannot say', () => {
    const fit = fitWear(reduced([{ at: 3000, saw: 9 }], 2));
    if (fit.kind !== 'fitted') throw new Error(fit.why);
    const forecast = forecastUnit(fit, 1, 9);
    if (forecast.kind === 'life') expect(forecast.basis).toBe('not inspected');
    else expect(forecast.kind).toBe('cannot say');
  });
});

describe('all hidden, all not yet, all trough', () => {
  it('all hidden is not inspected, never good', () => {
    const fit = fitted(
      [
        { at: 5000, saw: 'not seen' },
        { unit: 1, at: 5000, saw: 9 },
        { unit: 1, at: 7000, saw: 8 },
      ],
      2,
    );
    const forecast = life(forecastUnit(fit, 0, 9));
    expect(forecast.basis).toBe('not inspected');
    expect(forecast.notSeen).toBe(1);
    expect(forecast.shortAt).toBe(0);
  });

  it('all "not yet" and nothing expected has no maximum: cannot say', () => {
    expect(
      fitWear(
        reduced(
          [
            { at: 4000, saw: 'ivory' },
            { unit: 1, at: 6000, saw: 'ivory' },
          ],
          2,
        ),
      ),
    ).toMatchObject({ kind: 'cannot say', why: 'only bounds and nothing expected' });
  });

  it('all "not yet" with an expected life: bounds only, later than the expectation alone', () => {
    const bounded = life(forecastUnit(fitted([{ at: 8000, saw: 'ivory' }]), 0, 12));
    const bare = life(forecastUnit(fitted([]), 0, 12));
    expect(bounded.basis).toBe('bounds only');
    expect(bounded.shortAt).toBe(8000);
    expect(bounded.quantiles.q05).toBeGreaterThan(8000);
    expect(bounded.quantiles.q50).toBeGreaterThan(bare.quantiles.q50);
  });

  it('all trough: reached, with no date pretended', () => {
    const fit = fitted(
      [
        { at: 9000, saw: 'trough' },
        { unit: 1, at: 8000, saw: 'trough' },
      ],
      2,
    );
    expect(forecastUnit(fit, 0, 12)).toMatchObject({ kind: 'reached', by: 9000, after: 0 });
    expect(forecastUnit(fit, 0, 9)).toMatchObject({ kind: 'reached', by: 9000 });
    expect(
      forecastFirst(fit, [
        { unit: 0, depth: 12, now: 9000 },
        { unit: 1, depth: 12, now: 9000 },
      ]),
    ).toMatchObject({ kind: 'reached' });
  });

  it('all trough and nothing expected fits, bounded from below only', () => {
    const fit = fitWear(reduced([{ at: 9000, saw: 'trough' }], 2));
    if (fit.kind !== 'fitted') throw new Error(fit.why);
    expect(forecastUnit(fit, 0, 12).kind).toBe('reached');
    expect(['life', 'cannot say']).toContain(forecastUnit(fit, 1, 12).kind);
  });
});

describe('records that disagree', () => {
  it('thicker later beyond error: flagged, kept, and the forecast stays finite', () => {
    const fit = fitted([
      { at: 2000, saw: 10 },
      { at: 4000, saw: 8 },
      { at: 6000, saw: 11.5 },
    ]);
    expect(fit.remarks.map(({ kind }) => kind)).toContain('thicker than before');
    expect(forecastUnit(fit, 0, 9).kind).toBe('life');
  });

  it('colours and thicknesses that cannot both be right are named', () => {
    // 9.5 mm of 12 left twice over, yet the trough is said to show.
    const rows = [
      { at: 3000, saw: 10.5 },
      { at: 6000, saw: 9.2 },
      { at: 6200, saw: 'trough' },
      { unit: 1, at: 6000, saw: 9 },
      { unit: 2, at: 6000, saw: 9.4 },
    ] as const;
    const fit = fitted(rows, 3, { expectedLife, dutyNoise: 'none' });
    expect(fit.remarks.some((r) => r.kind === 'colour against thickness' && r.unit === 0)).toBe(true);
    expect(
      fitted([
        { at: 3000, saw: 10.5 },
        { at: 6000, saw: 9.2 },
        { at: 6200, saw: 'ivory' },
      ]).remarks,
    ).toEqual([]);
  });

  it('a contradiction of colours still forecasts, by the worse record', () => {
    const fit = fitted([
      { at: 5000, saw: 'teal' },
      { at: 8000, saw: 'ivory' },
    ]);
    const forecast = life(forecastUnit(fit, 0, 12));
    expect(fit.remarks.map(({ kind }) => kind)).toEqual(['contradiction']);
    expect(forecast.quantiles.q50).toBeLessThan(12_000);
  });

  it('a stray reading is down-weighted, listed, and the forecast at full weight is there', () => {
    const others = Array.from({ length: 12 }, (_, k) => [
      { unit: k + 1, at: 3000, saw: 9 + 0.2 * Math.sin(k) },
      { unit: k + 1, at: 6000, saw: 6 + 0.2 * Math.cos(k) },
    ]).flat();
    const fit = fitted(
      [
        { at: 2000, saw: 10 },
        { at: 4000, saw: 8 },
        { at: 5000, saw: 1.5 },
        { at: 6000, saw: 6.1 },
        ...others,
      ],
      13,
    );
    const outliers = fit.remarks.filter((r) => r.kind === 'outlier');
    expect(outliers.map((r) => r.reading)).toEqual([2]);
    expect(outliers[0]?.weight).toBeLessThan(0.05);
    expect(outliers[0]?.expected).toBeCloseTo(7, 0);
    const light = life(forecastUnit(fit, 0, 9)).quantiles.q50;
    if (!fit.fullWeight) throw new Error('no fit at full weight');
    expect(life(forecastUnit(fit.fullWeight, 0, 9)).quantiles.q50).toBeLessThan(light);
  });
});

describe('exposures and values out of the way', () => {
  it('a reading at no exposure tells of the gauge only', () => {
    const fit = fitted([
      { at: 0, saw: 12.1 },
      { at: 3000, saw: 9 },
    ]);
    expect(fit.remarks.map(({ kind }) => kind)).toEqual(['no exposure yet']);
    expect(forecastUnit(fit, 0, 9).kind).toBe('life');
  });

  it('only readings at no exposure: nothing to conclude on the rate', () => {
    expect(fitWear(reduced([{ at: 0, saw: 11.9 }]))).toMatchObject({ kind: 'cannot say' });
  });

  it('a liner that reads thicker than new for ever', () => {
    const fit = fitted([
      { at: 1000, saw: 12.3 },
      { at: 3000, saw: 12.4 },
      { at: 6000, saw: 12.2 },
    ]);
    const forecast = forecastUnit(fit, 0, 9);
    if (forecast.kind === 'life') expect(forecast.quantiles.q05).toBeGreaterThan(6000);
    else expect(forecast.kind).toBe('cannot say');
    expect(
      fitWear(
        reduced([
          { at: 1000, saw: 12.3 },
          { at: 3000, saw: 12.4 },
        ]),
      ),
    ).toMatchObject({ kind: 'cannot say', why: 'only bounds and nothing expected' });
  });

  it('a depth of nothing, or no number', () => {
    const fit = fitted([{ at: 3000, saw: 9 }]);
    for (const depth of [0, -1, NaN, Infinity])
      expect(forecastUnit(fit, 0, depth)).toMatchObject({ kind: 'cannot say', why: 'no such depth' });
  });

  it(
    'whatever is thrown at it, every number is finite and every interval in order',
    { timeout: 120_000 },
    () => {
      const saw = fc.oneof(
        fc.double({ min: 0, max: 14, noNaN: true }),
        fc.constantFrom('ivory', 'teal', 'trough', 'not seen'),
        fc.constantFrom(0, -3, 1e6, NaN),
      );
      const at = fc.oneof(
        fc.integer({ min: 1, max: 40_000 }),
        fc.constantFrom(0, -100, 1e-3, 1e9, NaN, Infinity),
      );
      const row = fc.record({ unit: fc.integer({ min: 0, max: 4 }), at, saw });
      fc.assert(
        fc.property(
          fc.array(
            row as fc.Arbitrary<{
              unit: number;
              at: number;
              saw: number | 'ivory' | 'teal' | 'trough' | 'not seen';
            }>,
            { maxLength: 14 },
          ),
          fc.boolean(),
          (rows, expected) => {
            const fit = fitWear(
              reduceReadings(columnsOf(rows), unitsOf(5)),
              [{ name: 'run', level: [0, 0, 1, 1, -1] }],
              expected ? { expectedLife } : {},
            );
            if (fit.kind !== 'fitted') return;
            expect(Number.isFinite(fit.logLikelihood)).toBe(true);
            for (let unit = 0; unit < 5; unit++) {
              for (const depth of [6, 9, 12]) {
                const forecast = forecastUnit(fit, unit, depth);
                if (forecast.kind !== 'life') continue;
                const { q05, q10, q50, q90, q95 } = forecast.quantiles;
                expect([q05, q10, q50, q90, q95].every((q) => Number.isFinite(q) && q > 0)).toBe(true);
                expect(q05 <= q10 && q10 <= q50 && q50 <= q90 && q90 <= q95).toBe(true);
                const chance = forecast.reachedBy(10_000);
                expect(chance >= 0 && chance <= 1).toBe(true);
              }
            }
            const first = forecastFirst(
              fit,
              [0, 1, 2].map((unit) => ({ unit, depth: 9, now: 5000 })),
            );
            if (first.kind === 'life')
              expect(Object.values(first.quantiles).every((q) => Number.isFinite(q) && q >= 0)).toBe(true);
          },
        ),
        { numRuns: 40 },
      );
    },
  );
});
