// Which thicknesses stray from what the conveyor's clock and the point's other records foretell? Each is left out in turn: the rest of
// its point's thicknesses, the point's own rate and the wandering duty make one normal prediction (the inverse of their covariance
// gives all of them at once; Sundararajan & Keerthi 2001, Neural Computation 13, 1103). A change of rate that many points share is
// in the clock, so it makes no strays. Scatter that all readings share is taken out by its middle before one is called a stray.
// Index arithmetic runs within lengths made here and in blocks.ts, so `!` after an index is safe.

import { crowdWeight } from '../likelihood/leave-one-out.js';
import { median } from '../median.js';
import { cholesky, invertCholesky } from '../numeric/cholesky.js';
import type { Block } from './blocks.js';
import type { Setting } from './hyper.js';
import { priorTheta } from './hyper.js';
import type { ClockMode } from './laplace.js';
import { ownJump, ownRegimes, said } from './level.js';
import { placeTerm } from './point.js';
import type { Sums } from './sums.js';
import { sumsOf } from './sums.js';
import { ageClock } from './theta.js';

export interface Strays {
  /** By thickness of the block: standard deviations off, wear foretold (mm), and what it counts for. */
  readonly deviation: Float64Array;
  readonly expected: Float64Array;
  readonly weight: Float64Array;
}

const rounds = 3;

export function straysOf(block: Block, setting: Setting): Strays {
  let weight: Float64Array = new Float64Array(block.row.length).fill(1);
  let found: Pick<Strays, 'deviation' | 'expected'> = { deviation: weight, expected: weight };
  const theta = priorTheta(setting);
  const level = Math.log(
    setting.expected.depth / ageClock(setting.expected.exposure, theta.power, setting.reference),
  );
  const levelVariance = setting.expected.spread ** 2 + theta.levelSpread ** 2;
  for (let round = 0; round < rounds; round++) {
    const sums = sumsOf(block, theta, setting.reference, weight);
    let best: { mode: ClockMode; log: number } | undefined;
    ownRegimes(block).forEach(({ from, lastOff, logChance }) => {
      const s = said(block, sums, { level, levelVariance, from, lastOff, ...ownJump }, best?.mode);
      if (s.mode && s.logEvidence + logChance > (best?.log ?? -Infinity))
        best = { mode: s.mode, log: s.logEvidence + logChance };
    });
    if (!best) break;
    found = leaveOut(block, sums, best.mode, weight);
    const next = crowdWeights(block, found.deviation);
    const change = next.reduce((sum, w, r) => sum + Math.abs(w - weight[r]!), 0);
    weight = next;
    if (change < 0.05) break;
  }
  return { ...found, weight };
}

/** A point's only thickness keeps its weight: nothing of its own says that it strays. */
function crowdWeights(block: Block, deviation: Float64Array): Float64Array {
  const scale = deviation.length > 5 ? 1.4826 * median(Array.from(deviation, Math.abs)) : 1;
  const common = Math.max(1, Math.min(3, scale));
  const weight = deviation.map((d) => crowdWeight(d / common));
  for (let i = 0; i < block.known; i++)
    if (block.start[i + 1]! - block.start[i]! === 1) weight[block.start[i]!] = 1;
  return weight;
}

function leaveOut(
  block: Block,
  sums: Sums,
  mode: ClockMode,
  weight: Float64Array,
): Pick<Strays, 'deviation' | 'expected'> {
  const deviation = new Float64Array(block.row.length);
  const expected = new Float64Array(block.row.length);
  for (let i = 0; i < block.known; i++) leaveOutUnit(block, sums, mode, weight, i, { deviation, expected });
  return { deviation, expected };
}

function leaveOutUnit(
  block: Block,
  sums: Sums,
  mode: ClockMode,
  weight: Float64Array,
  i: number,
  out: Pick<Strays, 'deviation' | 'expected'>,
): void {
  const { stretches: m } = block;
  const first = block.start[i]!;
  const n = block.start[i + 1]! - first;
  if (n === 0) return;
  const { theta } = sums;
  const own = theta.spread ** 2 * block.prior.share[i]!;
  const rate = Math.exp(mode.u[i]! + placeTerm(block, mode.v, i));
  const drift = theta.pointNoise ** 2 * block.step * block.crude[i]! ** 2;
  const noise = (r: number): number => (theta.scatter * block.error[r]!) ** 2;
  // Wear in a clock whose middle is the mode's: about the pool's mean, not the point's own, so that no reading is counted twice.
  const line = new Float64Array(n);
  const off = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    const r = first + k;
    line[k] = rate * clockHours(block, sums, mode.v, i, block.age[r]!);
    const look = block.bias[r]!;
    off[k] = block.wear[r]! - line[k]! * (1 - mode.u[i]!) - (look >= 0 ? mode.v[m + look]! : 0);
  }
  const covariance = new Float64Array(n * n);
  for (let k = 0; k < n; k++)
    for (let l = 0; l < n; l++)
      covariance[k * n + l] =
        own * line[k]! * line[l]! +
        drift * Math.min(block.age[first + k]!, block.age[first + l]!) +
        (k === l ? noise(first + k) / Math.max(weight[first + k]!, 1e-9) : 0);
  const factor = cholesky(covariance, n);
  if (!factor) return;
  const inverse = invertCholesky(factor, n);
  for (let k = 0; k < n; k++) {
    const r = first + k;
    let pull = 0;
    for (let l = 0; l < n; l++) pull += inverse[k * n + l]! * off[l]!;
    const variance = 1 / inverse[k * n + k]!;
    const miss = pull * variance;
    const rest = Math.max(variance - noise(r) / Math.max(weight[r]!, 1e-9), 0) + noise(r);
    out.deviation[r] = miss / Math.sqrt(rest);
    out.expected[r] = block.wear[r]! - miss;
  }
}

function clockHours(block: Block, sums: Sums, v: Float64Array, i: number, age: number): number {
  const { meter, stretches, fitted } = block;
  const { power } = sums.theta;
  let before = 0;
  let hours = 0;
  for (let j = 0; j < stretches; j++) {
    const end = j === stretches - 1 ? age : Math.min(age, Math.max(0, meter[j + 1]! - fitted[i]!));
    const here = ageClock(Math.max(end, 0), power, sums.reference);
    hours += Math.exp(v[j]!) * Math.max(0, here - before);
    before = Math.max(before, here);
  }
  return hours;
}
