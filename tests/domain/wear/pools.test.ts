import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { compareExposures } from '../../../src/domain/wear/exposures.js';
import { fitWear } from '../../../src/domain/wear/fit.js';
import { forecastUnit } from '../../../src/domain/wear/forecast.js';
import { whereToLook } from '../../../src/domain/wear/where-to-look.js';
import { seeded } from './fleet.js';
import type { Seen } from './kit.js';
import { columnsOf, fitted, reduced, unitsOf } from './kit.js';

describe('what is borrowed from where', () => {
  it('offsets of a pool are the means of its lives drawn to the middle by n/(n + τ²/ω²): the textbook shrinkage', () => {
    // Lives to 9 mm, known exactly: ln rates are then normal data and the offsets have a closed form (Searle, Casella & McCulloch,
    // Variance Components, 1992, chapter 7), given the spreads that were fitted.
    const random = seeded(7);
    const level = Array.from({ length: 60 }, (_, k) => k % 4);
    const offsets = [0.3, -0.2, 0.1, -0.2];
    const logRate = level.map((j) => Math.log(1e-3) + (offsets[j] ?? 0) + 0.2 * random.normal());
    const units = reduced([], 60, {
      unit: level.map((_, k) => k),
      exposure: logRate.map((u) => 9 / Math.exp(u)),
      depth: level.map(() => 9),
      reached: level.map(() => 1),
    });
    const fit = fitWear(units, [{ name: 'run', level, labels: ['A', 'B', 'C', 'D'] }]);
    if (fit.kind !== 'fitted') throw new Error(fit.why);
    const [run] = fit.pools;
    if (!run) throw new Error('no pool');
    expect(fit.convergence.converged).toBe(true);
    expect(run.levels.map(({ label, units: n }) => [label, n])).toEqual([
      ['A', 15],
      ['B', 15],
      ['C', 15],
      ['D', 15],
    ]);
    const ratio = (fit.rate.spread / run.spread) ** 2;
    run.levels.forEach(({ offset }, j) => {
      const own = logRate.filter((_, k) => level[k] === j);
      const mean = own.reduce((sum, u) => sum + u, 0) / own.length;
      expect(offset).toBeCloseTo(((mean - Math.log(fit.rate.median)) * own.length) / (own.length + ratio), 4);
    });
  });

  it('a point without readings borrows from its own run before the rest', () => {
    const fast: Seen[] = [0, 1, 2, 3, 4, 5].flatMap((unit) => [
      { unit, at: 3000, saw: 6.2 + 0.1 * (unit % 3) },
      { unit, at: 4500, saw: 3.2 + 0.1 * (unit % 2) },
    ]);
    const slow: Seen[] = [7, 8, 9, 10, 11, 12].flatMap((unit) => [
      { unit, at: 3000, saw: 10.3 + 0.1 * (unit % 3) },
      { unit, at: 4500, saw: 9.5 + 0.1 * (unit % 2) },
    ]);
    const level = Array.from({ length: 14 }, (_, unit) => (unit < 7 ? 0 : 1));
    const fit = fitted([...fast, ...slow], 14, {}, [{ name: 'run', level }]);
    const [one, other] = [forecastUnit(fit, 6, 9), forecastUnit(fit, 13, 9)];
    if (one.kind !== 'life' || other.kind !== 'life') throw new Error('no forecast');
    expect(one.basis).toBe('not inspected');
    expect(one.quantiles.q50).toBeLessThan(0.6 * other.quantiles.q50);
  });

  it('a position known to wear fast from its former set wears fast again', () => {
    const random = seeded(11);
    // Twenty positions, two sets each; the position explains most of the differences.
    const position = Array.from({ length: 20 }, () => 0.4 * random.normal());
    const rows: Seen[] = [];
    position.forEach((p, k) => {
      for (const set of [0, 1]) {
        if (k === 0 && set === 1) continue;
        const rate = 1e-3 * Math.exp((k === 0 ? 0.8 : p) + 0.1 * random.normal());
        for (const at of [2500, 5000])
          rows.push({ unit: 2 * k + set, at, saw: Math.max(0.1, 12 - rate * at + 0.2 * random.normal()) });
      }
    });
    const pools = [{ name: 'position', level: Array.from({ length: 40 }, (_, unit) => unit >> 1) }];
    const fit = fitted(rows, 40, { gaugeError: 0.3 }, pools);
    const alone = fitted(rows, 40, { gaugeError: 0.3 });
    const [withPosition, without] = [forecastUnit(fit, 1, 9), forecastUnit(alone, 1, 9)];
    if (withPosition.kind !== 'life' || without.kind !== 'life') throw new Error('no forecast');
    expect(withPosition.quantiles.q50).toBeLessThan(0.75 * without.quantiles.q50);
  });

  it('thousands of positions are no burden: the pool with the most levels is solved apart, with the same answer', () => {
    const random = seeded(5);
    const rows: Seen[] = [];
    const level: number[] = [];
    for (let unit = 0; unit < 300; unit++) {
      level.push(unit % 60);
      const rate = 1e-3 * Math.exp(0.25 * random.normal() + 0.1 * Math.sin(unit % 60));
      for (const at of [2000, 4000])
        rows.push({ unit, at, saw: Math.max(0.1, 12 - rate * at + 0.3 * random.normal()) });
    }
    const run = { name: 'run', level: level.map((l) => l % 5) };
    const position = { name: 'position', level };
    const options = { dutyNoise: 'none', outliers: 'keep' } as const;
    const one = fitted(rows, 300, options, [run, position]);
    const other = fitted(rows, 300, options, [position, run]);
    expect(one.convergence.converged).toBe(true);
    expect(Math.abs(one.logLikelihood - other.logLikelihood)).toBeLessThan(1e-3);
    const [a, b] = [forecastUnit(one, 0, 9), forecastUnit(other, 0, 9)];
    if (a.kind !== 'life' || b.kind !== 'life') throw new Error('no forecast');
    expect(Math.abs(a.quantiles.q10 / b.quantiles.q10 - 1)).toBeLessThan(1e-4);
  });
});

describe('properties', () => {
  const rows: Seen[] = [0, 1, 2, 3].flatMap((unit) => [
    { unit, at: 2000, saw: 10 - 0.3 * unit },
    { unit, at: 4000, saw: 8 - 0.6 * unit },
  ]);

  it('less thickness never means more life', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3, max: 11, noNaN: true }),
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        (thickness, less) => {
          const life = (saw: number): number => {
            const forecast = forecastUnit(
              fitted([...rows, { unit: 4, at: 3000, saw }], 5, { dutyNoise: 'none', outliers: 'keep' }),
              4,
              9,
            );
            if (forecast.kind === 'reached') return forecast.by;
            if (forecast.kind !== 'life') throw new Error(forecast.kind);
            return forecast.quantiles.q50;
          };
          expect(life(thickness - less)).toBeLessThanOrEqual(life(thickness) * (1 + 1e-6));
        },
      ),
      { numRuns: 25 },
    );
  });

  it('hours counted in other units give the same lives in those units', () => {
    const scaled = rows.map((row) => ({ ...row, at: row.at / 24 }));
    const [hours, days] = [
      forecastUnit(fitted(rows, 4, {}), 0, 9),
      forecastUnit(fitted(scaled, 4, {}), 0, 9),
    ];
    if (hours.kind !== 'life' || days.kind !== 'life') throw new Error('no forecast');
    expect(Math.abs(hours.quantiles.q10 / days.quantiles.q10 / 24 - 1)).toBeLessThan(1e-4);
    expect(Math.abs(hours.quantiles.q95 / days.quantiles.q95 / 24 - 1)).toBeLessThan(1e-4);
  });

  it('a deeper limit is reached later', () => {
    const fit = fitted(rows, 4, {});
    const lives = [4, 6, 8, 9, 10, 12].map((depth) => {
      const forecast = forecastUnit(fit, 1, depth, { depthSpread: 0 });
      return forecast.kind === 'life' ? forecast.quantiles.q50 : 0;
    });
    expect([...lives].sort((a, b) => a - b)).toEqual(lives);
  });

  it('the order in which records are written does not matter', () => {
    const [one, other] = [fitted(rows, 4, {}), fitted([...rows].reverse(), 4, {})];
    expect(other.logLikelihood).toBeCloseTo(one.logLikelihood, 9);
  });
});

describe('hours or tonnes', () => {
  it('tells which of the two the wear follows, and when it cannot', () => {
    const random = seeded(3);
    const hours: Seen[] = [];
    const tonnes: Seen[] = [];
    for (let unit = 0; unit < 12; unit++) {
      const rate = 1e-3 * Math.exp(0.25 * random.normal());
      let carried = 0;
      for (const at of [1500, 3000, 4500]) {
        carried += 1500 * Math.exp(0.5 * random.normal());
        const saw = 12 - rate * carried + 0.2 * random.normal();
        hours.push({ unit, at, saw });
        tonnes.push({ unit, at: carried, saw });
      }
    }
    expect(compareExposures(columnsOf(hours), columnsOf(tonnes), unitsOf(12))).toMatchObject({
      kind: 'compared',
      better: 'second',
    });
    expect(compareExposures(columnsOf(tonnes), columnsOf(hours), unitsOf(12))).toMatchObject({
      kind: 'compared',
      better: 'first',
    });
    expect(compareExposures(columnsOf(hours), columnsOf(hours), unitsOf(12))).toMatchObject({
      kind: 'compared',
      better: 'cannot tell',
      difference: 0,
    });
    expect(compareExposures(columnsOf([]), columnsOf([]), unitsOf(2))).toMatchObject({ kind: 'cannot say' });
  });
});

describe('where to look first', () => {
  it('is the point that is likely to be first and is not known, not the one measured yesterday', () => {
    const others: Seen[] = [3, 4, 5, 6].flatMap((unit) => [
      { unit, at: 3000, saw: 9.2 },
      { unit, at: 6000, saw: 6.5 },
    ]);
    const rows: Seen[] = [
      ...others,
      { unit: 0, at: 3000, saw: 9 },
      { unit: 0, at: 6000, saw: 6.1 },
      { unit: 2, at: 3000, saw: 11 },
      { unit: 2, at: 6000, saw: 10 },
    ];
    const fit = fitted(rows, 7, {});
    const looks = whereToLook(
      fit,
      [0, 1, 2].map((unit) => ({ unit, depth: 9, now: 6000 })),
    );
    expect(looks[0]?.member.unit).toBe(1);
    expect(looks[0]?.narrowing).toBeGreaterThan(0.1);
    expect(looks[looks.length - 1]?.member.unit).toBe(2);
    for (const { narrowing, already } of looks)
      expect(narrowing >= 0 && narrowing <= 1 && already >= 0 && already <= 1).toBe(true);
  });
});
