// What a gauge should read: the forecast of life turned round, held against fleets whose next reading is known.

import { describe, expect, it } from 'vitest';
import { ReadingKind } from '../../../src/domain/units/reading-kind.js';
import { expectedReading } from '../../../src/domain/wear/expected-reading.js';
import { fitWear } from '../../../src/domain/wear/fit.js';
import { forecastUnit } from '../../../src/domain/wear/forecast.js';
import { reduceReadings } from '../../../src/domain/wear/reduce.js';
import { seeded } from './fleet.js';
import { fitted } from './kit.js';

describe('an expected reading', () => {
  const fit = fitted(
    [
      { at: 2000, saw: 10.1 },
      { at: 4000, saw: 8.4 },
      { unit: 1, at: 4000, saw: 8.9 },
      { unit: 2, at: 3000, saw: 'ivory' },
    ],
    4,
  );
  it('is reached with the chance that the forecast of life gives its depth', () => {
    for (const unit of [0, 1, 3]) {
      const exposure = 6000;
      const levels = [0.01, 0.3, 0.9];
      const readings = expectedReading(fit, unit, { exposure, gauge: 0.4, levels }) ?? [];
      readings.forEach((reading, k) => {
        const forecast = forecastUnit(fit, unit, 12 - reading, { depthSpread: 0.4 });
        if (forecast.kind !== 'life') throw new Error(forecast.kind);
        // The forecast also knows that so much was not yet worn at the last look, which a reading beyond it cannot tell.
        expect(forecast.reachedBy(exposure)).toBeCloseTo(levels[k] ?? NaN, 1);
      });
    }
  });

  it('falls as the running goes on, and is the fitted thickness give or take the gauge before it begins', () => {
    const of = (exposure: number) =>
      expectedReading(fit, 0, { exposure, gauge: 0.4, levels: [0.05, 0.5, 0.95] }) ?? [];
    expect(of(0)).toEqual(
      [12 - 0.4 * 1.6448536269514722, 12, 12 + 0.4 * 1.6448536269514722].map(
        (n) => expect.closeTo(n, 6) as number,
      ),
    );
    let before = of(0);
    for (let exposure = 500; exposure < 12_000; exposure += 500) {
      const now = of(exposure);
      now.forEach((reading, k) => expect(reading).toBeLessThan((before[k] ?? 0) + 1e-3));
      expect(now).toEqual([...now].sort((a, b) => a - b));
      before = now;
    }
  });

  it('is vague where nobody looked, and silent where nothing can be said', () => {
    const levels = [0.01, 0.99];
    const asked = { exposure: 6000, gauge: 0.4, levels };
    const width = (unit: number): number => {
      const [low = NaN, high = NaN] = expectedReading(fit, unit, asked) ?? [];
      return high - low;
    };
    expect(width(3)).toBeGreaterThan(2 * width(0));
    const bound = fitWear(
      reduceReadings(
        { unit: [0], exposure: [100], kind: [ReadingKind.colour], value: [0] },
        { count: 1, fitted: [12], build: [0], builds: [{ depths: [6, 12] }] },
      ),
    );
    expect(bound.kind === 'fitted' ? expectedReading(bound, 0, asked) : undefined).toBeUndefined();
  });
});

it('holds the next reading of steady fleets as often as it says', () => {
  // 12 fleets of 12 points, rates 30 % apart, three looks 1,500 h apart, gauge 0.4 mm; the fourth look is foretold.
  const random = seeded(20261126);
  let [within, below, of] = [0, 0, 0];
  for (let fleet = 0; fleet < 12; fleet++) {
    const rows: { unit: number; at: number; saw: number }[] = [];
    const next: number[] = [];
    for (let unit = 0; unit < 12; unit++) {
      const rate = 1e-3 * Math.exp(0.3 * random.normal());
      const read = (at: number): number => Math.max(0.01, 12 - rate * at + 0.4 * random.normal());
      for (const at of [1500, 3000, 4500]) rows.push({ unit, at, saw: read(at) });
      next.push(read(6000));
    }
    const fit = fitted(rows, 12);
    next.forEach((reading, unit) => {
      const [low = NaN, high = NaN] =
        expectedReading(fit, unit, { exposure: 6000, gauge: 0.4, levels: [0.05, 0.95] }) ?? [];
      of++;
      if (reading >= low && reading <= high) within++;
      if (reading < low) below++;
    });
  }
  // 90 %, and 5 % below, within three standard errors of 144.
  expect(within / of).toBeGreaterThan(0.9 - 3 * Math.sqrt((0.9 * 0.1) / of));
  expect(below / of).toBeLessThan(0.05 + 3 * Math.sqrt((0.05 * 0.95) / of));
});
