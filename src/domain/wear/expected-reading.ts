// What should a gauge read of a unit at an exposure? The chance that a depth is reached by then, turned round: which depth is reached
// with a given chance. Rate, path and gauge error are in it, as in forecast.ts, which asks the same functions the other way.

import { logRateOf, tablesOf, tooVague } from './forecast.js';
import type { WearFit } from './fit.js';
import { chanceReached } from './likelihood/rate-table.js';
import { normalQuantile } from './numeric/normal.js';
import { crossing } from './numeric/root.js';
import { wearAt } from './wear-at.js';

export interface ReadingAsked {
  /** Since fitting, h or t. */
  readonly exposure: number;
  /** One standard deviation of the gauge, mm, > 0. */
  readonly gauge: number;
  /** Chances, rising, of a reading at or below each answer; 0 to 1 exclusive. */
  readonly levels: readonly number[];
}

/** Remaining thicknesses read, mm, one a level, rising; below 0 where even that is likely. Undefined where nothing can be said. */
export function expectedReading(
  fit: WearFit,
  unit: number,
  { exposure, gauge, levels }: ReadingAsked,
): readonly number[] | undefined {
  const fitted = fit.units.columns.fitted[unit] ?? NaN;
  if (!(fitted > 0) || !(logRateOf(fit, unit).spread < tooVague)) return undefined;
  if (!(exposure > 0)) return levels.map((level) => fitted + gauge * normalQuantile(level));
  const reached = chanceOf(fit, unit, exposure, gauge);
  const { mean, spread } = wearAt(fit, unit, exposure);
  const about = Math.hypot(spread, gauge);
  // Worn away on the scale of the chart upside down: the chance of a reading at or below r rises with r.
  const below = (reading: number): number => reached(fitted - reading);
  return levels.map((level) => {
    const guess = fitted - mean + about * normalQuantile(level);
    let [low, high] = [guess - 0.5 * about, guess + 0.5 * about];
    for (let step = 1; step < 60 && below(low) > level; step++) [low, high] = [low - step * about, low];
    for (let step = 1; step < 60 && below(high) < level; step++) [low, high] = [high, high + step * about];
    return crossing(below, level, low, high, 2e-3) ?? guess;
  });
}

/** Of a hundred right readings, two lie outside what is expected: one below, one above. */
export const expectedLevels = [0.01, 0.99] as const;

/** Standard deviations from the middle to those levels. */
export const expectedReach = normalQuantile(expectedLevels[1]);

/** Chance that a gauge shows a wear of at least `depth` mm at an exposure. */
function chanceOf(fit: WearFit, unit: number, exposure: number, gauge: number): (depth: number) => number {
  const clocked = fit.clocks?.outlook(unit);
  if (!clocked) {
    const tables = tablesOf(fit, unit);
    return (depth) =>
      tables.reduce((sum, table) => sum + table.share * chanceReached(table, depth, exposure, gauge), 0);
  }
  const chance = new Float64Array(clocked.weight.length);
  return (depth) => {
    clocked.byClock(depth, exposure, gauge, chance);
    return chance.reduce((sum, each, clock) => sum + each * (clocked.weight[clock] ?? 0), 0);
  };
}
