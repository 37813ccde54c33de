// A chance that rises with exposure, asked for again and again: worked out once on a grid of ln exposure and read off between by a
// monotone cubic on its probit (Fritsch & Butland 1984, SIAM J. Sci. Stat. Comput. 5, 300), within about 1e-4.
// Index arithmetic runs within lengths made here, so `!` after an index is safe.

import { area, normalQuantile } from '../numeric/normal.js';

export interface Rising {
  readonly log: Float64Array;
  /** One row of chances an outcome (all, if changed, if not). */
  readonly probit: readonly Float64Array[];
  readonly slope: readonly Float64Array[];
}

export const points = 48;
const flat = 6; // probit beyond which nothing is asked

/**
 * @param chances writes the outcomes' chances at an exposure into a row. @param low, high where to start, ln exposure.
 * @param keep called after each point of the grid that stays, in order.
 */
export function tabled(
  chances: (exposure: number, out: Float64Array) => void,
  outcomes: number,
  low: number,
  high: number,
  keep?: (point: number) => void,
): Rising {
  const row = new Float64Array(outcomes);
  const first = (log: number): number => {
    chances(Math.exp(log), row);
    return row[0]!;
  };
  const stride = high - low;
  for (let step = 0; step < 6 && first(low) > 1e-5; step++) low -= 0.5 * stride;
  for (let step = 0; step < 6 && first(high) < 0.999; step++) high += 0.5 * stride;
  // In from both ends to where something happens.
  for (let step = 0; step < 3; step++) {
    const middle = low + 0.25 * (high - low);
    if (first(middle) < 1e-6) low = middle;
    const above = high - 0.25 * (high - low);
    if (first(above) > 1 - 1e-6) high = above;
  }
  const log = Float64Array.from({ length: points }, (_, k) => low + ((high - low) * k) / (points - 1));
  const probit = Array.from({ length: outcomes }, () => new Float64Array(points));
  log.forEach((x, k) => {
    chances(Math.exp(x), row);
    keep?.(k);
    for (let o = 0; o < outcomes; o++) {
      const p = row[o]!;
      const z = p <= 1e-9 ? -flat : p >= 1 - 1e-9 ? flat : Math.max(-flat, Math.min(flat, normalQuantile(p)));
      probit[o]![k] = k > 0 ? Math.max(z, probit[o]![k - 1]!) : z;
    }
  });
  return { log, probit, slope: probit.map((z) => slopes(log, z)) };
}

function slopes(x: Float64Array, z: Float64Array): Float64Array {
  const step = x[1]! - x[0]!;
  return z.map((_, k) => {
    if (k === 0 || k === x.length - 1) return 0;
    const before = (z[k]! - z[k - 1]!) / step;
    const after = (z[k + 1]! - z[k]!) / step;
    return before > 0 && after > 0 ? (2 * before * after) / (before + after) : 0;
  });
}

/** Chance of an outcome by an exposure. */
export function readOff({ log, probit, slope }: Rising, outcome: number, exposure: number): number {
  if (!(exposure > 0)) return 0;
  const x = Math.log(exposure);
  const z = probit[outcome]!;
  const last = log.length - 1;
  const step = log[1]! - log[0]!;
  const place = (x - log[0]!) / step;
  if (place <= 0) return z[0]! <= -flat || place < -0.5 ? 0 : area(z[0]!) * Math.max(0, 1 + 2 * place);
  if (place >= last) return z[last]! >= flat ? 1 : area(z[last]!);
  const k = Math.floor(place);
  const t = place - k;
  const d = slope[outcome]!;
  const r = 1 - t;
  const at =
    r * r * ((1 + 2 * t) * z[k]! + t * step * d[k]!) +
    t * t * ((1 + 2 * r) * z[k + 1]! - r * step * d[k + 1]!);
  if (at <= -flat + 1e-9) return 0;
  return at >= flat - 1e-9 ? 1 : area(at);
}
