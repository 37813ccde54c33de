// The wear clock: tells a change and when, keeps quiet on steady conveyors, bears bad input, and is the same every time.
import { describe, expect, it } from 'vitest';
import { ReadingKind } from '../../../src/domain/units/reading-kind.js';
import type { ConveyorChange, ClockColumns } from '../../../src/domain/wear/change.js';
import type { WearFit, WearOptions } from '../../../src/domain/wear/fit.js';
import { fitWear } from '../../../src/domain/wear/fit.js';
import { forecastFirst } from '../../../src/domain/wear/forecast-first.js';
import type { LifeForecast } from '../../../src/domain/wear/forecast.js';
import { forecastUnit } from '../../../src/domain/wear/forecast.js';
import { reduceReadings } from '../../../src/domain/wear/reduce.js';
import { wearAt } from '../../../src/domain/wear/wear-at.js';
import { changeStudy } from '../../bench/coverage/change-study.js';
import { seeded } from './fleet.js';

interface Reading {
  readonly unit: number;
  readonly age: number;
  readonly day: number;
  /** Wear, mm; or the layer that shows. */
  readonly wear?: number | undefined;
  readonly layer?: number;
  readonly error?: number;
}

const limit = 9;

function fitOf(
  count: number,
  rows: readonly Reading[],
  clock: Partial<ClockColumns> = {},
  options: WearOptions = {},
): WearFit {
  const fit = fitWear(
    reduceReadings(
      {
        unit: rows.map((r) => r.unit),
        exposure: rows.map((r) => r.age),
        kind: rows.map((r) => (r.wear === undefined ? ReadingKind.colour : ReadingKind.thickness)),
        value: rows.map((r) => (r.wear === undefined ? (r.layer ?? 0) : Math.max(0.01, 12 - r.wear))),
        day: rows.map((r) => r.day),
        error: rows.map((r) => r.error ?? 0.4),
      },
      {
        count,
        fitted: new Float64Array(count).fill(12),
        build: new Int32Array(count),
        builds: [{ depths: [6, 12] }],
        clock: {
          conveyor: new Int32Array(count),
          start: new Float64Array(count),
          product: [undefined],
          ...clock,
        },
      },
    ),
    [],
    { expectedLife: { depth: limit, exposure: 9000 }, ...options },
  );
  if (fit.kind !== 'fitted') throw new Error(fit.why);
  return fit;
}

/** Points at rates about 1 mm/1000 h, looked at every 1500 h; the pace of each interval as given. */
function rowsOf(points: number, paces: readonly number[], seed: number, error = 0.3): readonly Reading[] {
  const random = seeded(seed);
  return Array.from({ length: points }, (_, unit) => {
    const rate = 1e-3 * Math.exp(0.25 * random.normal());
    let wear = 0;
    return paces.map((pace, k) => {
      wear += rate * pace * 1500;
      return { unit, age: 1500 * (k + 1), day: 90 * (k + 1), wear: wear + error * random.normal(), error };
    });
  }).flat();
}

const life = (fit: WearFit, unit: number): LifeForecast => {
  const forecast = forecastUnit(fit, unit, limit, { depthSpread: 0 });
  if (forecast.kind !== 'life') throw new Error(forecast.kind);
  return forecast;
};

const told = (fit: WearFit, conveyor = 0): ConveyorChange => {
  const found = fit.change?.conveyors.find((c) => c.conveyor === conveyor);
  if (found?.kind !== 'asked') throw new Error(found?.kind);
  return found;
};

describe('a change of rate', () => {
  const changed = fitOf(10, rowsOf(10, [1, 1, 1, 2], 5));
  const steady = fitOf(10, rowsOf(10, [1, 1, 1, 1], 5));

  it('is told since the look before it, with its factor', () => {
    const { chance, likeliest, factor } = told(changed);
    expect(chance).toBeGreaterThan(0.8);
    expect(likeliest?.day).toBe(270);
    expect(likeliest?.meter).toBe(4500);
    expect(factor.low).toBeLessThan(2);
    expect(factor.high).toBeGreaterThan(2);
    expect(factor.high / factor.low).toBeLessThan(2.2);
  });

  it('is not told of a conveyor that wears as ever', () => {
    expect(told(steady).chance).toBeLessThan(0.3);
    expect(told(steady).faster).toBeLessThan(0.2);
  });

  it('shows both branches: sooner if so, later if not, the whole between them', () => {
    const { branches, quantiles } = life(changed, 0);
    expect(branches!.ifChanged.q50).toBeLessThan(branches!.ifNot.q50);
    expect(quantiles.q50).toBeGreaterThan(0.999 * branches!.ifChanged.q50);
    expect(quantiles.q50).toBeLessThan(1.001 * branches!.ifNot.q50);
    const at = quantiles.q50;
    const whole =
      branches!.chance * branches!.reachedByIfChanged(at) +
      (1 - branches!.chance) * branches!.reachedByIfNot(at);
    expect(whole).toBeCloseTo(0.5, 2);
  });

  it('is likelier where another conveyor with the same product changed on the same day', () => {
    const two = (second: readonly number[], product: readonly string[]): number => {
      const rows = [
        ...rowsOf(3, [1, 1, 1, 1.5], 11, 0.4),
        ...rowsOf(10, second, 12).map((r) => ({ ...r, unit: r.unit + 3 })),
      ];
      const conveyor = Array.from({ length: 13 }, (_, i) => (i < 3 ? 0 : 1));
      return told(fitOf(13, rows, { conveyor, start: new Float64Array(13), product })).chance;
    };
    const together = two([1, 1, 1, 2], ['cake', 'cake']);
    expect(together).toBeGreaterThan(two([1, 1, 1, 2], ['cake', 'grit']) + 0.1);
    expect(together).toBeGreaterThan(two([1, 1, 1, 1], ['cake', 'cake']) + 0.1);
  });

  it('is not told where the load says that those hours were worked twice as hard', () => {
    const work = [1, 1, 1, 2].map((pace, k) => ({
      fromDay: 90 * k,
      toDay: 90 * (k + 1),
      logFactor: Math.log(pace),
      spread: 0.1,
    }));
    const fit = fitOf(10, rowsOf(10, [1, 1, 1, 2], 5), { work: [work] });
    expect(told(fit).chance).toBeLessThan(0.3);
    expect(life(fit, 0).quantiles.q50).toBeGreaterThan(life(changed, 0).quantiles.q50 * 1.1);
  });

  it('of one point alone is that point, not the conveyor', () => {
    const rows = rowsOf(10, [1, 1, 1, 1], 5).map((r) =>
      r.unit === 3 && r.day === 360 ? { ...r, wear: (r.wear ?? 0) + 4 } : r,
    );
    const fit = fitOf(10, rows);
    expect(told(fit).chance).toBeLessThan(0.4);
    expect(fit.remarks.some((r) => r.kind === 'outlier' && r.unit === 3)).toBe(true);
    expect(fit.fullWeight).toBeDefined();
  });
});

describe('places', () => {
  it('an end that nobody saw follows the trend along the trough, and is less sure', () => {
    const random = seeded(3);
    const along = Array.from({ length: 13 }, (_, i) => i / 12);
    const rows = along.slice(0, 9).flatMap((place, unit) => {
      const rate = 1e-3 * Math.exp(1.2 * (place - 0.5) + 0.1 * random.normal());
      return [1, 2, 3].map((k) => ({
        unit,
        age: 1500 * k,
        day: 90 * k,
        wear: rate * 1500 * k + 0.2 * random.normal(),
        error: 0.2,
      }));
    });
    const fit = fitOf(13, rows, { along });
    expect(told(fit).along!.low).toBeGreaterThan(0.2);
    const [seen, unseen] = [life(fit, 8).quantiles, life(fit, 12).quantiles];
    expect(unseen.q50).toBeLessThan(seen.q50 * 1.1);
    expect(unseen.q90 / unseen.q10).toBeGreaterThan(1.3 * (seen.q90 / seen.q10));
    const { q05, q95 } = unseen;
    expect(q05).toBeLessThan(limit / (1e-3 * Math.exp(0.6)));
    expect(q95).toBeGreaterThan(limit / (1e-3 * Math.exp(0.6)));
  });
});

describe('the first of a conveyor', () => {
  const rows = rowsOf(6, [1, 1, 1], 21);
  const fit = fitOf(7, rows);
  const members = Array.from({ length: 6 }, (_, unit) => ({ unit, depth: limit, now: 4500 }));

  it('is never later than any of its points, and never surer than all apart', () => {
    const first = forecastFirst(fit, members);
    if (first.kind !== 'life') throw new Error(first.kind);
    for (const exposure of [500, 1500, 3000, 5000]) {
      const each = members.map(({ unit }) => life(fit, unit).reachedBy(4500 + exposure));
      const apart = 1 - each.reduce((left, p) => left * (1 - p), 1);
      expect(first.reachedBy(exposure)).toBeGreaterThan(Math.max(...each) - 2e-3);
      expect(first.reachedBy(exposure)).toBeLessThan(apart + 2e-3);
    }
  });

  it('counts panels that nobody saw, and shows them apart', () => {
    const unseen = (panels: number): ReturnType<typeof forecastFirst> =>
      forecastFirst(fit, [...members, { unit: 6, depth: limit, now: 4500, panels }]);
    const [one, many] = [unseen(1), unseen(12)];
    const seen = forecastFirst(fit, members);
    if (one.kind !== 'life' || many.kind !== 'life' || seen.kind !== 'life') throw new Error('no life');
    for (const exposure of [1000, 3000]) {
      expect(many.reachedBy(exposure)).toBeGreaterThan(one.reachedBy(exposure));
      expect(one.reachedBy(exposure)).toBeGreaterThan(seen.reachedBy(exposure));
      expect(many.seenReachedBy!(exposure)).toBeCloseTo(seen.reachedBy(exposure), 2);
      expect(many.unseenReachedBy!(exposure)).toBeLessThan(many.reachedBy(exposure) + 2e-3);
    }
  });
});

describe('bad input is answered, never with NaN', () => {
  const flat = (paces: readonly number[], change: (r: Reading) => Partial<Reading>): readonly Reading[] =>
    rowsOf(6, paces, 31).map((r) => ({ ...r, ...change(r) }));
  const cases: Readonly<Record<string, readonly Reading[]>> = {
    'all looks on one day': flat([1, 1, 1], () => ({ day: 90 })),
    'one look': flat([1], () => ({})),
    'looks minutes apart': flat([1, 1, 1], (r) => ({ age: 4000 + 0.05 * r.day, day: r.day / 90 })),
    'exposure that does not grow': flat([1, 1, 1], () => ({ age: 1500 })),
    'no exposure at all': flat([1, 1, 1], () => ({ age: 0 })),
    'all colours': flat([1, 1, 1], (r) => ({
      wear: undefined,
      layer: (r.wear ?? 0) >= 6 ? 1 : 0,
    })) as readonly Reading[],
    'a jump at every look': rowsOf(6, [1, 3, 0.4, 4, 0.3, 3], 32),
    'sixty looks': rowsOf(6, new Array<number>(60).fill(0.12), 33),
    'rates a thousandfold apart': flat([1, 1, 1], (r) => ({
      wear: (r.wear ?? 0) * 1000 ** ((r.unit - 5) / 5),
    })),
    'a gauge of a micrometre beside one of a metre': flat([1, 1], (r) => ({
      error: r.unit % 2 === 0 ? 1e-3 : 1e3,
    })),
    'wear that falls': flat([1, -0.5, -0.4], () => ({})),
    'all worn through at once': flat([1, 1, 30], () => ({})),
    'two points': rowsOf(2, [1, 1], 34),
    'days out of order with the meter': flat([1, 1, 1], (r) => ({ day: 400 - r.day })),
  };

  it.each(Object.entries(cases))('%s', (_, rows) => {
    const count = 1 + Math.max(...rows.map((r) => r.unit));
    for (const expected of [{}, { expectedLife: undefined as never }]) {
      let fit: WearFit;
      try {
        fit = fitOf(count, rows, {}, expected);
      } catch (refusal) {
        expect(String(refusal)).toMatch(/nothing expected|no records/u);
        continue;
      }
      for (let unit = 0; unit < count; unit++) {
        const forecast = forecastUnit(fit, unit, limit);
        if (forecast.kind !== 'life') continue;
        const { q05, q10, q50, q90, q95 } = forecast.quantiles;
        const list = [q05, q10, q50, q90, q95];
        expect(list.every((q) => Number.isFinite(q) && q > 0)).toBe(true);
        expect([...list].sort((a, b) => a - b)).toEqual(list);
        expect(Number.isFinite(forecast.rate.q50)).toBe(true);
        expect(forecast.reachedBy(q50)).toBeGreaterThan(0.45);
      }
      for (const conveyor of fit.change?.conveyors ?? [])
        if (conveyor.kind === 'asked') {
          expect(conveyor.chance).toBeGreaterThanOrEqual(0);
          expect(conveyor.chance).toBeLessThanOrEqual(1);
          expect(Number.isFinite(conveyor.pace.middle)).toBe(true);
        }
    }
  });
});

describe('the list of clocks', () => {
  const rows = rowsOf(8, [1, 1, 1.5, 1.5], 41);

  it('is the same every time', () => {
    const one = life(fitOf(8, rows), 2).quantiles;
    expect(life(fitOf(8, rows), 2).quantiles).toEqual(one);
  });

  it('does not care in which unit exposure is counted', () => {
    const scaled = rows.map((r) => ({ ...r, age: r.age * 3.6 }));
    const one = life(fitOf(8, rows), 2).quantiles;
    const other = life(
      fitOf(8, scaled, {}, { expectedLife: { depth: limit, exposure: 9000 * 3.6 } }),
      2,
    ).quantiles;
    expect(other.q50 / one.q50 / 3.6).toBeCloseTo(1, 4);
    expect(other.q10 / one.q10 / 3.6).toBeCloseTo(1, 4);
  });

  it('foretells the wear that it forecasts life by: half reached where half is worn', () => {
    const fit = fitOf(8, rows);
    const { q50 } = life(fit, 2).quantiles;
    const { mean, spread } = wearAt(fit, 2, q50);
    expect(Math.abs(mean - limit)).toBeLessThan(0.35 * spread);
  });

  it('less thickness never means more life', () => {
    const worn = rows.map((r) => (r.unit === 2 && r.day === 360 ? { ...r, wear: (r.wear ?? 0) + 0.3 } : r));
    expect(life(fitOf(8, worn), 2).quantiles.q50).toBeLessThan(life(fitOf(8, rows), 2).quantiles.q50);
  });
});

describe('share of lives before the 5 % quantile, seed pinned', () => {
  // Fleets share their clocks' errors: a standard error of 1.3 points at 5 %, four of them allowed.
  it.each([
    ['steady', {}, 5],
    ['doubled at the last look but one', { change: { factor: 2, since: 2, who: 'all' } as const }, 6],
    ['doubled at the last look', { change: { factor: 2, since: 1, who: 'all' } as const }, 10],
  ])('%s', { timeout: 60_000 }, (name, more, most) => {
    const s = changeStudy({ conveyors: 3, points: 24, looks: 4, name, ...more }, 8, 20261126, false);
    expect(s.clock.forecasts).toBeGreaterThan(100);
    expect((100 * s.clock.early) / s.clock.forecasts).toBeLessThan(most + 5);
    expect((100 * s.clock.held80) / s.clock.forecasts).toBeGreaterThan(70);
    if (s.told.ofChanged > 0) expect(s.told.changed / s.told.ofChanged).toBeGreaterThan(0.75);
    if (s.told.ofSteady > 0) expect(s.told.falsely / s.told.ofSteady).toBeLessThan(0.13);
  });
});
