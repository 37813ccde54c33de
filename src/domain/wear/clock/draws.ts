// A conveyor's clock as a short list of clocks with weights. From every likely value of the shared parameters and every likely change,
// clocks are taken from Laplace's normal and weighed by the exact integrand over it, points' own rates integrated by quadrature: what
// Laplace lacks (a mode 1 to 4 % too early) is made good so. Clocks come in mirrored pairs, and the direction that matters most, the
// rate now, is stratified; the same records give the same list. Given one clock the points are independent: forecasts of a point, and
// of the first of many, are sums over the list. Index arithmetic runs within lengths made here, so `!` after an index is safe.

import { halfLogTwoPi, normalQuantile } from '../numeric/normal.js';
import type { Block } from './blocks.js';
import type { Hyper } from './hyper.js';
import type { ClockMode, PaceGaussian } from './laplace.js';
import { priorSpread } from './laplace.js';
import { logSum, said } from './level.js';
import { emptyPointNodes, pointGiven } from './point.js';
import type { Sums } from './sums.js';

export interface ClockDraw {
  readonly weight: number;
  readonly sums: Sums;
  /** ln paces, biases, place trend. */
  readonly v: Float64Array;
  readonly pace: Float64Array;
  /** ln pace from the last look on. */
  readonly now: number;
  /** First stretch with a new rate; −1: steady. */
  readonly from: number;
  readonly shared: boolean;
  /** ln factor of the change; 0 where steady. */
  readonly jump: number;
  readonly curved: boolean;
  /** About where each point's own ln rate is. */
  readonly u: Float64Array;
}

interface Part {
  readonly weight: number;
  readonly sums: Sums;
  readonly mode: ClockMode;
  readonly from: number;
  readonly shared: boolean;
  readonly curved: boolean;
}

/** @param most clocks in the list. */
export function drawClocks(block: Block, b: number, hyper: Hyper, most: number): readonly ClockDraw[] {
  const parts = partsOf(block, b, hyper);
  parts.sort((a, b) => a.sums.theta.power - b.sums.theta.power);
  const changed = parts.filter(({ from }) => from >= 0);
  const steady = parts.filter(({ from }) => from < 0);
  const chance = changed.reduce((sum, { weight }) => sum + weight, 0);
  // Each branch has clocks enough to be shown by itself; a branch next to impossible has none.
  const pairs = most / 2;
  const least = Math.max(4, Math.floor(pairs / 6));
  const forChanged =
    chance < 2e-3
      ? 0
      : chance > 0.998
        ? pairs
        : Math.max(least, Math.min(pairs - least, Math.round(pairs * chance)));
  const random = fixedNormals(b + 1);
  const raw = [
    ...drawFrom(block, changed, forChanged, random),
    ...drawFrom(block, steady, pairs - forChanged, random),
  ];
  const total = logSum(raw.map(({ log }) => log));
  const draws = raw.map(({ log, ...draw }) => ({ ...draw, weight: Math.exp(log - total) }));
  return tempered(draws);
}

/** No clock may speak for too many others. */
function tempered(draws: readonly ClockDraw[]): readonly ClockDraw[] {
  const cap = 8 / draws.length;
  const capped = draws.map((draw) => Math.min(draw.weight, cap));
  const sum = capped.reduce((a, c) => a + c, 0);
  return draws.map((draw, k) => ({ ...draw, weight: capped[k]! / sum }));
}

function partsOf(block: Block, b: number, hyper: Hyper): Part[] {
  return hyper.nodes.flatMap(({ weight, curved, answer }) => {
    const sums = answer.sums[b]!;
    const regimes = answer.cavities[b]!.regimes.map((regime) => {
      const known = answer.answers[b]!.find(
        ({ mode }) =>
          mode?.pace.prior.from === regime.from && mode.pace.prior.lastOff === regime.prior.lastOff,
      );
      const s = said(block, sums, regime.prior, known?.mode);
      return { regime, mode: s.mode, log: s.logEvidence + regime.logChance };
    });
    const total = logSum(regimes.map(({ log }) => log));
    return regimes.flatMap(({ regime, mode, log }) =>
      mode && log - total > -12
        ? [
            {
              weight: weight * Math.exp(log - total),
              sums,
              mode,
              curved,
              from: regime.from,
              shared: regime.shared,
            },
          ]
        : [],
    );
  });
}

type Raw = Omit<ClockDraw, 'weight'> & { readonly weight: number; readonly log: number };

/** `pairs` mirrored pairs, parts chosen in proportion to their weight by even steps through their sum. */
function drawFrom(block: Block, parts: readonly Part[], pairs: number, random: () => number): readonly Raw[] {
  const total = parts.reduce((sum, { weight }) => sum + weight, 0);
  if (pairs === 0 || !(total > 0)) return [];
  const chosen: Part[] = [];
  let sum = 0;
  let next = 0.5;
  for (const part of parts) {
    sum += (part.weight / total) * pairs;
    for (; next < sum + 1e-9 && chosen.length < pairs; next++) chosen.push(part);
  }
  while (chosen.length < pairs) chosen.push(parts[parts.length - 1]!);
  const place = spreadRanks(pairs);
  return chosen.flatMap((part, k) => {
    const first = normalQuantile((place[k]! + 0.5) / (2 * pairs));
    const rest = Float64Array.from({ length: block.stretches + block.biases + block.width + 1 }, () =>
      random(),
    );
    return [1, -1].map((sign) =>
      drawOne(
        block,
        part,
        sign * first,
        rest.map((z) => sign * z),
        Math.log(total / (2 * pairs)),
      ),
    );
  });
}

/** Ranks that fill the square evenly beside 0, 1, 2 …: those of the golden ratio's multiples. */
function spreadRanks(count: number): readonly number[] {
  const golden = 0.5 * (Math.sqrt(5) - 1);
  const ranks = new Array<number>(count);
  Array.from({ length: count }, (_, k) => ({ k, key: ((k + 0.5) * golden) % 1 }))
    .sort((a, b) => a.key - b.key)
    .forEach(({ k }, rank) => (ranks[k] = rank));
  return ranks;
}

/** Draws from a fixed stream: normal values that are the same for the same conveyor, every time. */
function fixedNormals(stream: number): () => number {
  let state = (0x9e3779b9 * stream) >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return normalQuantile((((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296);
  };
}

/** ln pace ahead given those so far: its mean's weights on them and its own variance. */
interface Ahead {
  readonly weight: Float64Array;
  readonly base: number;
  readonly variance: number;
}

function aheadOf(block: Block, pace: PaceGaussian): Ahead {
  const m = block.stretches;
  const { prior } = pace;
  const changed = prior.from >= 0;
  const weight = new Float64Array(m);
  for (let j = 0; j < m; j++)
    for (let k = 0; k < m; k++)
      weight[j]! +=
        pace.precision[j * m + k]! *
        (prior.levelVariance + (changed && k >= prior.from ? prior.jumpVariance : 0));
  let variance = prior.levelVariance + (changed ? prior.jumpVariance : 0);
  for (let k = 0; k < m; k++)
    variance -= weight[k]! * (prior.levelVariance + (changed && k >= prior.from ? prior.jumpVariance : 0));
  return {
    weight,
    base: prior.level + (changed ? prior.jump : 0),
    variance: Math.max(variance, 0),
  };
}

function drawOne(block: Block, part: Part, first: number, rest: Float64Array, logShare: number): Raw {
  const { mode, sums } = part;
  const { stretches: m, biases: l, width } = block;
  const size = m + l + width;
  const ahead = aheadOf(block, mode.pace);
  const spread = correlated(block, mode, ahead, first, rest, size);
  const v = mode.v.map((value, a) => value + spread.move[a]!);
  let now = ahead.base + Math.sqrt(ahead.variance) * spread.last;
  for (let j = 0; j < m; j++) now += ahead.weight[j]! * (v[j]! - mode.pace.mean[j]!);
  const pace = v.slice(0, m).map(Math.exp);
  const u = Float64Array.from({ length: block.known }, (_, i) => {
    let at = mode.u[i]!;
    for (let a = 0; a < size; a++) at -= mode.follow[i * size + a]! * spread.move[a]!;
    return at;
  });
  const log = logShare + exactLog(block, sums, mode, v, pace, u) - spread.logDensity - mode.logEvidence;
  const jump = part.from < 0 ? 0 : jumpOf(block, mode.pace, v);
  return { weight: 0, log, sums, v, pace, now, u, jump, ...regimeOf(part) };
}

function regimeOf({ from, shared, curved }: Part): Pick<ClockDraw, 'from' | 'shared' | 'curved'> {
  return { from, shared, curved };
}

/** Expected jump given the ln paces. */
function jumpOf(block: Block, pace: PaceGaussian, v: Float64Array): number {
  const m = block.stretches;
  const { prior } = pace;
  let jump = prior.jump;
  for (let j = 0; j < m; j++)
    for (let k = prior.from; k < m; k++)
      jump += prior.jumpVariance * pace.precision[j * m + k]! * (v[j]! - pace.mean[j]!);
  return jump;
}

/** A move from the mode with covariance S⁻¹, `first` along the rate now; and the normal value left for what lies ahead. */
function correlated(
  block: Block,
  mode: ClockMode,
  ahead: Ahead,
  first: number,
  rest: Float64Array,
  size: number,
): { readonly move: Float64Array; readonly last: number; readonly logDensity: number } {
  const { factor } = mode;
  // The gradient of a middle point's ln rate now with respect to v.
  const towards = new Float64Array(size);
  towards.set(ahead.weight);
  for (let i = 0; i < block.known; i++)
    for (let a = 0; a < size; a++) towards[a]! -= mode.follow[i * size + a]! / block.known;
  // L⁻¹·towards, the direction in whitened space.
  const direction = new Float64Array(size);
  let length = 0;
  for (let i = 0; i < size; i++) {
    let sum = towards[i]!;
    for (let k = 0; k < i; k++) sum -= factor[i * size + k]! * direction[k]!;
    direction[i] = sum / factor[i * size + i]!;
    length += direction[i]! ** 2;
  }
  length = Math.sqrt(length);
  const z = rest.slice(0, size);
  let logDensity = size * -halfLogTwoPi;
  if (length > 1e-12) {
    let along = 0;
    for (let a = 0; a < size; a++) along += (direction[a]! / length) * z[a]!;
    for (let a = 0; a < size; a++) z[a]! += (direction[a]! / length) * (first - along);
  }
  for (let a = 0; a < size; a++) logDensity += Math.log(factor[a * size + a]!) - 0.5 * z[a]! ** 2;
  // Lᵀ·move = z.
  const move = new Float64Array(size);
  for (let i = size - 1; i >= 0; i--) {
    let sum = z[i]!;
    for (let k = i + 1; k < size; k++) sum -= factor[k * size + i]! * move[k]!;
    move[i] = sum / factor[i * size + i]!;
  }
  return { move, last: rest[size]!, logDensity };
}

const nodes = emptyPointNodes();

/** ln of prior and records at v, every point's own rate integrated. */
function exactLog(
  block: Block,
  sums: Sums,
  mode: ClockMode,
  v: Float64Array,
  pace: Float64Array,
  u: Float64Array,
): number {
  const { stretches: m } = block;
  let log = 0.5 * mode.pace.logDeterminant - m * halfLogTwoPi;
  for (let j = 0; j < m; j++)
    for (let k = 0; k < m; k++)
      log -=
        0.5 * mode.pace.precision[j * m + k]! * (v[j]! - mode.pace.mean[j]!) * (v[k]! - mode.pace.mean[k]!);
  for (let a = m; a < v.length; a++) {
    const spread = priorSpread(block, mode.pace.prior, a - m);
    log -= 0.5 * (v[a]! / spread) ** 2 + Math.log(spread) + halfLogTwoPi;
  }
  for (let i = 0; i < block.known; i++) {
    pointGiven(block, sums, v, pace, i, u[i]!, nodes);
    log += nodes.logEvidence;
  }
  return log;
}
