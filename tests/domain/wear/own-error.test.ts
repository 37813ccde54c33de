// Does every thickness count by the error of its own gauge? Sums against weighted and generalised least squares worked out densely,
// growth judged by both gauges, and on drawn fleets each kind of gauge holds what it should.
import { describe, expect, it } from 'vitest';
import { fitWear } from '../../../src/domain/wear/fit.js';
import { forecastUnit } from '../../../src/domain/wear/forecast.js';
import { summarise } from '../../../src/domain/wear/likelihood/summary.js';
import { reduceReadings } from '../../../src/domain/wear/reduce.js';
import { ReadingKind } from '../../../src/domain/units/reading-kind.js';
import { fleet, seeded } from './fleet.js';

const unitsOf = (count: number): Parameters<typeof reduceReadings>[1] => ({
  count,
  fitted: new Float64Array(count).fill(12),
  build: new Int32Array(count),
  builds: [{ depths: [12] }],
});

/** Slope and sum of squares of y on x with covariance V, by elimination. */
function generalised(x: readonly number[], y: readonly number[], v: readonly (readonly number[])[]) {
  const n = x.length;
  const solve = (b: readonly number[]): number[] => {
    const a = v.map((row, i) => [...row, b[i]!]);
    for (let i = 0; i < n; i++)
      for (let r = 0; r < n; r++) {
        if (r === i) continue;
        const share = a[r]![i]! / a[i]![i]!;
        for (let c = i; c <= n; c++) a[r]![c]! -= share * a[i]![c]!;
      }
    return a.map((row, i) => row[n]! / row[i]!);
  };
  const dot = (p: readonly number[], q: readonly number[]): number =>
    p.reduce((s, p1, i) => s + p1 * q[i]!, 0);
  const vx = solve(x);
  const sxx = dot(x, vx);
  const slope = dot(y, vx) / sxx;
  const rest = y.map((y1, i) => y1 - slope * x[i]!);
  return { sxx, slope, sse: dot(rest, solve(rest)) };
}

describe('a thickness counts by the error of its own gauge', () => {
  const x = [1000, 2500, 4000, 5200];
  const wear = [1.3, 2.2, 4.4, 4.9];
  const variance = [1, 6.25, 0.25, 4];
  const units = {
    ...reduceReadings(
      {
        unit: x.map(() => 0),
        exposure: x,
        kind: x.map(() => ReadingKind.thickness),
        value: wear.map((w) => 12 - w),
      },
      unitsOf(1),
    ),
    noise: Float64Array.from(variance),
  };

  it('with even duty: weighted least squares', () => {
    const sums = summarise(units, 0);
    const dense = generalised(
      x,
      wear,
      variance.map((v, i) => variance.map((_, j) => (i === j ? v : 0))),
    );
    expect(sums.sxx[0]).toBeCloseTo(dense.sxx, 6);
    expect(sums.slope[0]).toBeCloseTo(dense.slope, 12);
    expect(sums.sse[0]).toBeCloseTo(dense.sse, 9);
    expect(sums.logScale[0]).toBeCloseTo(0.5 * variance.reduce((s, v) => s + Math.log(v), 0), 9);
  });

  it('with uneven duty: generalised least squares', () => {
    const rate = 1e-3;
    const ratio = 900;
    const sums = summarise(units, ratio, Float64Array.of(rate));
    const dense = generalised(
      x,
      wear,
      x.map((a, i) => x.map((b, j) => ratio * rate * rate * Math.min(a, b) + (i === j ? variance[i]! : 0))),
    );
    expect(sums.sxx[0]! / dense.sxx).toBeCloseTo(1, 9);
    expect(sums.slope[0]).toBeCloseTo(dense.slope, 12);
    expect(sums.sse[0]).toBeCloseTo(dense.sse, 9);
  });
});

it('judges growth by both gauges: 1.5 mm beyond two good ones, within two coarse ones', () => {
  const remarks = (error: number): readonly string[] =>
    reduceReadings(
      {
        unit: [0, 0],
        exposure: [1000, 2000],
        kind: [ReadingKind.thickness, ReadingKind.thickness],
        value: [9, 10.5],
        error: [error, error],
      },
      unitsOf(1),
    ).remarks.map(({ kind }) => kind);
  expect(remarks(0.2)).toContain('thicker than before');
  expect(remarks(1)).not.toContain('thicker than before');
});

it('calls no honest reading of a coarse gauge a stray, and each gauge holds its share', () => {
  const random = seeded(20261126);
  const held = { fine: 0, coarse: 0 };
  const of = { fine: 0, coarse: 0 };
  let strays = 0;
  let readings = 0;
  for (let k = 0; k < 20; k++) {
    const rows = {
      unit: [] as number[],
      exposure: [] as number[],
      value: [] as number[],
      error: [] as number[],
    };
    const truth: number[] = [];
    for (let unit = 0; unit < 12; unit++) {
      const rate = fleet.middleRate * Math.exp(0.3 * random.normal());
      const error = unit % 2 === 0 ? 0.2 : 1;
      truth.push(fleet.condemnWear / rate);
      for (let look = 1; look <= 3; look++) {
        rows.unit.push(unit);
        rows.exposure.push(look * 1500);
        rows.value.push(12 - rate * look * 1500 + error * random.normal());
        rows.error.push(error);
      }
    }
    const fit = fitWear(
      reduceReadings({ ...rows, kind: rows.unit.map(() => ReadingKind.thickness) }, unitsOf(12)),
      [],
      { dutyNoise: 'none', expectedLife: { depth: 12, exposure: 12_000 } },
    );
    if (fit.kind !== 'fitted') throw new Error('not fitted');
    strays += fit.remarks.filter(({ kind }) => kind === 'outlier').length;
    readings += rows.unit.length;
    truth.forEach((life, unit) => {
      const forecast = forecastUnit(fit, unit, fleet.condemnWear);
      if (forecast.kind !== 'life') return;
      const gauge = unit % 2 === 0 ? 'fine' : 'coarse';
      of[gauge]++;
      if (forecast.quantiles.q10 <= life && life <= forecast.quantiles.q90) held[gauge]++;
    });
  }
  expect(strays / readings).toBeLessThan(0.02);
  // 110 or so forecasts a gauge: four standard errors of 80 % are 15 %.
  for (const gauge of ['fine', 'coarse'] as const) {
    expect(of[gauge]).toBeGreaterThan(80);
    expect(held[gauge] / of[gauge]).toBeGreaterThan(0.65);
    expect(held[gauge] / of[gauge]).toBeLessThan(0.95);
  }
});
