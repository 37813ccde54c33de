// Where may Newton start? Medians, which a few wild readings do not move.
// Index arithmetic runs within lengths made here and in reduce.ts, so `!` after an index is safe.

import { median } from '../median.js';
import type { Units } from '../reduce.js';
import type { ReadingSums } from './summary.js';
import type { Design } from './design.js';
import type { Parameters, Priors } from './parameters.js';

/** A crude ln rate for each unit with a record of any use; NaN otherwise. */
export function crudeLogRates(units: Units, summary: ReadingSums): Float64Array {
  const crude = new Float64Array(units.count).fill(NaN);
  for (let unit = 0; unit < units.count; unit++) {
    const slope = summary.slope[unit]!;
    if (summary.sxx[unit]! > 0 && slope > 0) {
      crude[unit] = Math.log(slope);
      continue;
    }
    if (units.life[unit]! === units.life[unit]!) {
      crude[unit] = units.life[unit]!;
      continue;
    }
    let low = -Infinity;
    let high = Infinity;
    for (let e = units.edgeStart[unit]!; e < units.edgeStart[unit + 1]!; e++) {
      if (units.edgeReached[e]! < Infinity)
        low = Math.max(low, Math.log(units.edgeDepth[e]! / units.edgeReached[e]!));
      if (units.edgeNotYet[e]! > 0)
        high = Math.min(high, Math.log(units.edgeDepth[e]! / units.edgeNotYet[e]!));
    }
    if (low > -Infinity && high < Infinity) crude[unit] = 0.5 * (low + high);
    else if (low > -Infinity) crude[unit] = low + 0.2;
    else if (high < Infinity) crude[unit] = high - 0.4;
  }
  return crude;
}

export function startValues(
  units: Units,
  summary: ReadingSums,
  design: Design,
  priors: Priors,
  gaugeError: number,
): Parameters {
  const crude = crudeLogRates(units, summary);
  const residual: number[] = [];
  const error: number[] = [];
  for (let unit = 0; unit < units.count; unit++) {
    if (crude[unit]! === crude[unit]!) residual.push(crude[unit]! - units.offset[unit]!);
    const n = summary.n[unit]!;
    if (n >= 2) error.push(Math.sqrt(summary.sse[unit]! / (n - 1)));
  }
  const centre = residual.length > 0 ? median(residual) : (priors.level?.mean ?? 0);
  const scatter = residual.length > 2 ? 1.4826 * median(residual.map((u) => Math.abs(u - centre))) : 0.3;
  const dense = new Float64Array(design.dense);
  dense[0] = centre;
  const sigma = error.length > 2 ? median(error) : gaugeError;
  return {
    effects: { dense, apart: new Float64Array(design.apartLevels) },
    logSpread: Math.log(Math.min(1.5, Math.max(0.05, scatter))),
    logError: Math.log(Math.max(sigma, 0.02 * gaugeError)),
    poolSpread: design.pools.map(() => Math.exp(priors.logPoolSpread.mean)),
  };
}
