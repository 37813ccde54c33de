// Which point's reading would narrow the decision most? For every point, the readings that may come are weighed by their chance;
// after each, the time to the first limit in the group is found again, and the mean drop of its spread (ln of the 90 % quantile over
// the 10 % one) is what the look is worth. Only that one point's forecast changes with its reading: what it would also teach about
// the pool is left out, so the worth is understated a little. Index arithmetic runs within lengths made here, so `!` is safe.

import type { WearFit } from './fit.js';
import type { GroupMember } from './forecast-first.js';
import type { LifeForecast } from './forecast.js';
import { forecastUnit } from './forecast.js';
import { area } from './numeric/normal.js';

export interface LookWorth {
  readonly member: GroupMember;
  /** Place in the list of members given. */
  readonly index: number;
  /** Share by which the spread of the first limit's date is expected to narrow, 0 to 1. */
  readonly narrowing: number;
  /** Chance that this point is past its limit today; 0 where nothing can be said. */
  readonly already: number;
}

const outcomes = 7;
const gridSize = 56;
const most = 60;

/** Points in order of worth, best first; those about which nothing can be said come first of all, with `narrowing` 1. */
export function whereToLook(fit: WearFit, members: readonly GroupMember[]): readonly LookWorth[] {
  const unknown: LookWorth[] = [];
  const alive: { member: GroupMember; index: number; forecast: LifeForecast }[] = [];
  members.forEach((member, index) => {
    const forecast = forecastUnit(fit, member.unit, member.depth);
    if (forecast.kind === 'life') alive.push({ member, index, forecast });
    else if (forecast.kind === 'cannot say') unknown.push({ member, index, narrowing: 1, already: 0 });
  });
  if (alive.length === 0) return unknown;
  const rest = alive.map(({ member, forecast }) =>
    Math.max(forecast.quantiles.q50 - member.now, 0.02 * forecast.quantiles.q50),
  );
  const early = alive.map(({ member, forecast }) =>
    Math.max(forecast.quantiles.q05 - member.now, 0.005 * forecast.quantiles.q50),
  );
  const low = Math.log(Math.min(...early) / 3);
  const high = Math.log(Math.min(...rest) * 4);
  const grid = Float64Array.from({ length: gridSize }, (_, i) =>
    Math.exp(low + ((high - low) * i) / (gridSize - 1)),
  );
  const logAlive = alive.map(({ member, forecast }) =>
    grid.map((e) => Math.log1p(-Math.min(forecast.reachedBy(member.now + e), 1 - 1e-12))),
  );
  const all = new Float64Array(gridSize);
  for (const row of logAlive) for (let i = 0; i < gridSize; i++) all[i]! += row[i]!;
  const before = spreadOf(grid, all);
  // Only the points that matter to the first limit are worth the full calculation.
  const weightOf = logAlive.map((row) => -row[Math.floor(gridSize * 0.5)]!);
  const order = weightOf.map((_, k) => k).sort((a, b) => weightOf[b]! - weightOf[a]!);
  const chosen = new Set(order.slice(0, most));
  const looks = alive.map(({ member, index, forecast }, k): LookWorth => {
    const already = forecast.reachedBy(member.now);
    if (!chosen.has(k) || !(before > 0)) return { member, index, narrowing: 0, already };
    return {
      member,
      index,
      narrowing: Math.max(
        0,
        1 - spreadAfter(fit, member, forecast, grid, without(all, logAlive[k]!)) / before,
      ),
      already,
    };
  });
  looks.sort((a, b) => b.narrowing - a.narrowing || b.already - a.already || a.index - b.index);
  return [...unknown, ...looks];
}

function without(all: Float64Array, own: Float64Array): Float64Array {
  return all.map((sum, i) => sum - own[i]!);
}

/** A life as weights on a grid over its logarithm: the forecast's own distribution, heavy tails and all. */
interface Lives {
  readonly log: Float64Array;
  readonly weight: Float64Array;
  readonly step: number;
}

const nodes = 120;

function livesOf({ reachedBy, quantiles }: LifeForecast, now: number): Lives {
  const middle = Math.log(quantiles.q50);
  const width = Math.max(0.05, Math.log(quantiles.q95 / Math.max(quantiles.q05, 1e-9 * quantiles.q50)));
  const low = Math.min(middle - 1.5 * width, Math.log(Math.max(now, 1e-6 * quantiles.q50)) - 0.02);
  const high = middle + 2 * width;
  const step = (high - low) / nodes;
  const log = Float64Array.from({ length: nodes }, (_, i) => low + (i + 0.5) * step);
  let before = 0;
  const weight = log.map((at, i) => {
    const chance = i === nodes - 1 ? 1 : reachedBy(Math.exp(at + step / 2));
    const own = Math.max(0, chance - before);
    before = Math.max(before, chance);
    return own;
  });
  return { log, weight, step };
}

/** Mean spread of the first limit once a thickness has been read at this point today (Bayes' rule on its lives). */
function spreadAfter(
  fit: WearFit,
  { depth, now }: GroupMember,
  forecast: LifeForecast,
  grid: Float64Array,
  others: Float64Array,
): number {
  const { log, weight, step } = livesOf(forecast, now);
  // A reading of error σ at wear depth·x/T tells ln T to about σ/wear; the path's wandering stays.
  const wander = now > 0 ? fit.dutyNoise.psi ** 2 / now : 0;
  const told = log.map((at) =>
    Math.hypot((fit.readingError * Math.exp(at)) / Math.max(depth * now, 1e-9), Math.sqrt(wander)),
  );
  const row = new Float64Array(gridSize);
  let sum = 0;
  for (let k = 0; k < outcomes; k++) {
    const seen = readingAt((k + 0.5) / outcomes, log, weight, told);
    const after = weight.map((w, i) => (w * Math.exp(-0.5 * ((seen - log[i]!) / told[i]!) ** 2)) / told[i]!);
    const total = after.reduce((all, w) => all + w, 0);
    for (let i = 0; i < gridSize; i++) {
      const survives = total > 0 ? laterThan(Math.log(now + grid[i]!), log, after, step) / total : 1;
      row[i] = others[i]! + Math.log(Math.max(survives, 1e-12));
    }
    sum += spreadOf(grid, row);
  }
  return sum / outcomes;
}

/** The logarithm of life that a reading points to, at a level of its own distribution, by halving. */
function readingAt(level: number, log: Float64Array, weight: Float64Array, told: Float64Array): number {
  const width = 4 * Math.max(told[0]!, told[nodes - 1]!);
  let [low, high] = [log[0]! - width, log[nodes - 1]! + width];
  for (let n = 0; n < 30; n++) {
    const middle = (low + high) / 2;
    let below = 0;
    for (let i = 0; i < nodes; i++)
      if (weight[i]! > 1e-9) below += weight[i]! * area((middle - log[i]!) / told[i]!);
    if (below < level) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Weight of the lives beyond a point, a node's own weight spread evenly over its step. */
function laterThan(at: number, log: Float64Array, weight: Float64Array, step: number): number {
  let sum = 0;
  for (let i = 0; i < nodes; i++)
    sum += weight[i]! * Math.min(1, Math.max(0, (log[i]! + step / 2 - at) / step));
  return sum;
}

/** ln of the 90 % over the 10 % quantile, where ln of survival is given on a grid; the grid's ends stand for what lies beyond. */
function spreadOf(grid: Float64Array, logSurvival: Float64Array): number {
  const at = (level: number): number => {
    const wanted = Math.log1p(-level);
    for (let i = 0; i < gridSize; i++) {
      if (logSurvival[i]! > wanted) continue;
      if (i === 0) return Math.log(grid[0]!);
      const share = (logSurvival[i - 1]! - wanted) / (logSurvival[i - 1]! - logSurvival[i]!);
      return Math.log(grid[i - 1]!) + share * (Math.log(grid[i]!) - Math.log(grid[i - 1]!));
    }
    return Math.log(grid[gridSize - 1]!);
  };
  return Math.max(0, at(0.9) - at(0.1));
}
