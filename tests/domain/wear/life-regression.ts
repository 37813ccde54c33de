// Which life distribution fits lives that are partly known only as bounds? Weibull, lognormal or normal by maximum likelihood, with
// covariates on the location: exact lives, lives longer than, shorter than, or between. The classic doors to the same question as
// the wear model, kept as its outside check and for former sets without readings. Method: Newton on the location coefficients and
// ln scale (Kalbfleisch & Prentice, The Statistical Analysis of Failure Time Data, 2002, chapter 3); rank regression after Abernethy,
// The New Weibull Handbook, chapter 2. Index arithmetic runs within lengths given, so `!` after an index is safe.

import { cholesky, invertCholesky, solveCholesky } from '../../../src/domain/wear/numeric/cholesky.js';
import { halfLogTwoPi, logAreaBetween } from '../../../src/domain/wear/numeric/normal.js';

export type Family = 'weibull' | 'lognormal' | 'normal';

/** One row a life, or `count` alike. `lower` = `upper`: exact. `upper` Infinity: longer than. `lower` 0 (normal: −Infinity): shorter than. */
export interface LifeRow {
  readonly lower: number;
  readonly upper: number;
  readonly count?: number;
  readonly covariates?: readonly number[];
}

export type LifeFit =
  | {
      readonly kind: 'fitted';
      /** Intercept first; of ln life for weibull and lognormal. */
      readonly coefficients: readonly number[];
      /** Spread of ln life (of life, for normal); for weibull 1/shape. */
      readonly scale: number;
      readonly logLikelihood: number;
      /** Of the coefficients, then of ln scale. */
      readonly standardErrors: readonly number[];
      readonly iterations: number;
    }
  | { readonly kind: 'cannot say'; readonly why: 'no rows' | 'not lives' | 'no finite maximum' };

export function fitLives(rows: readonly LifeRow[], family: Family): LifeFit {
  if (rows.length === 0) return { kind: 'cannot say', why: 'no rows' };
  const least = family === 'normal' ? -Infinity : 0;
  for (const { lower, upper } of rows) {
    const exact = lower === upper;
    if (!(lower <= upper) || lower < least || (exact && !(lower > least && Number.isFinite(lower))))
      return { kind: 'cannot say', why: 'not lives' };
  }
  const log = (t: number): number => (family === 'normal' ? t : t <= 0 ? -Infinity : Math.log(t));
  const size = 1 + (rows[0]!.covariates?.length ?? 0) + 1;
  const at = rows.map(({ lower, upper, count = 1, covariates = [] }) => ({
    low: log(lower),
    high: log(upper),
    count,
    x: [1, ...covariates],
  }));
  const middles = at
    .map(({ low, high }) =>
      Number.isFinite(low) && Number.isFinite(high) ? 0.5 * (low + high) : Number.isFinite(low) ? low : high,
    )
    .filter(Number.isFinite);
  if (middles.length === 0) return { kind: 'cannot say', why: 'not lives' };
  const mean = middles.reduce((sum, v) => sum + v, 0) / middles.length;
  const spread = Math.sqrt(middles.reduce((sum, v) => sum + (v - mean) ** 2, 0) / middles.length);
  let theta = new Float64Array(size);
  theta[0] = mean;
  theta[size - 1] = Math.log(Math.max(spread, 1e-3));
  let here = likelihood(at, family, theta);
  let iterations = 0;
  for (; iterations < 100; iterations++) {
    const step = stepFrom(here, size);
    if (!step) return { kind: 'cannot say', why: 'no finite maximum' };
    let share = 1;
    let next = here;
    let trial = theta;
    for (let halving = 0; halving < 40; halving++, share *= 0.5) {
      trial = theta.map((v, i) => v + share * step[i]!);
      next = likelihood(at, family, trial);
      if (next.value >= here.value - 1e-12 * Math.abs(here.value)) break;
    }
    const decrement = step.reduce((sum, v, i) => sum + v * here.gradient[i]!, 0);
    theta = trial;
    here = next;
    if (Math.abs(theta[size - 1]!) > 30 || Math.abs(theta[0]! - mean) > 1e3 * (1 + Math.abs(mean)))
      return { kind: 'cannot say', why: 'no finite maximum' };
    if (decrement < 1e-18) break;
  }
  const factor = cholesky(here.information, size);
  if (!factor) return { kind: 'cannot say', why: 'no finite maximum' };
  const inverse = invertCholesky(factor, size);
  // A likelihood that climbs for ever flattens as it does: the scale is then not told within any factor worth printing.
  if (!(Math.sqrt(inverse[size * size - 1]!) < vaguest))
    return { kind: 'cannot say', why: 'no finite maximum' };
  return {
    kind: 'fitted',
    coefficients: Array.from(theta.subarray(0, size - 1)),
    scale: Math.exp(theta[size - 1]!),
    logLikelihood: here.value,
    standardErrors: Array.from({ length: size }, (_, i) => Math.sqrt(inverse[i * size + i]!)),
    iterations,
  };
}

/** Standard error of ln scale beyond which there is no estimate. */
const vaguest = 20;

interface Evaluated {
  readonly value: number;
  readonly gradient: Float64Array;
  readonly information: Float64Array;
}

type Row = {
  readonly low: number;
  readonly high: number;
  readonly count: number;
  readonly x: readonly number[];
};

function likelihood(rows: readonly Row[], family: Family, theta: Float64Array): Evaluated {
  const size = theta.length;
  const last = size - 1;
  const scale = Math.exp(theta[last]!);
  const gradient = new Float64Array(size);
  const information = new Float64Array(size * size);
  const shape = family === 'weibull' ? smallestExtreme : normal;
  let value = 0;
  for (const { low, high, count, x } of rows) {
    let location = 0;
    for (let i = 0; i < last; i++) location += theta[i]! * x[i]!;
    const z1 = (low - location) / scale;
    const z2 = (high - location) / scale;
    let term: number; // ln likelihood
    let a: number; // −∂/∂z and its relatives, see below
    let b: number;
    let aa: number;
    let ab: number;
    let bb: number;
    if (low === high) {
      // ln f(z) − ln scale; g = d ln f/dz, h = d² ln f/dz².
      const g = shape.slope(z1);
      const h = shape.bend(z1);
      term = shape.logDensity(z1) - theta[last]! - (family === 'normal' ? 0 : low);
      a = g;
      b = z1 * g + 1;
      aa = h;
      ab = g + z1 * h;
      bb = z1 * g + z1 * z1 * h;
    } else {
      // ln(F(z2) − F(z1)); every density over that difference, through logarithms.
      term = shape.logBetween(z1, z2);
      const f1 = Number.isFinite(z1) ? Math.exp(shape.logDensity(z1) - term) : 0;
      const f2 = Number.isFinite(z2) ? Math.exp(shape.logDensity(z2) - term) : 0;
      const d1 = f1 === 0 ? 0 : f1 * shape.slope(z1);
      const d2 = f2 === 0 ? 0 : f2 * shape.slope(z2);
      const w1 = f1 === 0 ? 0 : z1;
      const w2 = f2 === 0 ? 0 : z2;
      a = f2 - f1;
      b = w2 * f2 - w1 * f1;
      aa = d2 - d1 - a * a;
      ab = f2 + w2 * d2 - f1 - w1 * d1 - a * b;
      bb = w2 * f2 + w2 * w2 * d2 - w1 * f1 - w1 * w1 * d1 - b * b;
    }
    value += count * term;
    for (let i = 0; i < last; i++) {
      gradient[i]! -= (count * a * x[i]!) / scale;
      for (let j = 0; j < last; j++)
        information[i * size + j]! -= (count * aa * x[i]! * x[j]!) / (scale * scale);
      information[i * size + last]! -= (count * ab * x[i]!) / scale;
      information[last * size + i]! -= (count * ab * x[i]!) / scale;
    }
    gradient[last]! -= count * b;
    information[last * size + last]! -= count * bb;
  }
  return { value, gradient, information };
}

function stepFrom({ gradient, information }: Evaluated, size: number): Float64Array | undefined {
  for (let raise = 0; raise < 12; raise++) {
    const raised = information.slice();
    for (let i = 0; i < size; i++) {
      const at = i * size + i;
      raised[at] = raised[at]! + (raise === 0 ? 0 : 10 ** (raise - 6) * Math.max(1, Math.abs(raised[at]!)));
    }
    const factor = cholesky(raised, size);
    if (factor) return solveCholesky(factor, size, gradient);
  }
  return undefined;
}

interface Shape {
  readonly logDensity: (z: number) => number;
  /** First and second derivative of logDensity. */
  readonly slope: (z: number) => number;
  readonly bend: (z: number) => number;
  readonly logBetween: (low: number, high: number) => number;
}

const normal: Shape = {
  logDensity: (z) => -0.5 * z * z - halfLogTwoPi,
  slope: (z) => -z,
  bend: () => -1,
  logBetween: logAreaBetween,
};

/** ln of a Weibull life, standardised: F(z) = 1 − exp(−eᶻ). */
const smallestExtreme: Shape = {
  logDensity: (z) => z - Math.exp(z),
  slope: (z) => 1 - Math.exp(z),
  bend: (z) => -Math.exp(z),
  logBetween: (low, high) => {
    const a = low === -Infinity ? 0 : Math.exp(low);
    if (high === Infinity) return -a;
    return -a + Math.log(-Math.expm1(a - Math.exp(high)));
  },
};

export interface WeibullLine {
  readonly shape: number;
  readonly scale: number;
}

/**
 * Weibull by rank regression, ln life on ln(−ln(1 − F)), with Johnson's adjusted ranks for lives still running and Benard's
 * approximation to the median rank, (i − 0.3)/(n + 0.4). Undefined with fewer than two different lives reached.
 */
export function rankRegressionWeibull(
  reached: readonly number[],
  running: readonly number[],
): WeibullLine | undefined {
  const all = [...reached.map((t) => ({ t, ended: true })), ...running.map((t) => ({ t, ended: false }))];
  if (all.some(({ t }) => !(t > 0) || !Number.isFinite(t))) return undefined;
  // At the same age a life that ended ranks before one that goes on.
  all.sort((p, q) => p.t - q.t || Number(q.ended) - Number(p.ended));
  const n = all.length;
  let rank = 0;
  const points: { x: number; y: number }[] = [];
  all.forEach(({ t, ended }, k) => {
    if (!ended) return;
    rank += (n + 1 - rank) / (n - k + 1);
    points.push({ x: Math.log(-Math.log1p(-(rank - 0.3) / (n + 0.4))), y: Math.log(t) });
  });
  const meanX = points.reduce((sum, p) => sum + p.x, 0) / points.length;
  const meanY = points.reduce((sum, p) => sum + p.y, 0) / points.length;
  const sxx = points.reduce((sum, p) => sum + (p.x - meanX) ** 2, 0);
  const sxy = points.reduce((sum, p) => sum + (p.x - meanX) * (p.y - meanY), 0);
  if (points.length < 2 || !(sxy > 0)) return undefined;
  const slope = sxy / sxx;
  return { shape: 1 / slope, scale: Math.exp(meanY - slope * meanX) };
}
