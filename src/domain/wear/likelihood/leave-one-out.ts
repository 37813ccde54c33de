// How far does each thickness lie from what all the other records foretell? For one unit: the other thicknesses of the unit, its
// pool, and the duty noise, by a Kalman filter on (wear, rate) and the disturbance smoother, whose two outputs give exactly the
// prediction of each reading from all others (de Jong 1989, J. Am. Stat. Assoc. 84, 1085; Durbin & Koopman 2012, section 4.5).
// A reading's weight is the chance that it belongs to the common crowd rather than to a few readings ten times as scattered.
// Index arithmetic runs within lengths made here and in reduce.ts, so `!` after an index is safe.

import type { Units } from '../reduce.js';

export interface LeaveOneOut {
  /** Standard deviations between each thickness row and its prediction. */
  readonly deviation: Float64Array;
  /** Wear foretold, mm. */
  readonly expected: Float64Array;
}

export interface RatePrior {
  readonly mean: number;
  readonly variance: number;
}

/**
 * @param walk (ψ/σ)², as in `summarise`.
 * @param prior rate that the pool foretells for a unit, before its own thicknesses.
 * @param weight of each row as used so far.
 */
export function leaveOneOut(
  units: Units,
  error: number,
  walk: number,
  rate: Float64Array,
  prior: (unit: number) => RatePrior,
  weight: Float64Array,
): LeaveOneOut {
  const total = units.exposure.length;
  const deviation = new Float64Array(total);
  const expected = new Float64Array(total);
  const noise = error * error;
  if (walk === 0) {
    withoutWalk(units, noise, prior, weight, deviation, expected);
    return { deviation, expected };
  }
  let longest = 0;
  for (let unit = 0; unit < units.count; unit++)
    longest = Math.max(longest, units.start[unit + 1]! - units.start[unit]!);
  const news = new Float64Array(longest);
  const spread = new Float64Array(longest);
  const gainWear = new Float64Array(longest);
  const gainRate = new Float64Array(longest);
  const step = new Float64Array(longest);
  for (let unit = 0; unit < units.count; unit++) {
    const first = units.start[unit]!;
    const rows = units.start[unit + 1]! - first;
    if (rows === 0) continue;
    const { mean, variance } = prior(unit);
    const drift = walk * noise * rate[unit]! * rate[unit]!;
    // State before the first reading: wear 0 at exposure 0, rate from the pool.
    const x0 = units.exposure[first]!;
    let aW = mean * x0;
    let aR = mean;
    let pWW = variance * x0 * x0 + drift * x0;
    let pWR = variance * x0;
    let pRR = variance;
    for (let j = 0; j < rows; j++) {
      const at = first + j;
      const v = units.wear[at]! - aW;
      const own = noise * ownNoise(units, at);
      const f = pWW + own / Math.max(weight[at]!, 1e-9);
      const d = j + 1 < rows ? units.exposure[at + 1]! - units.exposure[at]! : 0;
      news[j] = v;
      spread[j] = f;
      step[j] = d;
      const kW = (gainWear[j] = (pWW + d * pWR) / f);
      const kR = (gainRate[j] = pWR / f);
      // Move on: state ← T·state + K·news; covariance ← T·P·Tᵀ + drift − K·f·Kᵀ.
      aW += d * aR + kW * v;
      aR += kR * v;
      const nWW = pWW + 2 * d * pWR + d * d * pRR + drift * d - kW * kW * f;
      const nWR = pWR + d * pRR - kW * kR * f;
      pRR -= kR * kR * f;
      pWW = nWW;
      pWR = nWR;
    }
    let rW = 0;
    let rR = 0;
    let nWW = 0;
    let nWR = 0;
    let nRR = 0;
    for (let j = rows - 1; j >= 0; j--) {
      const at = first + j;
      const f = spread[j]!;
      const kW = gainWear[j]!;
      const kR = gainRate[j]!;
      const d = step[j]!;
      const u = news[j]! / f - kW * rW - kR * rR;
      const big = 1 / f + kW * kW * nWW + 2 * kW * kR * nWR + kR * kR * nRR;
      const miss = u / big;
      const own = noise * ownNoise(units, at);
      const variance = Math.max(1 / big - own / Math.max(weight[at]!, 1e-9), 0) + own;
      deviation[at] = miss / Math.sqrt(variance);
      expected[at] = units.wear[at]! - miss;
      // Back: L = T − K·Z with T = [[1, d], [0, 1]], Z = (1, 0).
      const l11 = 1 - kW;
      const l21 = -kR;
      const newRW = news[j]! / f + l11 * rW + l21 * rR;
      const newRR = d * rW + rR;
      rW = newRW;
      rR = newRR;
      const a = nWW * l11 + nWR * l21; // (N·L) first column
      const b = nWR * l11 + nRR * l21;
      const c = nWW * d + nWR; // second column
      const e = nWR * d + nRR;
      const newWW = 1 / f + l11 * a + l21 * b;
      const newWR = l11 * c + l21 * e;
      const newRRN = d * c + e;
      nWW = newWW;
      nWR = newWR;
      nRR = newRRN;
    }
  }
  return { deviation, expected };
}

/** With even duty one sum over the unit serves all its readings: each is taken out of it in turn. */
function withoutWalk(
  units: Units,
  noise: number,
  prior: (unit: number) => RatePrior,
  weight: Float64Array,
  deviation: Float64Array,
  expected: Float64Array,
): void {
  const { start, exposure, wear } = units;
  for (let unit = 0; unit < units.count; unit++) {
    const first = start[unit]!;
    const end = start[unit + 1]!;
    if (first === end) continue;
    const { mean, variance } = prior(unit);
    let precision = 1 / variance;
    let pull = mean / variance;
    for (let at = first; at < end; at++) {
      const share = (weight[at]! * exposure[at]!) / (noise * ownNoise(units, at));
      precision += share * exposure[at]!;
      pull += share * wear[at]!;
    }
    for (let at = first; at < end; at++) {
      const x = exposure[at]!;
      const own = noise * ownNoise(units, at);
      const share = (weight[at]! * x) / own;
      const rest = precision - share * x;
      const foretold = (x * (pull - share * wear[at]!)) / rest;
      expected[at] = foretold;
      deviation[at] = (wear[at]! - foretold) / Math.sqrt(own + (x * x) / rest);
    }
  }
}

function ownNoise({ noise }: Units, at: number): number {
  return noise ? noise[at]! : 1;
}

const strayShare = 0.02; // one reading in fifty strays, before anything is known of it: our judgement
const strayWidth = 10; // and then is ten times as scattered: our judgement

/** Chance that a reading so far out belongs to the common crowd. 1 within about 3.5 standard deviations, 0 from about 4.5. */
export function crowdWeight(deviation: number): number {
  if (Math.abs(deviation) < 3.3) return 1;
  const crowd = (1 - strayShare) * Math.exp(-0.5 * deviation * deviation);
  const stray =
    (strayShare / strayWidth) * Math.exp((-0.5 * deviation * deviation) / (strayWidth * strayWidth));
  const weight = crowd / (crowd + stray);
  return weight > 0.5 ? 1 : weight;
}
