// Dates ask a forecast's distribution thousands of times. It is smooth, so it is asked once at 97 exposures between its far
// tails and read off between them by a monotone cubic (Fritsch and Carlson 1980, SIAM J. Numer. Anal. 17, 238). Against the
// distribution itself the chance is within 1e-4, less than a day's worth. Quantiles of exposure are not read from this table.

import type { Quantiles } from './model.js';

const points = 97;

export interface Distribution {
  readonly reachedBy: (exposure: number) => number;
  readonly quantiles: Quantiles;
}

/** Chance by exposure, non-decreasing; exactly 0 and 1 beyond the table where the distribution is so to 1e-6. */
export function tabulated({ reachedBy, quantiles }: Distribution): (exposure: number) => number {
  const { q05, q50, q95 } = quantiles;
  // A lower quantile of 0 says that it may have happened already; without a middle there is nothing to lay a table about.
  if (!(q50 > 0) || !(q95 > q50) || !Number.isFinite(q95)) return reachedBy;
  // 4.5 times the half width of the 90 % interval, on the logarithm: beyond it a lognormal has less than 1e-12.
  const above = Math.log(q95 / q50);
  const below = q05 > 0 ? Math.log(q50 / q05) : 2 * above;
  const low = Math.log(q50) - 4.5 * Math.max(below, 1e-6);
  const high = Math.log(q50) + 4.5 * Math.max(above, 1e-6);
  const step = (high - low) / (points - 1);
  const p = new Float64Array(points);
  for (let i = 0; i < points; i++) p[i] = reachedBy(Math.exp(low + i * step));
  for (let i = 1; i < points; i++) p[i] = Math.max(p[i] ?? 0, p[i - 1] ?? 0);
  const slope = monotoneSlopes(p);
  return (exposure) => {
    if (!(exposure > 0)) return reachedBy(exposure);
    const at = (Math.log(exposure) - low) / step;
    if (at <= 0) return at < 0 ? reachedBy(exposure) : p[0] ?? 0;
    if (at >= points - 1) return p[points - 1] ?? 1;
    const i = Math.floor(at);
    const t = at - i;
    const [p0, p1, s0, s1] = [p[i] ?? 0, p[i + 1] ?? 1, slope[i] ?? 0, slope[i + 1] ?? 0];
    const t2 = t * t;
    const t3 = t2 * t;
    return p0 * (2 * t3 - 3 * t2 + 1) + s0 * (t3 - 2 * t2 + t) + p1 * (3 * t2 - 2 * t3) + s1 * (t3 - t2);
  };
}

/** Slopes per step that keep the cubic between its ends: harmonic means of neighbouring differences. */
function monotoneSlopes(p: Float64Array): Float64Array {
  const n = p.length;
  const slope = new Float64Array(n);
  for (let i = 1; i + 1 < n; i++) {
    const a = (p[i] ?? 0) - (p[i - 1] ?? 0);
    const b = (p[i + 1] ?? 0) - (p[i] ?? 0);
    slope[i] = a > 0 && b > 0 ? (2 * a * b) / (a + b) : 0;
  }
  return slope;
}
