// Where is a conveyor's clock likeliest, and how likely is such a clock at all? Newton on ln pace of each stretch, the looks' biases
// and the place trend, with every point's own ln rate eliminated (Schur complement), then Laplace's approximation of the evidence
// (Tierney & Kadane 1986, J. Am. Stat. Assoc. 81, 82). What it lacks is made good by the draws (draws.ts), which weigh the exact
// integrand. Index arithmetic runs within lengths made here, so `!` after an index is safe.

import { cholesky, logDeterminant, solveCholesky } from '../numeric/cholesky.js';
import { halfLogTwoPi, logAreaTabled, slopeOfLogArea } from '../numeric/normal.js';
import type { Block } from './blocks.js';
import { clockPriors } from './priors.js';
import type { Sums } from './sums.js';
import { stateOff } from './sums.js';

/** Prior of the ln paces: level ~ N(level, levelVariance), a jump from stretch `from` on ~ N(jump, jumpVariance), own noise each. */
export interface PacePrior {
  readonly level: number;
  readonly levelVariance: number;
  /** First stretch with the new rate; −1: steady. */
  readonly from: number;
  readonly jump: number;
  readonly jumpVariance: number;
  /** The last look may read off by much. */
  readonly lastOff: boolean;
}

/** One standard deviation of a look's bias or of a place coefficient, by its row in v after the paces. */
export function priorSpread(block: Block, { lastOff }: PacePrior, row: number): number {
  const { biases } = block;
  if (row >= biases) return block.placeSpread[row - biases]!;
  const usual = block.biasSpread[row]!;
  return lastOff && row >= biases - block.lastBiases
    ? (usual * clockPriors.lookOff.spread) / clockPriors.lookBias
    : usual;
}

export interface PaceGaussian {
  readonly prior: PacePrior;
  readonly mean: Float64Array;
  readonly precision: Float64Array;
  readonly logDeterminant: number;
}

export interface ClockMode {
  readonly pace: PaceGaussian;
  /** ln paces (M), biases (L), place (q), one vector. */
  readonly v: Float64Array;
  readonly u: Float64Array;
  readonly logEvidence: number;
  /** Cholesky factor of the Schur complement over v. */
  readonly factor: Float64Array;
  /** Covariance of u_i with v over its own curvature: what −dv moves u_i by. */
  readonly follow: Float64Array;
  readonly bend: Float64Array;
}

export function paceGaussian(block: Block, sums: Sums, prior: PacePrior): PaceGaussian | undefined {
  const m = block.stretches;
  const covariance = new Float64Array(m * m);
  const mean = new Float64Array(m);
  const noise = sums.theta.sharedNoise ** 2;
  for (let j = 0; j < m; j++) {
    const since = prior.from >= 0 && j >= prior.from;
    mean[j] = prior.level + block.work[j]! + (since ? prior.jump : 0);
    for (let k = 0; k < m; k++) {
      const both = since && k >= prior.from;
      covariance[j * m + k] = prior.levelVariance + (both ? prior.jumpVariance : 0);
    }
    covariance[j * m + j]! +=
      (noise * block.step) / (block.meter[j + 1]! - block.meter[j]!) + block.workVariance[j]!;
  }
  const factor = cholesky(covariance, m);
  if (!factor) return undefined;
  const precision = new Float64Array(m * m);
  const unit = new Float64Array(m);
  for (let j = 0; j < m; j++) {
    unit.fill(0);
    unit[j] = 1;
    precision.set(solveCholesky(factor, m, unit), j * m);
  }
  return { prior, mean, precision, logDeterminant: -logDeterminant(factor, m) };
}

interface Workspace {
  readonly size: number;
  readonly matrix: Float64Array;
  readonly gradient: Float64Array;
  readonly pace: Float64Array;
  readonly follow: Float64Array;
  readonly bend: Float64Array;
  readonly slope: Float64Array;
  readonly hours: Float64Array;
  readonly pull: Float64Array;
  readonly row: Float64Array;
}

const steps = 40;

export function modeOf(
  block: Block,
  sums: Sums,
  pace: PaceGaussian,
  start: { readonly v: Float64Array; readonly u: Float64Array } | undefined,
): ClockMode | undefined {
  const n = block.known;
  const m = block.stretches;
  const l = block.biases;
  const size = m + l + block.width;
  const v = start ? start.v.slice() : startAt(block, size);
  const u = start ? start.u.slice() : new Float64Array(n);
  const w: Workspace = {
    size,
    matrix: new Float64Array(size * size),
    gradient: new Float64Array(size),
    pace: new Float64Array(m),
    follow: new Float64Array(n * size),
    bend: new Float64Array(n),
    slope: new Float64Array(n),
    hours: new Float64Array(m),
    pull: new Float64Array(l),
    row: new Float64Array(size),
  };
  for (let step = 0; ; step++) {
    const log = evaluate(block, sums, pace, v, u, w);
    const factor = cholesky(w.matrix, size);
    if (!factor || !Number.isFinite(log)) return undefined;
    const move = solveCholesky(factor, size, w.gradient);
    let most = 0;
    let rise = 0;
    for (let a = 0; a < size; a++) {
      rise += move[a]! * w.gradient[a]!;
      if (a < m || a >= m + l) most = Math.max(most, Math.abs(move[a]!));
    }
    const moveU = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      let d = w.slope[i]! / w.bend[i]!;
      rise += (w.slope[i]! * w.slope[i]!) / w.bend[i]!;
      for (let a = 0; a < size; a++) d -= w.follow[i * size + a]! * move[a]!;
      moveU[i] = d;
      most = Math.max(most, Math.abs(d));
    }
    if (most < 2e-3 || step >= steps) {
      let logBend = 0;
      for (let i = 0; i < n; i++) logBend += Math.log(w.bend[i]!);
      const logEvidence =
        log + 0.5 * rise + (n + size) * halfLogTwoPi - 0.5 * (logBend + logDeterminant(factor, size));
      return { pace, v, u, logEvidence, factor, follow: w.follow, bend: w.bend };
    }
    const share = most > 0.7 ? 0.7 / most : 1;
    for (let a = 0; a < size; a++) v[a]! += share * move[a]!;
    for (let i = 0; i < n; i++) u[i]! += share * moveU[i]!;
  }
}

function startAt(block: Block, size: number): Float64Array {
  const v = new Float64Array(size);
  const logs = Array.from(block.crude.subarray(0, block.known), (r, i) => Math.log(r) - block.prior.mean[i]!);
  logs.sort((a, b) => a - b);
  v.fill(logs[logs.length >> 1]!, 0, block.stretches);
  return v;
}

/** ln of the joint density at (v, u); fills gradient and Schur complement over v. */
function evaluate(
  block: Block,
  sums: Sums,
  pace: PaceGaussian,
  v: Float64Array,
  u: Float64Array,
  w: Workspace,
): number {
  const { stretches: m, known: n } = block;
  w.matrix.fill(0);
  w.gradient.fill(0);
  w.follow.fill(0);
  for (let j = 0; j < m; j++) w.pace[j] = Math.exp(v[j]!);
  let log = addPriors(block, pace, v, w) + addLooks(block, sums, v, w);
  const variance = sums.theta.spread ** 2;
  for (let i = 0; i < n; i++) {
    const own = variance * block.prior.share[i]!;
    log += (-0.5 * (u[i]! * u[i]!)) / own - 0.5 * Math.log(own) - halfLogTwoPi;
    w.bend[i] = 1 / own;
    w.slope[i] = -u[i]! / own;
    log += addThicknesses(block, sums, v, u[i]!, i, w);
    if (block.edgeStart[i + 1]! > block.edgeStart[i]!) log += addEdges(block, sums, v, u[i]!, i, w);
    eliminate(w, i);
  }
  return log;
}

function addPriors(block: Block, pace: PaceGaussian, v: Float64Array, w: Workspace): number {
  const { stretches: m } = block;
  const { size, matrix, gradient } = w;
  let log = 0.5 * pace.logDeterminant - m * halfLogTwoPi;
  for (let j = 0; j < m; j++) {
    let pull = 0;
    for (let k = 0; k < m; k++) {
      const q = pace.precision[j * m + k]!;
      pull += q * (v[k]! - pace.mean[k]!);
      matrix[j * size + k]! += q;
    }
    gradient[j]! -= pull;
    log -= 0.5 * pull * (v[j]! - pace.mean[j]!);
  }
  for (let a = m; a < size; a++) {
    const spread = priorSpread(block, pace.prior, a - m);
    const z = v[a]! / spread;
    matrix[a * size + a]! += 1 / (spread * spread);
    gradient[a]! -= z / spread;
    log -= 0.5 * z * z + Math.log(spread) + halfLogTwoPi;
  }
  return log;
}

/** What the looks' biases see of themselves, over all units at once. */
function addLooks({ stretches: m, biases: l }: Block, sums: Sums, v: Float64Array, w: Workspace): number {
  const { size, matrix, gradient } = w;
  let log = 0;
  for (let a = 0; a < l; a++) {
    let there = 0;
    for (let b = 0; b < l; b++) {
      const q = sums.allLl[a * l + b]!;
      there += q * v[m + b]!;
      matrix[(m + a) * size + m + b]! += q;
    }
    gradient[m + a]! += sums.allLw[a]! - there;
    log += v[m + a]! * (sums.allLw[a]! - 0.5 * there);
  }
  return log;
}

function placeOf(block: Block, v: Float64Array, i: number): number {
  let sum = block.prior.mean[i]!;
  const first = block.stretches + block.biases;
  for (let q = 0; q < block.width; q++) sum += v[first + q]! * block.place[i * block.width + q]!;
  return sum;
}

function addThicknesses(
  block: Block,
  sums: Sums,
  v: Float64Array,
  u: number,
  i: number,
  w: Workspace,
): number {
  const { stretches: m, biases: l } = block;
  const { size, matrix, gradient, pace, hours, pull, follow } = w;
  if (block.start[i + 1] === block.start[i]) return sums.constant[i]!;
  const rate = Math.exp(u + placeOf(block, v, i));
  let gain = 0;
  let heavy = 0;
  let cross = 0;
  pull.fill(0);
  for (let j = 0; j < m; j++) {
    const g = pace[j]!;
    let q = 0;
    const row = (i * m + j) * m;
    for (let k = 0; k < m; k++) q += sums.hh[row + k]! * pace[k]!;
    let b = 0;
    const other = (i * m + j) * l;
    for (let k = 0; k < l; k++) {
      const h = sums.hl[other + k]!;
      b += h * v[m + k]!;
      pull[k]! += g * h;
    }
    hours[j] = q;
    const t = rate * g * (sums.hw[i * m + j]! - rate * q - b);
    gradient[j]! += t;
    gain += t;
    heavy += g * q;
    cross += g * (sums.hw[i * m + j]! - b);
  }
  const bend = rate * rate * heavy;
  w.slope[i]! += gain;
  w.bend[i]! += bend;
  const base = i * size;
  for (let j = 0; j < m; j++) {
    const gj = rate * rate * pace[j]!;
    follow[base + j]! += gj * hours[j]!;
    const row = (i * m + j) * m;
    for (let k = 0; k <= j; k++) matrix[j * size + k]! += gj * pace[k]! * sums.hh[row + k]!;
    const other = (i * m + j) * l;
    for (let k = 0; k < l; k++) matrix[(m + k) * size + j]! += rate * pace[j]! * sums.hl[other + k]!;
  }
  for (let k = 0; k < l; k++) {
    gradient[m + k]! -= rate * pull[k]!;
    follow[base + m + k]! += rate * pull[k]!;
  }
  addPlace(block, i, gain, bend, w);
  return sums.constant[i]! - 0.5 * sums.ww[i]! + rate * cross - 0.5 * bend;
}

/** The place trend acts like u, times where the unit lies. Reads what `follow` holds of this unit so far. */
function addPlace(block: Block, i: number, gain: number, bend: number, w: Workspace): void {
  const { stretches: m, biases: l, width } = block;
  const { size, matrix, gradient, follow } = w;
  const base = i * size;
  for (let q = 0; q < width; q++) {
    const z = block.place[i * width + q]!;
    if (z === 0) continue;
    const a = m + l + q;
    gradient[a]! += z * gain;
    for (let c = 0; c < m + l; c++) matrix[a * size + c]! += z * follow[base + c]!;
    for (let p = 0; p <= q; p++) matrix[a * size + m + l + p]! += z * block.place[i * width + p]! * bend;
  }
  for (let q = 0; q < width; q++) follow[base + m + l + q]! += block.place[i * width + q]! * bend;
}

function addEdges(block: Block, sums: Sums, v: Float64Array, u: number, i: number, w: Workspace): number {
  const { stretches: m, biases: l, width } = block;
  const { size, matrix, gradient, pace, follow, row } = w;
  const rate = Math.exp(u + placeOf(block, v, i));
  const off = stateOff(block, sums, v, i);
  let log = 0;
  for (let e = block.edgeStart[i]!; e < block.edgeStart[i + 1]!; e++) {
    row.fill(0);
    const from = sums.edgeFrom[e] === 1;
    for (let a = 0; from && a < l; a++) row[m + a] = -sums.stateLooks[i * l + a]!;
    let wear = 0;
    for (let j = 0; j < m; j++) {
      row[j] = rate * pace[j]! * sums.edgeHours[e * m + j]!;
      wear += row[j]!;
    }
    for (let q = 0; q < width; q++) row[m + l + q] = block.place[i * width + q]! * wear;
    const soft = sums.edgeSoft[e]!;
    const sign = block.edgeSide[e]!;
    const z = (sign * (wear + (from ? off : 0) - block.edgeDepth[e]!)) / soft;
    log += logAreaTabled(z);
    const lambda = slopeOfLogArea(z);
    const tilt = (sign * lambda) / soft;
    const heavy = (lambda * (z + lambda)) / (soft * soft);
    w.slope[i]! += tilt * wear;
    w.bend[i]! += heavy * wear * wear;
    for (let a = 0; a < size; a++) {
      if (row[a] === 0) continue;
      gradient[a]! += tilt * row[a]!;
      follow[i * size + a]! += heavy * wear * row[a]!;
      for (let b = 0; b <= a; b++) matrix[a * size + b]! += heavy * row[a]! * row[b]!;
    }
  }
  return log;
}

/** Takes u_i out: S −= c·cᵀ/bend; leaves c/bend in `follow`. Only the lower triangle is kept. */
function eliminate(w: Workspace, i: number): void {
  const { size, matrix, gradient, follow } = w;
  const base = i * size;
  const bend = w.bend[i]!;
  const share = w.slope[i]! / bend;
  for (let a = 0; a < size; a++) {
    const c = follow[base + a]!;
    if (c === 0) continue;
    gradient[a]! -= c * share;
    const scaled = c / bend;
    for (let b = 0; b <= a; b++) matrix[a * size + b]! -= scaled * follow[base + b]!;
  }
  for (let a = 0; a < size; a++) follow[base + a]! /= bend;
}
