// How good were the forecasts? For every cut day the records known then are fitted afresh, and each unit's next record is held
// against what was foretold. A thickness is placed in the distribution of the wear at its exposure (gauge error in), and counted is
// how often the middle 50, 80 and 90 % held. A colour answers yes or no to whether the next layer was through, so the number that
// said yes is compared with the number foretold, the sum of the chances.
// Index arithmetic runs within lengths given, so `!` after an index is safe.

import type { ReadingColumns, UnitColumns } from './columns.js';
import type { Pool, WearFit, WearOptions } from './fit.js';
import { fitWear } from './fit.js';
import { depthSpread, knownOf, recordsOf, tablesOf } from './forecast.js';
import { chanceReached } from './likelihood/rate-table.js';
import { reduceReadings } from './reduce.js';
import { ReadingKind } from '../units/reading-kind.js';

export interface Held {
  /** Nominal share: 0.5, 0.8, 0.9. */
  readonly nominal: number;
  readonly held: number;
  readonly of: number;
  /** 95 % interval of the true share (Clopper & Pearson 1934, Biometrika 26, 404); 0 and 1 where nothing was counted. */
  readonly low: number;
  readonly high: number;
}

export interface ColourRecord {
  /** Layers foretold to be through, found through, and looked at. */
  readonly expected: number;
  readonly found: number;
  readonly of: number;
  /** About 95 % of such counts would lie between these if the chances were right. */
  readonly low: number;
  readonly high: number;
}

export interface TrackRecord {
  /** Thicknesses: all, those of units with records of their own at the cut, and those foretold from the pool alone. */
  readonly all: readonly Held[];
  readonly inspected: readonly Held[];
  readonly fromPool: readonly Held[];
  readonly colours: ColourRecord;
  /** Cut days at which nothing could be fitted. */
  readonly silentCuts: readonly number[];
  readonly judged: readonly JudgedRecord[];
}

export interface JudgedRecord {
  readonly kind: 'thickness' | 'colour';
  readonly cut: number;
  readonly reading: number;
  readonly unit: number;
  readonly fromPool: boolean;
  /** Thickness: chance foretold of no more wear than was found. Colour: chance foretold that the next layer was through. */
  readonly chance: number;
  /** Colour: whether it was. */
  readonly through: boolean;
}

/** @param cuts days, in any order; each record is judged once, by the last cut before it. `readings.day` must be there. */
export function trackRecord(
  readings: ReadingColumns,
  columns: UnitColumns,
  pools: readonly Pool[],
  options: WearOptions,
  cuts: readonly number[],
): TrackRecord {
  const days = readings.day;
  const judged: JudgedRecord[] = [];
  const silentCuts: number[] = [];
  const ordered = [...cuts].sort((a, b) => a - b);
  ordered.forEach((cut, k) => {
    if (!days) return;
    const until = ordered[k + 1] ?? Infinity;
    const gauge = options.gaugeError === undefined ? {} : { gaugeError: options.gaugeError };
    const fit = fitWear(reduceReadings(readings, columns, { ...gauge, upTo: cut }), pools, options);
    if (fit.kind !== 'fitted') {
      silentCuts.push(cut);
      return;
    }
    const next = new Map<number, number>();
    for (let row = 0; row < readings.unit.length; row++) {
      const day = days[row]!;
      const unit = readings.unit[row]!;
      if (
        !(day > cut && day <= until) ||
        readings.kind[row] === ReadingKind.notSeen ||
        !(readings.exposure[row]! > 0) ||
        !(unit >= 0 && unit < columns.count)
      )
        continue;
      const known = next.get(unit);
      if (known === undefined || day < days[known]!) next.set(unit, row);
    }
    for (const [unit, row] of [...next].sort((a, b) => a[0] - b[0])) {
      const place = placeOf(fit, readings, columns, unit, row);
      if (place)
        judged.push({
          cut,
          reading: row,
          unit,
          ...place,
          fromPool: recordsOf(fit, unit).basis === 'not inspected',
        });
    }
  });
  const count = (rows: readonly JudgedRecord[]): readonly Held[] =>
    [0.5, 0.8, 0.9].map((nominal) => {
      const from = (1 - nominal) / 2;
      const held = rows.filter(({ chance }) => chance >= from && chance <= 1 - from).length;
      return { nominal, held, of: rows.length, ...binomialInterval(held, rows.length) };
    });
  const thicknesses = judged.filter(({ kind }) => kind === 'thickness');
  return {
    all: count(thicknesses),
    inspected: count(thicknesses.filter((j) => !j.fromPool)),
    fromPool: count(thicknesses.filter((j) => j.fromPool)),
    colours: colourRecord(judged.filter(({ kind }) => kind === 'colour')),
    silentCuts,
    judged,
  };
}

function colourRecord(rows: readonly JudgedRecord[]): ColourRecord {
  let expected = 0;
  let variance = 0;
  for (const { chance } of rows) {
    expected += chance;
    variance += chance * (1 - chance);
  }
  const reach = 1.96 * Math.sqrt(variance) + 0.5;
  return {
    expected,
    found: rows.filter(({ through }) => through).length,
    of: rows.length,
    low: Math.max(0, expected - reach),
    high: Math.min(rows.length, expected + reach),
  };
}

/** Where a record falls in what was foretold; undefined where it could say nothing new. */
function placeOf(
  fit: WearFit,
  readings: ReadingColumns,
  columns: UnitColumns,
  unit: number,
  row: number,
): Pick<JudgedRecord, 'kind' | 'chance' | 'through'> | undefined {
  const tables = tablesOf(fit, unit);
  const exposure = readings.exposure[row]!;
  const reached = (depth: number, at: number, spread: number): number =>
    tables.reduce((sum, t) => sum + t.share * chanceReached(t, depth, at, spread), 0);
  if (readings.kind[row] === ReadingKind.thickness) {
    const wear = columns.fitted[unit]! - readings.value[row]!;
    if (!Number.isFinite(wear)) return undefined;
    return { kind: 'thickness', chance: 1 - reached(wear, exposure, fit.readingError), through: false };
  }
  const depths = columns.builds[columns.build[unit]!]?.depths ?? [];
  const through = readings.kind[row] === ReadingKind.trough ? depths.length : readings.value[row]!;
  const layer = depths.findIndex((depth) => knownOf(fit, unit, depth).reached === Infinity);
  const depth = depths[layer];
  if (depth === undefined || !(through >= 0)) return undefined;
  const spread = depthSpread(fit, unit, depth);
  const { short } = knownOf(fit, unit, depth);
  if (!(exposure > short)) return undefined;
  const before = short > 0 ? reached(depth, short, spread) : 0;
  if (!(before < 1 - 1e-9)) return undefined;
  const chance = (reached(depth, exposure, spread) - before) / (1 - before);
  return { kind: 'colour', chance: Math.max(0, Math.min(1, chance)), through: through > layer };
}

/** Exact 95 % interval of a share from a count, by bisection on the binomial tail. */
export function binomialInterval(held: number, of: number): { readonly low: number; readonly high: number } {
  if (of === 0) return { low: 0, high: 1 };
  const atMost = (k: number, p: number): number => {
    if (k < 0) return 0;
    if (k >= of || p <= 0) return 1;
    if (p >= 1) return 0;
    let log = of * Math.log1p(-p);
    let sum = Math.exp(log);
    for (let i = 1; i <= k; i++) {
      log += Math.log((of - i + 1) / i) + Math.log(p) - Math.log1p(-p);
      sum += Math.exp(log);
    }
    return Math.min(1, sum);
  };
  const solve = (falling: (p: number) => number, level: number): number => {
    let low = 0;
    let high = 1;
    for (let step = 0; step < 60; step++) {
      const p = 0.5 * (low + high);
      if (falling(p) > level) low = p;
      else high = p;
    }
    return 0.5 * (low + high);
  };
  const low = held === 0 ? 0 : solve((p) => atMost(held - 1, p), 0.975);
  const high = held === of ? 1 : solve((p) => atMost(held, p), 0.025);
  return { low, high };
}
