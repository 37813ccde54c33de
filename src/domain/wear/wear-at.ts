// How much has a unit worn at an exposure, as a fit sees it: mean and spread of the wear, exactly, from the nodes of its rate tables.
// Between the last thickness and later exposures the path wanders on; before it, it is drawn straight to the state there. Index
// arithmetic runs within lengths made in rate-table.ts, so `!` after an index is safe.

import type { WearFit } from './fit.js';
import { tablesOf } from './forecast.js';
import type { RateTable } from './likelihood/rate-table.js';

/** mm of wear: mean, and one standard deviation without any gauge's error. */
export function wearAt(
  fit: WearFit,
  unit: number,
  exposure: number,
): { readonly mean: number; readonly spread: number } {
  const clocked = fit.clocks?.outlook(unit);
  if (clocked) return clocked.wear(exposure);
  let mean = 0;
  let square = 0;
  for (const table of tablesOf(fit, unit)) {
    const [first, second] = momentsOf(table, exposure);
    mean += table.share * first;
    square += table.share * second;
  }
  return { mean, spread: Math.sqrt(Math.max(0, square - mean * mean)) };
}

/** Mean and mean square of the wear by one table: wear = start + rate·lever + noise. */
function momentsOf(table: RateTable, exposure: number): readonly [number, number] {
  const { at, stateWear, stateExposure, stateVariance, dutyVariance } = table;
  const later = exposure >= at;
  const share = later || !(at > 0) ? 1 : exposure / at;
  const start = stateWear * share;
  const lever = later ? stateExposure + exposure - at : stateExposure * share;
  const fixed = stateVariance * share * share;
  const walk = dutyVariance * (later ? exposure - at : exposure * (1 - share));
  let [rate, rateSquare] = [0, 0];
  for (let i = 0; i < table.nodeWeight.length; i++) {
    const r = table.nodeRate[i]!;
    rate += table.nodeWeight[i]! * r;
    rateSquare += table.nodeWeight[i]! * r * r;
  }
  const mean = start + lever * rate;
  return [
    mean,
    start * start + 2 * start * lever * rate + lever * lever * rateSquare + fixed + walk * rateSquare,
  ];
}
