import { describe, expect, it } from 'vitest';
import { binomialInterval, trackRecord } from '../../../src/domain/wear/track-record.js';
import { seeded } from './fleet.js';
import type { Seen } from './kit.js';
import { columnsOf, expectedLife, unitsOf } from './kit.js';

describe('the interval of a share', () => {
  it('is that of R binom.test', () => {
    // R: binom.test(8, 10)$conf.int; binom.test(0, 5)$conf.int; binom.test(45, 50)$conf.int
    expect(binomialInterval(8, 10).low).toBeCloseTo(0.4439045, 6);
    expect(binomialInterval(8, 10).high).toBeCloseTo(0.9747893, 6);
    expect(binomialInterval(0, 5)).toMatchObject({ low: 0 });
    expect(binomialInterval(0, 5).high).toBeCloseTo(0.5218238, 6);
    expect(binomialInterval(45, 50).low).toBeCloseTo(0.7818647, 6);
    expect(binomialInterval(45, 50).high).toBeCloseTo(0.966725, 5);
  });

  it('of nothing is everything', () => {
    expect(binomialInterval(0, 0)).toEqual({ low: 0, high: 1 });
  });
});

/** Points looked at once a year for five years; every fifth look gives a colour only. */
function history(seed: number, gauge: number): Seen[] {
  const random = seeded(seed);
  const rows: Seen[] = [];
  for (let unit = 0; unit < 24; unit++) {
    const rate = 8e-4 * Math.exp(0.3 * random.normal());
    for (let year = 1; year <= 5; year++) {
      const at = 2000 * year;
      const wear = rate * at;
      const saw =
        wear >= 12
          ? 'trough'
          : (unit + year) % 5 === 0
            ? wear >= 6
              ? 'red'
              : 'white'
            : Math.max(0, 12 - wear + gauge * random.normal());
      rows.push({ unit, at, saw, day: 365 * year });
    }
  }
  return rows;
}

describe('track record', () => {
  const options = { expectedLife, gaugeError: 0.4, dutyNoise: 'none' } as const;
  const cuts = [400, 800, 1200, 1500];

  it('counts how often the intervals held, about as often as promised', { timeout: 60_000 }, () => {
    let held = 0;
    let of = 0;
    let expected = 0;
    let found = 0;
    let looked = 0;
    for (const seed of [1, 2, 3, 4]) {
      const record = trackRecord(columnsOf(history(seed, 0.4)), unitsOf(24), [], options, cuts);
      expect(record.silentCuts).toEqual([]);
      const eighty = record.all.find(({ nominal }) => nominal === 0.8);
      held += eighty?.held ?? 0;
      of += eighty?.of ?? 0;
      expected += record.colours.expected;
      found += record.colours.found;
      looked += record.colours.of;
    }
    expect(of).toBeGreaterThan(200);
    // Fixed seeds: this is no test of chance. The share held lies within three binomial errors of 80 %.
    expect(Math.abs(held / of - 0.8)).toBeLessThan(3 * Math.sqrt((0.8 * 0.2) / of));
    expect(looked).toBeGreaterThan(20);
    expect(Math.abs(found - expected)).toBeLessThan(3 * Math.sqrt(looked) * 0.5);
  });

  it('judges each record once, by what was known before it, and says what rested on the pool alone', () => {
    const rows = history(5, 0.4);
    const record = trackRecord(columnsOf(rows), unitsOf(24), [], options, cuts);
    const judged = record.judged.map(({ reading }) => reading);
    expect(new Set(judged).size).toBe(judged.length);
    for (const { cut, reading } of record.judged) expect(rows[reading]?.day).toBeGreaterThan(cut);
    expect(record.fromPool.every(({ of }) => of === 0)).toBe(true);
    const first = trackRecord(columnsOf(rows), unitsOf(24), [], options, [0]);
    expect(first.inspected.every(({ of }) => of === 0)).toBe(true);
    expect(first.fromPool[1]?.of).toBeGreaterThan(10);
  });

  it('an expectation far off shows', () => {
    const record = trackRecord(
      columnsOf(history(6, 0.4)),
      unitsOf(24),
      [],
      { ...options, expectedLife: { depth: 12, exposure: 60_000, spread: 0.1 } },
      [0],
    );
    // Told that liners last five times as long, and sure of it, the first forecasts cannot hold.
    expect(record.all[1]?.high).toBeLessThan(0.5);
  });

  it('says at which cuts nothing could be fitted, and nothing without days', () => {
    const rows = history(7, 0.4);
    expect(trackRecord(columnsOf(rows), unitsOf(24), [], { gaugeError: 0.4 }, [0, 800]).silentCuts).toEqual([
      0,
    ]);
    const { day: _, ...undated } = columnsOf(rows);
    expect(trackRecord(undated, unitsOf(24), [], options, cuts).judged).toEqual([]);
  });
});
