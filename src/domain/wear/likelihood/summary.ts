// What do a unit's thickness rows say about its rate, in five numbers? y = rate·x + error, whitened by a Kalman filter where
// hours are not all alike: wear then wanders about the straight line as a random walk of variance (ratio·σ·rate)² for each unit of
// exposure (Durbin & Koopman, Time Series Analysis by State Space Methods, 2012, chapter 2; the regression column is filtered with
// the data, as in chapter 6). The walk grows with the rate itself, so the filter runs at a grid of rates. With ratio 0 the
// filter does nothing and these are the sums of a line through the origin.
// Index arithmetic runs within lengths made here and in reduce.ts, so `!` after an index is safe.

import type { Units } from '../reduce.js';

export interface ReadingSums {
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
  /** Where the walk's variance counts: the sums again at rates above and below, since the walk grows with the rate itself. */
  readonly walk: WalkSums | undefined;
}

/**
 * For unit i and grid rate k, at `table[4·(i·gridSize + k)]`: Sxx, slope, SSE and logScale as whitened at ln rate `from[i] + k·gridStep`.
 * All four change slowly along the grid, so a cubic through four neighbours leaves a unit's ln likelihood good to about 1e-3 or better.
 */
export interface WalkSums {
  readonly from: Float64Array;
  readonly table: Float64Array;
}

export const gridSize = 17;
export const gridStep = 0.25;

/**
 * @param ratio (ψ/σ)², variance of the walk for each unit of exposure and squared rate, in units of σ². ≥ 0.
 * @param rate about what each unit's rate is, in the middle of its grid; read only where `ratio` > 0.
 * @param weight of each row, 0 to 1; all 1 where left out.
 */
export function summarise(
  units: Units,
  ratio: number,
  rate?: Float64Array,
  weight?: Float64Array,
): ReadingSums {
  const { count, start } = units;
  const column = (): Float64Array => new Float64Array(count);
  const walk =
    ratio > 0 && rate
      ? { from: column().fill(NaN), table: new Float64Array(4 * gridSize * count) }
      : undefined;
  const out: ReadingSums = {
    n: column(),
    sxx: column(),
    slope: column(),
    sse: column(),
    logScale: column(),
    stateWear: column(),
    stateExposure: column(),
    stateVariance: column(),
    walk,
  };
  let longest = 0;
  for (let unit = 0; unit < count; unit++) longest = Math.max(longest, start[unit + 1]! - start[unit]!);
  const work: Whitened = {
    x: new Float64Array(longest),
    y: new Float64Array(longest),
    total: 0,
    xx: 0,
    xy: 0,
    logScale: 0,
    stateWear: 0,
    stateExposure: 0,
    stateVariance: 0,
  };
  for (let unit = 0; unit < count; unit++) {
    const first = start[unit]!;
    const rows = start[unit + 1]! - first;
    if (rows === 0) continue;
    const middle = rate?.[unit] ?? 0;
    const walking = walk !== undefined && middle > 0;
    if (walking) whiten(units, first, rows, ratio * middle * middle, weight, work);
    else weigh(units, first, rows, weight, work);
    const b = work.xx > 0 ? work.xy / work.xx : 0;
    out.n[unit] = work.total;
    out.sxx[unit] = work.xx;
    out.slope[unit] = b;
    out.sse[unit] = squaresAbout(work, rows, b);
    out.logScale[unit] = work.logScale;
    out.stateWear[unit] = work.stateWear;
    out.stateExposure[unit] = work.stateExposure;
    out.stateVariance[unit] = work.stateVariance;
    if (!walking || work.xx === 0) continue;
    walk.from[unit] = Math.log(middle) - 0.5 * (gridSize - 1) * gridStep;
    for (let k = 0; k < gridSize; k++) {
      const r = Math.exp(walk.from[unit]! + k * gridStep);
      whiten(units, first, rows, ratio * r * r, weight, work);
      const slope = work.xx > 0 ? work.xy / work.xx : 0;
      const at = 4 * (unit * gridSize + k);
      walk.table[at] = work.xx;
      walk.table[at + 1] = slope;
      walk.table[at + 2] = squaresAbout(work, rows, slope);
      walk.table[at + 3] = work.logScale;
    }
  }
  return out;
}

interface Whitened {
  readonly x: Float64Array;
  readonly y: Float64Array;
  total: number;
  xx: number;
  xy: number;
  logScale: number;
  stateWear: number;
  stateExposure: number;
  stateVariance: number;
}

function weigh(
  { exposure, wear, noise }: Units,
  first: number,
  rows: number,
  weight: Float64Array | undefined,
  out: Whitened,
): void {
  const { x, y } = out;
  let total = 0;
  let xx = 0;
  let xy = 0;
  let log = 0;
  for (let j = 0; j < rows; j++) {
    const at = first + j;
    const w = weight ? weight[at]! : 1;
    const own = noise ? noise[at]! : 1;
    if (own !== 1) log += w * Math.log(own);
    const scale = w === 1 && own === 1 ? 1 : Math.sqrt(w / own);
    const xj = (x[j] = exposure[at]! * scale);
    const yj = (y[j] = wear[at]! * scale);
    total += w;
    xx += xj * xj;
    xy += xj * yj;
  }
  out.total = total;
  out.xx = xx;
  out.xy = xy;
  out.logScale = 0.5 * log;
  out.stateWear = 0;
  out.stateExposure = exposure[first + rows - 1]!;
  out.stateVariance = 0;
}

/** @param step variance of the walk for each unit of exposure, in units of σ². */
function whiten(
  { exposure, wear, noise }: Units,
  first: number,
  rows: number,
  step: number,
  weight: Float64Array | undefined,
  out: Whitened,
): void {
  const { x, y } = out;
  let total = 0;
  let xx = 0;
  let xy = 0;
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
    const own = noise ? noise[at]! : 1;
    const spread = variance + own / w;
    const gain = variance / spread;
    const scale = 1 / Math.sqrt(spread);
    const newsX = before - filteredX;
    const newsY = wear[at]! - filteredY;
    const xj = (x[j] = newsX * scale);
    const yj = (y[j] = newsY * scale);
    log += w * Math.log(own + variance);
    filteredX += gain * newsX;
    filteredY += gain * newsY;
    variance *= 1 - gain;
    total += w;
    xx += xj * xj;
    xy += xj * yj;
  }
  out.total = total;
  out.xx = xx;
  out.xy = xy;
  out.logScale = 0.5 * log;
  out.stateWear = filteredY;
  out.stateExposure = before - filteredX;
  out.stateVariance = variance;
}

function squaresAbout({ x, y }: Whitened, rows: number, rate: number): number {
  let sum = 0;
  for (let j = 0; j < rows; j++) {
    const residual = y[j]! - rate * x[j]!;
    sum += residual * residual;
  }
  return sum;
}
