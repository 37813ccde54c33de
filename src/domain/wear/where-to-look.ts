// Which point's reading would narrow the decision most? For every point, the readings that may come are weighed by their chance;
// after each, the time to the first limit in the group is found again, and the mean drop of its spread (ln of the 90 % quantile over
// the 10 % one) is what the look is worth. Only that one point's forecast changes with its reading: what it would also teach about
// the pool is left out, so the worth is understated a little. Index arithmetic runs within lengths made here, so `!` is safe.

import type { WearFit } from './fit.js';
import type { GroupMember } from './forecast-first.js';
import type { LifeForecast } from './forecast.js';
import { forecastUnit, logRateOf } from './forecast.js';
import { area, normalQuantile } from './numeric/normal.js';

export interface LookWorth {
  readonly member: GroupMember;
  /** Place in the list of members given. */
  readonly index: number;
  /** Share by which the spread of the first limit's date is expected to narrow, 0 to 1. */
  readonly narrowing: number;
  /** Chance that this point is past its limit today. */
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
    else if (forecast.kind === 'cannot say') unknown.push({ member, index, narrowing: 1, already: NaN });
  });
  if (alive.length === 0) return unknown.map((look) => ({ ...look, already: 0 }));
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
      narrowing: Math.max(0, 1 - spreadAfter(fit, member, grid, all, logAlive[k]!) / before),
      already,
    };
  });
  looks.sort((a, b) => b.narrowing - a.narrowing || b.already - a.already || a.index - b.index);
  return [...unknown.map((look) => ({ ...look, already: 0 })), ...looks];
}

/** Mean spread of the first limit once a thickness has been read at this point today. */
function spreadAfter(
  fit: WearFit,
  { unit, depth, now }: GroupMember,
  grid: Float64Array,
  all: Float64Array,
  own: Float64Array,
): number {
  const { mean, spread } = logRateOf(fit, unit);
  const variance = spread * spread;
  // A reading of error σ at wear r·x tells ln r to about σ/(r·x); the path's wandering stays.
  const wear = Math.max(Math.exp(mean) * now, 1e-9);
  const told = (fit.readingError / wear) ** 2 + (now > 0 ? fit.dutyNoise.psi ** 2 / now : 0);
  const after = 1 / (1 / variance + 1 / told);
  const moved = Math.sqrt(Math.max(variance - after, 0));
  let sum = 0;
  const row = new Float64Array(gridSize);
  for (let k = 0; k < outcomes; k++) {
    const centre = mean + moved * normalQuantile((k + 0.5) / outcomes);
    for (let i = 0; i < gridSize; i++) {
      const p = area((centre - Math.log(depth / (now + grid[i]!))) / Math.sqrt(after));
      row[i] = all[i]! - own[i]! + Math.log1p(-Math.min(p, 1 - 1e-12));
    }
    sum += spreadOf(grid, row);
  }
  return sum / outcomes;
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
