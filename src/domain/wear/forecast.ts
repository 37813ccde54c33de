// At which exposure does one unit reach a depth of wear, and how sure is that? The wear of a unit whose ln rate is u reaches depth h
// at h/eᵘ; u is uncertain, and with it the exposure: quantiles are roots of the distribution of that exposure. Where hours are not
// all alike the path wanders on from the last thickness. What is known not to have happened yet is conditioned on.

import type { Branches } from './change.js';
import type { Outlook } from './clock/outlook.js';
import { readOff } from './clock/tabled.js';
import { defaultDepthTolerance } from './columns.js';
import type { WearFit } from './fit.js';
import type { RateTable } from './likelihood/rate-table.js';
import { rateTables } from './likelihood/rate-posterior.js';
import { chanceAbove, chanceReached } from './likelihood/rate-table.js';
import { normalQuantile } from './numeric/normal.js';
import { crossing } from './numeric/root.js';
import type { Quantiles } from './quantiles.js';

/** What a forecast rests on. `bounds only`: every record says "not yet", so the records bound the rate from above only. */
export type Basis = 'inspected' | 'one reading' | 'bounds only' | 'not inspected';

export interface Records {
  readonly basis: Basis;
  readonly readings: number;
  readonly indicators: number;
  readonly notSeen: number;
  /** Units with records in the fit: what the pool rests on. */
  readonly pool: number;
}

export interface LifeForecast extends Records {
  readonly kind: 'life';
  /** mm of wear. */
  readonly depth: number;
  /** Exposure since fitting at which the depth is reached. q05 is early: a chance of 5 % by then. */
  readonly quantiles: Quantiles;
  /** mm per unit of exposure. */
  readonly rate: Quantiles;
  /** Chance, 0 to 1, that the depth is reached by an exposure since fitting. */
  readonly reachedBy: (exposure: number) => number;
  /** Largest exposure at which the unit was seen short of the depth; 0 where never. */
  readonly shortAt: number;
  /** Where a change of rate is in play: the forecast if it has come, and if it has not. */
  readonly branches?: Branches | undefined;
}

export type Forecast =
  | LifeForecast
  /** It was seen at `by` that the depth had been reached; not yet at `after`. */
  | ({
      readonly kind: 'reached';
      readonly depth: number;
      readonly by: number;
      readonly after: number;
    } & Records)
  /** `atLeast`: the depth is not reached before this exposure, whatever else. */
  | ({
      readonly kind: 'cannot say';
      readonly depth: number;
      readonly why: 'nothing to borrow from' | 'no lower bound on the rate' | 'no such depth';
      readonly atLeast: number;
    } & Records);

export interface ForecastOptions {
  /** One standard deviation of the depth itself, mm. Where left out: the build's tolerance if a layer ends there, otherwise 0. */
  readonly depthSpread?: number;
}

/** Beyond this standard deviation of ln life (a factor of 12 either way at 90 %) a date would be pretence. */
export const tooVague = 1.5;

/** @param depth mm of wear, > 0: a layer's end, the condemn limit, or the full thickness for contact with the trough. */
export function forecastUnit(
  fit: WearFit,
  unit: number,
  depth: number,
  options: ForecastOptions = {},
): Forecast {
  let known = made.get(fit);
  if (!known) made.set(fit, (known = new Map()));
  const key = `${unit} ${depth} ${options.depthSpread ?? ''}`;
  let forecast = known.get(key);
  if (!forecast) known.set(key, (forecast = makeForecast(fit, unit, depth, options)));
  return forecast;
}

/** A point, its run and its conveyor ask for the same forecast; a fit never changes, so it is made once. */
const made = new WeakMap<WearFit, Map<string, Forecast>>();

function makeForecast(fit: WearFit, unit: number, depth: number, options: ForecastOptions): Forecast {
  const records = recordsOf(fit, unit);
  const known = knownOf(fit, unit, depth);
  if (!(depth > 0) || !Number.isFinite(depth))
    return { kind: 'cannot say', depth, why: 'no such depth', atLeast: 0, ...records };
  if (known.reached < Infinity)
    return { kind: 'reached', depth, by: known.reached, after: known.short, ...records };
  const clocked = fit.clocks?.outlook(unit);
  if (clocked) return byClock(fit, unit, depth, clocked, known.short, options, records);
  const tables = tablesOf(fit, unit);
  const { mean: middle, spread } = logRateOf(fit, unit);
  if (!(spread < tooVague)) {
    return {
      kind: 'cannot say',
      depth,
      why: records.basis === 'bounds only' ? 'no lower bound on the rate' : 'nothing to borrow from',
      atLeast: known.short,
      ...records,
    };
  }
  const reachedBy = reachedChance(
    tables,
    depth,
    options.depthSpread ?? depthSpread(fit, unit, depth),
    known.short,
  );
  return {
    kind: 'life',
    depth,
    quantiles: quantilesOf(reachedBy, { centre: Math.log(depth) - middle, spread }, known.short),
    rate: rateQuantiles(tables, middle, spread),
    reachedBy,
    shortAt: known.short,
    ...records,
  };
}

/**
 * The forecast as if the unit's newest thickness had not been read, by its conveyor's clock; undefined where it has none, and where
 * what was seen besides settles the depth.
 */
export function forecastWithoutNewest(fit: WearFit, unit: number, depth: number): LifeForecast | undefined {
  const outlook = fit.clocks?.withoutNewest(unit);
  if (!outlook) return undefined;
  const weight = fit.weight.slice();
  weight[(fit.units.start[unit + 1] ?? 0) - 1] = 0;
  const { reached, short } = knownOf(
    { units: fit.units, weight, readingError: fit.readingError },
    unit,
    depth,
  );
  if (reached < Infinity) return undefined;
  const found = byClock(fit, unit, depth, outlook, short, {}, recordsOf(fit, unit));
  return found.kind === 'life' ? found : undefined;
}

/** The forecast under the conveyor's wear clock, with both branches where a change is in play. */
function byClock(
  fit: WearFit,
  unit: number,
  depth: number,
  outlook: Outlook,
  short: number,
  options: ForecastOptions,
  records: Records,
): Forecast {
  const { mean, spread } = outlook.logRate;
  if (!(spread < tooVague)) {
    const why = records.basis === 'bounds only' ? 'no lower bound on the rate' : 'nothing to borrow from';
    return { kind: 'cannot say', depth, why, atLeast: short, ...records };
  }
  const chances = outlook.chances(depth, options.depthSpread ?? depthSpread(fit, unit, depth));
  const given = (outcome: number): ((exposure: number) => number) =>
    afterShort((exposure) => readOff(chances, outcome, exposure), short);
  const guess = { centre: Math.log(depth) - mean, spread: Math.max(spread, 0.02) };
  const reachedBy = given(0);
  const branches = (): Branches | undefined => {
    if (!(outlook.changed > 1e-3)) return undefined;
    const [ifChanged, ifNot] = [given(1), given(2)];
    return {
      chance: outlook.changed,
      ifChanged: quantilesOf(ifChanged, guess, short),
      ifNot: quantilesOf(ifNot, guess, short),
      reachedByIfChanged: ifChanged,
      reachedByIfNot: ifNot,
    };
  };
  let made: { readonly value: Branches | undefined } | undefined;
  let rate: Quantiles | undefined;
  let quantiles: Quantiles | undefined;
  return {
    kind: 'life',
    depth,
    // Made when first asked for, all three: most forecasts of a large plant are asked for chances alone.
    get quantiles() {
      return (quantiles ??= quantilesOf(reachedBy, guess, short));
    },
    get rate() {
      return (rate ??= rateByClock(outlook));
    },
    reachedBy,
    shortAt: short,
    ...records,
    get branches() {
      return (made ??= { value: branches() }).value;
    },
  };
}

/** Quantiles of the rate now over the clocks' nodes, straight between their middles. */
function rateByClock({ rates }: Outlook): Quantiles {
  const { logRate, weight } = rates();
  let below = 0;
  const middle = weight.map((w) => (below += w) - 0.5 * w);
  const found = levels.map((level) => {
    const k = middle.findIndex((m) => m >= level);
    const [before, after] = [logRate[k - 1] ?? NaN, logRate.at(k) ?? NaN];
    const [from, to] = [middle[k - 1] ?? 0, middle[k] ?? 1];
    return Math.exp(
      k <= 0 ? after : before + ((after - before) * (level - from)) / Math.max(to - from, 1e-12),
    );
  });
  return inOrder(found);
}

export function recordsOf(fit: WearFit, unit: number): Records {
  const { units } = fit;
  const readings = units.thicknesses[unit] ?? 0;
  const indicators = units.indicators[unit] ?? 0;
  const notSeen = units.notSeen[unit] ?? 0;
  const life = units.life[unit] ?? NaN;
  let reached = life === life;
  for (let e = units.edgeStart[unit] ?? 0; e < (units.edgeStart[unit + 1] ?? 0); e++)
    if ((units.edgeReached[e] ?? Infinity) < Infinity) reached = true;
  let basis: Basis = 'inspected';
  if (readings + indicators === 0) basis = 'not inspected';
  else if (readings === 0 && !reached) basis = 'bounds only';
  else if (readings + indicators === 1) basis = 'one reading';
  return { basis, readings, indicators, notSeen, pool: fit.informative };
}

/**
 * What has been seen of a depth: smallest exposure at which it was reached (Infinity), largest at which it was not (0). Where a liner
 * came thinner or thicker than its layers add up to, an end between two of them may lie as much higher or deeper; and a colour settles
 * nothing that a gauge has read otherwise since.
 */
export function knownOf(
  fit: Pick<WearFit, 'units' | 'weight' | 'readingError'>,
  unit: number,
  depth: number,
): { readonly reached: number; readonly short: number } {
  const { units } = fit;
  let reached = Infinity;
  let short = 0;
  const near = 1e-9 * depth;
  const fitted = units.columns.fitted[unit] ?? NaN;
  const full = units.columns.builds[units.columns.build[unit] ?? -1]?.depths.at(-1) ?? fitted;
  const off = fitted - full;
  for (let e = units.edgeStart[unit] ?? 0; e < (units.edgeStart[unit + 1] ?? 0); e++) {
    const d = units.edgeDepth[e] ?? NaN;
    const at = units.edgeReached[e] ?? Infinity;
    // Steel is where all is gone, however thick it was.
    const isSteel = d >= full - near;
    const [least, most] = isSteel
      ? [Math.max(d, fitted), fitted]
      : [d + Math.min(0, off), d + Math.max(0, off)];
    if (least >= depth - near && (isSteel || !readShort(fit, unit, depth, at)))
      reached = Math.min(reached, at);
    if (most <= depth + near) short = Math.max(short, units.edgeNotYet[e] ?? 0);
  }
  const life = units.life[unit] ?? NaN;
  if (life === life) reached = Math.min(reached, depth / Math.exp(life));
  for (let at = units.start[unit] ?? 0; at < (units.start[unit + 1] ?? 0); at++) {
    if ((fit.weight[at] ?? 1) < 0.5) continue;
    const wear = units.wear[at] ?? NaN;
    const x = units.exposure[at] ?? NaN;
    const clear = 3 * fit.readingError * Math.sqrt(units.noise?.[at] ?? 1);
    if (wear - clear >= depth) reached = Math.min(reached, x);
    if (wear + clear <= depth && x < reached) short = Math.max(short, x);
  }
  return { reached, short: Math.min(short, reached) };
}

/** A gauge that counts has read, since, that the depth was not reached. */
function readShort(
  { units, weight }: Pick<WearFit, 'units' | 'weight'>,
  unit: number,
  depth: number,
  since: number,
): boolean {
  for (let at = units.start[unit] ?? 0; at < (units.start[unit + 1] ?? 0); at++)
    if ((units.exposure[at] ?? NaN) > since && (weight[at] ?? 1) >= 0.5 && (units.wear[at] ?? NaN) < depth)
      return true;
  return false;
}

const cache = new WeakMap<WearFit, Map<number, readonly RateTable[]>>();

/** The unit's rate tables, made once a fit: a fit never changes. */
export function tablesOf(fit: WearFit, unit: number): readonly RateTable[] {
  let known = cache.get(fit);
  if (!known) cache.set(fit, (known = new Map()));
  let tables = known.get(unit);
  if (!tables) known.set(unit, (tables = rateTables(fit.nodes, unit)));
  return tables;
}

/** ln of the rate now, mm per unit of exposure: mean and spread. */
export function logRateOf(fit: WearFit, unit: number): { readonly mean: number; readonly spread: number } {
  const clocked = fit.clocks?.outlook(unit);
  if (clocked) return clocked.logRate;
  const tables = tablesOf(fit, unit);
  const mean = tables.reduce((sum, t) => sum + t.share * t.mean, 0);
  const square = tables.reduce((sum, t) => sum + t.share * (t.spread ** 2 + t.mean ** 2), 0);
  return { mean, spread: Math.sqrt(square - mean * mean) };
}

export function depthSpread(fit: WearFit, unit: number, depth: number): number {
  const build = fit.units.columns.builds[fit.units.columns.build[unit] ?? -1];
  const layer = build?.depths.some((d) => Math.abs(d - depth) < 1e-6 * depth) ?? false;
  return layer ? (build?.tolerance ?? defaultDepthTolerance) * depth : 0;
}

function reachedChance(
  tables: readonly RateTable[],
  depth: number,
  spread: number,
  short: number,
): (exposure: number) => number {
  const plain = (exposure: number): number => {
    let sum = 0;
    for (const table of tables) sum += table.share * chanceReached(table, depth, exposure, spread);
    return sum;
  };
  return afterShort(plain, short);
}

/** Given that it was seen not to have happened by `short`. */
function afterShort(plain: (exposure: number) => number, short: number): (exposure: number) => number {
  const before = short > 0 ? plain(short) : 0;
  if (!(before < 1 - 1e-9)) return (exposure) => (exposure > short ? 1 : 0);
  return (exposure) => {
    if (!(exposure > short)) return 0;
    const p = (plain(exposure) - before) / (1 - before);
    return p < 0 ? 0 : p > 1 ? 1 : p;
  };
}

const levels = [0.05, 0.1, 0.5, 0.9, 0.95] as const;

/**
 * Quantiles of an exposure whose distribution is given, by roots on its logarithm, 1e-7 relative.
 * @param guess about where ln exposure lies and how far it spreads: only saves steps.
 * @param short the exposure is more than this.
 */
export function quantilesOf(
  reachedBy: (exposure: number) => number,
  guess: { readonly centre: number; readonly spread: number },
  short: number,
): Quantiles {
  const rise = (log: number): number => reachedBy(Math.exp(log));
  const floor = short > 0 ? Math.log(short) : -Infinity;
  const stride = Math.max(0.3 * guess.spread, 1e-3);
  const found = levels.map((level) => {
    const start = guess.centre + guess.spread * normalQuantile(level);
    let low = Math.max(start - stride, floor);
    let high = Math.max(start + stride, floor + stride);
    for (let step = 0; step < 80 && low > floor && rise(low) > level; step++) {
      high = low;
      low = Math.max(low - stride * (1 + step), floor);
    }
    for (let step = 0; step < 80 && rise(high) < level; step++) {
      low = high;
      high += stride * (1 + step);
    }
    const at = crossing(rise, level, low, high, 1e-7);
    return Math.exp(at ?? (rise(low) >= level ? low : high));
  });
  return inOrder(found);
}

/** One for each level; roots that fall together within their tolerance are put in order. */
function inOrder(found: readonly number[]): Quantiles {
  const [q05 = NaN, q10 = NaN, q50 = NaN, q90 = NaN, q95 = NaN] = [...found].sort((a, b) => a - b);
  return { q05, q10, q50, q90, q95 };
}

function rateQuantiles(tables: readonly RateTable[], middle: number, spread: number): Quantiles {
  const below = (u: number): number => 1 - tables.reduce((sum, t) => sum + t.share * chanceAbove(t, u), 0);
  const found = levels.map((level) =>
    Math.exp(crossing(below, level, middle - 12 * spread, middle + 12 * spread, 1e-9) ?? middle),
  );
  return inOrder(found);
}
