// What do a unit's thickness rows say about its rate, in five numbers? y = rate·x + error, whitened by a Kalman filter where
// hours are not all alike: wear then wanders about the straight line as a random walk of variance (ratio·σ·rate)² for each unit of
// exposure (Durbin & Koopman, Time Series Analysis by State Space Methods, 2012, chapter 2; the regression column is filtered with
// the data, as in chapter 6). With ratio 0 the filter does nothing and these are the sums of a line through the origin.
// Index arithmetic runs within lengths made here and in reduce.ts, so `!` after an index is safe.

import type { Units } from '../reduce.js';

export interface Summary {
  /** Sum of the weights: the number of thicknesses, outliers counted for less. */
  readonly n: Float64Array;
  readonly sxx: Float64Array;
  /** Least-squares rate, mm per unit of exposure; 0 where there is no exposure. */
  readonly slope: Float64Array;
  /** Sum of squares about that line, mm² (two-pass). */
  readonly sse: Float64Array;
  /** ½·Σ ln of the whitened variances in units of σ². */
  readonly logScale: Float64Array;
  /** At the last thickness: expected wear is `stateWear + rate·stateExposure`, with variance `stateVariance·σ²`. */
  readonly stateWear: Float64Array;
  readonly stateExposure: Float64Array;
  readonly stateVariance: Float64Array;
}

/**
 * @param ratio (ψ/σ)², variance of the walk for each unit of exposure and squared rate, in units of σ². ≥ 0.
 * @param rate the rate at which each unit's walk is scaled; read only where `ratio` > 0.
 * @param weight of each row, 0 to 1; all 1 where left out.
 */
export function summarise(units: Units, ratio: number, rate?: Float64Array, weight?: Float64Array): Summary {
  const { count, start, exposure, wear } = units;
  const n = new Float64Array(count);
  const sxx = new Float64Array(count);
  const slope = new Float64Array(count);
  const sse = new Float64Array(count);
  const logScale = new Float64Array(count);
  const stateWear = new Float64Array(count);
  const stateExposure = new Float64Array(count);
  const stateVariance = new Float64Array(count);
  let longest = 0;
  for (let unit = 0; unit < count; unit++) longest = Math.max(longest, start[unit + 1]! - start[unit]!);
  const x = new Float64Array(longest);
  const y = new Float64Array(longest);
  for (let unit = 0; unit < count; unit++) {
    const first = start[unit]!;
    const rows = start[unit + 1]! - first;
    if (rows === 0) continue;
    let total = 0;
    let xx = 0;
    let xy = 0;
    if (ratio > 0 && rate) {
      const step = ratio * rate[unit]! * rate[unit]!;
      let variance = 0;
      let before = 0;
      let filteredX = 0;
      let filteredY = 0;
      let log = 0;
      for (let j = 0; j < rows; j++) {
        const at = first + j;
        const w = weight ? weight[at]! : 1;
        variance += step * (exposure[at]! - before);
        before = exposure[at]!;
        if (w < 1e-12) {
          x[j] = y[j] = 0;
          continue;
        }
        const spread = variance + 1 / w;
        const gain = variance / spread;
        const scale = 1 / Math.sqrt(spread);
        const newsX = before - filteredX;
        const newsY = wear[at]! - filteredY;
        x[j] = newsX * scale;
        y[j] = newsY * scale;
        filteredX += gain * newsX;
        filteredY += gain * newsY;
        variance *= 1 - gain;
        log += w * Math.log(1 + variance / (1 - gain));
        total += w;
        xx += x[j]! * x[j]!;
        xy += x[j]! * y[j]!;
      }
      logScale[unit] = 0.5 * log;
      stateWear[unit] = filteredY;
      stateExposure[unit] = before - filteredX;
      stateVariance[unit] = variance;
    } else {
      for (let j = 0; j < rows; j++) {
        const at = first + j;
        const w = weight ? weight[at]! : 1;
        const scale = weight ? Math.sqrt(w) : 1;
        x[j] = exposure[at]! * scale;
        y[j] = wear[at]! * scale;
        total += w;
        xx += x[j]! * x[j]!;
        xy += x[j]! * y[j]!;
      }
      stateExposure[unit] = exposure[first + rows - 1]!;
    }
    const b = xx > 0 ? xy / xx : 0;
    let sum = 0;
    for (let j = 0; j < rows; j++) {
      const residual = y[j]! - b * x[j]!;
      sum += residual * residual;
    }
    n[unit] = total;
    sxx[unit] = xx;
    slope[unit] = b;
    sse[unit] = sum;
  }
  return { n, sxx, slope, sse, logScale, stateWear, stateExposure, stateVariance };
}
