import { describe, expect, it } from 'vitest';
import type { UnitColumns } from '../../../src/domain/wear/columns.js';
import { fitWear } from '../../../src/domain/wear/fit.js';
import { tablesOf } from '../../../src/domain/wear/forecast.js';
import { chanceReached } from '../../../src/domain/wear/likelihood/rate-table.js';
import { reduceReadings } from '../../../src/domain/wear/reduce.js';
import { trackRecord, type TrackInput, type TrackRecord } from '../../../src/domain/wear/track-record.js';
import { wearAt } from '../../../src/domain/wear/wear-at.js';
import { seeded } from './fleet.js';
import type { Seen } from './kit.js';
import { columnsOf, expectedLife, unitsOf } from './kit.js';

interface Plan {
  readonly points?: number;
  readonly conveyors?: number;
  readonly looks?: number;
  /** Rate of the last interval over the one before, and of which conveyor; all where left out. */
  readonly factor?: number;
  readonly only?: number;
  readonly rate?: number;
}

/** Points of some conveyors, looked at every 1500 h with a gauge of ± 0.4 mm. */
function story(
  seed: number,
  { points = 12, conveyors = 1, looks = 4, factor = 1, only, rate = 8e-4 }: Plan = {},
): Seen[] {
  const random = seeded(seed);
  const rows: Seen[] = [];
  for (let unit = 0; unit < points * conveyors; unit++) {
    const own = rate * Math.exp(0.3 * random.normal());
    const faster = only === undefined || Math.floor(unit / points) === only ? factor : 1;
    for (let look = 1; look <= looks; look++) {
      const wear = own * 1500 * (look < looks ? look : looks - 1 + faster);
      rows.push({
        unit,
        at: 1500 * look,
        day: 180 * look,
        saw: Math.max(0.01, 12 - wear + 0.4 * random.normal()),
      });
    }
  }
  return rows;
}

function judged(rows: readonly Seen[], plan: Plan = {}, more: Partial<TrackInput> = {}): TrackRecord {
  const { points = 12, conveyors = 1 } = plan;
  const count = points * conveyors;
  const columns: UnitColumns = unitsOf(count);
  return trackRecord({
    readings: columnsOf(rows),
    columns,
    pools: [],
    options: { expectedLife, gaugeError: 0.4, dutyNoise: 'none' },
    conveyor: Array.from({ length: count }, (_, unit) => Math.floor(unit / points)),
    limit: new Array<number>(count).fill(9),
    mostFits: 6,
    ...more,
  });
}

describe('track record: the wear up to the last look', () => {
  it('finds a rate that doubled in the last interval, with its size', () => {
    const sizes = [1, 2, 3, 4].map((seed) => judged(story(seed, { factor: 2 })).looks[0]);
    for (const look of sizes)
      expect(look).toMatchObject({ horizon: 'all looks before', cut: 540, day: 720, told: true });
    const mean = sizes.reduce((sum, look) => sum + (look?.pooled.excess ?? NaN), 0) / 4;
    expect(mean).toBeGreaterThan(0.8);
    expect(mean).toBeLessThan(1.2);
  });

  it('is silent in steady fleets, and says what would have stayed hidden', { timeout: 30_000 }, () => {
    let told = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const { looks } = judged(story(100 + seed));
      if (looks.some((look) => look.told)) told++;
      expect(looks[0]?.pooled.hidden).toBeGreaterThan(0.1);
      expect(looks[0]?.pooled.hidden).toBeLessThan(1);
    }
    // Two looks a fleet at 1.4 % each: more than five of forty is one chance in a thousand.
    expect(told).toBeLessThanOrEqual(5);
  });

  it('names the one conveyor of several', () => {
    const plan = { conveyors: 3, points: 8, factor: 2, only: 1 };
    const told = judged(story(7, plan), plan).looks.filter((look) => look.told);
    expect([...new Set(told.map(({ conveyor }) => conveyor))]).toEqual([1]);
  });

  it('all together show what no one of them does', () => {
    const plan = { conveyors: 6, points: 3, factor: 1.4 };
    const { together, looks } = judged(story(11, plan), plan);
    const one = Math.max(...looks.map(({ pooled }) => pooled.z));
    expect(together['all looks before']?.points).toBe(18);
    expect(together['all looks before']?.z).toBeGreaterThan(Math.min(one, 2.2));
  });

  it('shares its fits: conveyors looked at on other days are judged by the same few cuts', () => {
    const plan = { conveyors: 3, points: 4 };
    const rows = story(5, plan).map((row) => ({
      ...row,
      day: (row.day ?? 0) + 20 * Math.floor((row.unit ?? 0) / 4),
    }));
    const { cuts, looks } = judged(rows, plan);
    expect(looks).toHaveLength(6);
    expect(cuts).toHaveLength(2);
    for (const { cut, day } of looks) expect(cut).toBeLessThan(day);
    expect(judged(rows, plan, { mostFits: 1 }).cuts).toHaveLength(1);
  });

  it('says nothing of one look, and nothing without days', () => {
    expect(judged(story(3, { looks: 1 })).looks).toEqual([]);
    const { day: _, ...undated } = columnsOf(story(3));
    expect(judged([], {}, { readings: undated }).looks).toEqual([]);
  });

  it('says at which cuts nothing could be fitted', () => {
    const colours = story(9).map((row) => ((row.day ?? 0) < 720 ? { ...row, saw: 'ivory' as const } : row));
    const rows = [...colours, { unit: 0, at: 1500, day: 180, saw: 11 }];
    const none = judged(rows, {}, { options: { gaugeError: 0.4 } });
    expect(none.silentCuts.length + none.looks.length).toBeGreaterThan(0);
  });
});

describe('track record: sets that reached their limit', () => {
  it('counts those that ended earlier than was foretold at half their life', () => {
    // Steady wear: the places of lives in what was foretold are even, so about one in ten is early.
    const steady = judged(story(21, { points: 60, looks: 10, rate: 1e-3 }), { points: 60 });
    expect(steady.finished.of).toBeGreaterThan(25);
    expect(steady.finished.told).toBe(false);
    expect(steady.finished.early).toBeGreaterThan(0);
    // Twice as fast in the second half of life, told by nobody.
    const random = seeded(22);
    const rows: Seen[] = [];
    for (let unit = 0; unit < 40; unit++) {
      const own = 1e-3 * Math.exp(0.2 * random.normal());
      for (let look = 1; look <= 7; look++) {
        const wear = own * 1500 * (look <= 3 ? look : 3 + 2 * (look - 3));
        rows.push({
          unit,
          at: 1500 * look,
          day: 180 * look,
          saw: Math.max(0.01, 12 - wear + 0.2 * random.normal()),
        });
      }
    }
    const fast = judged(rows, { points: 40 });
    expect(fast.finished.of).toBeGreaterThan(20);
    expect(fast.finished.early / fast.finished.of).toBeGreaterThan(0.5);
    expect(fast.finished.told).toBe(true);
  });
});

describe('wear at an exposure', () => {
  it('has the mean and spread of the distribution that the forecast uses', () => {
    const fit = fitWear(reduceReadings(columnsOf(story(2)), unitsOf(12)), [], {
      expectedLife,
      gaugeError: 0.4,
      dutyNoise: { ratio: 0.2, per: 1500 },
    });
    if (fit.kind !== 'fitted') throw new Error(fit.why);
    const tables = tablesOf(fit, 3);
    for (const exposure of [4000, 6000, 9000]) {
      // A second road: the mean is the area above the distribution of the depth reached, the mean square twice its first moment.
      let [mean, square] = [0, 0];
      const step = 0.01;
      for (let depth = step / 2; depth < 20; depth += step) {
        const chance = tables.reduce((sum, t) => sum + t.share * chanceReached(t, depth, exposure, 0), 0);
        mean += step * chance;
        square += 2 * step * depth * chance;
      }
      const found = wearAt(fit, 3, exposure);
      expect(found.mean).toBeCloseTo(mean, 2);
      expect(found.spread).toBeCloseTo(Math.sqrt(square - mean * mean), 2);
    }
  }, 30_000);
});
