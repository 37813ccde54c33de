// Dates ask a forecast's distribution thousands of times. It is smooth beyond the exposure of today, so it is asked once at 41
// exposures from there to its far tail and read off between them by a cubic whose slopes are differences of fourth order, kept
// within the monotone range of Fritsch and Carlson (1980, SIAM J. Numer. Anal. 17, 238). Against the distribution itself the
// chance is within 1e-4, less than a day's worth. Quantiles of exposure are never read from this table.

import type { Quantiles } from './model.js';

const points = 41;

export interface Distribution {
  readonly reachedBy: (exposure: number) => number;
  readonly quantiles: Quantiles;
}

/**
 * Chance by exposure, non-decreasing. Exposures below `from` are asked of the distribution itself; with `from` 0 the table
 * reaches so far down that from there to nothing a straight line does.
 */
export function tabulated({ reachedBy, quantiles }: Distribution, from = 0): (exposure: number) => number {
  const { q05, q50, q95 } = quantiles;
  // A lower quantile of 0 says that it may have happened already; without a middle there is nothing to lay a table about.
  if (!(q50 > 0) || !(q95 > q50) || !Number.isFinite(q95)) return reachedBy;
  // 3.4 times the half width of the 90 % interval on the logarithm: beyond it a lognormal has less than 1e-7.
  const above = Math.log(q95 / q50);
  const below = q05 > 0 ? Math.log(q50 / q05) : 2 * above;
  const low = Math.max(Math.log(q50) - 3.4 * Math.max(below, 1e-6), from > 0 ? Math.log(from) : -Infinity);
  const high = Math.max(Math.log(q50) + 3.4 * Math.max(above, 1e-6), low + 0.1);
  const step = (high - low) / (points - 1);
  const p = new Float64Array(points);
  for (let i = 0; i < points; i++) p[i] = Math.max(reachedBy(Math.exp(low + i * step)), p[i - 1] ?? 0);
  const slope = monotoneSlopes(p);
  const start = from > 0 ? 0 : reachedBy(0);
  const value = (i: number): number => p[i] ?? 1; // every index below is within the table
  return (exposure) => {
    const at = exposure > 0 ? (Math.log(exposure) - low) / step : -1;
    if (at < 0)
      return from > 0
        ? reachedBy(exposure)
        : exposure > 0
          ? start + ((value(0) - start) * exposure) / Math.exp(low)
          : start;
    if (at >= points - 1) return value(points - 1);
    const i = Math.floor(at);
    const t = at - i;
    const t2 = t * t;
    const t3 = t2 * t;
    return (
      value(i) * (2 * t3 - 3 * t2 + 1) +
      (slope[i] ?? 0) * (t3 - 2 * t2 + t) +
      value(i + 1) * (3 * t2 - 2 * t3) +
      (slope[i + 1] ?? 0) * (t3 - t2)
    );
  };
}

/** Slopes a step. At the ends one-sided; inside at most three times the smaller neighbouring difference, so that no cubic turns. */
function monotoneSlopes(p: Float64Array): Float64Array {
  const at = (i: number): number => p[Math.min(Math.max(i, 0), p.length - 1)] ?? 0;
  return Float64Array.from(p, (_, i) => {
    const before = i === 0 ? Infinity : at(i) - at(i - 1);
    const after = i === p.length - 1 ? Infinity : at(i + 1) - at(i);
    const raw =
      i < 2 || i > p.length - 3
        ? i === 0
          ? -1.5 * at(0) + 2 * at(1) - 0.5 * at(2)
          : i === p.length - 1
            ? 1.5 * at(i) - 2 * at(i - 1) + 0.5 * at(i - 2)
            : (at(i + 1) - at(i - 1)) / 2
        : (8 * (at(i + 1) - at(i - 1)) - (at(i + 2) - at(i - 2))) / 12;
    return Math.min(Math.max(raw, 0), 3 * Math.min(before, after));
  });
}
