// How do conveyors lend to each other? Each one's clock has a level; levels lie about a common one, and a change may be shared by
// those that carry the same. Every conveyor is solved by itself under a wide prior; what it says of its level (and of its jump) is a
// normal message, and messages are put together: on a line of values of the common level where each changes by itself, by 2 × 2
// algebra where all change together. Leaving a conveyor's own message out gives the prior that the others make for it.
// Index arithmetic runs within lengths made here, so `!` after an index is safe.

import { solveCholesky } from '../numeric/cholesky.js';
import type { Block } from './blocks.js';
import type { ClockMode, PacePrior } from './laplace.js';
import { modeOf, paceGaussian } from './laplace.js';
import { clockPriors } from './priors.js';
import type { Sums } from './sums.js';

/** A conveyor's clock with no change (`from` −1) or one from a stretch on. `shared`: together with others of its product. */
export interface Regime {
  readonly from: number;
  readonly shared: boolean;
}

/** What a solved regime says of level m and jump J: moments of both under the prior it was solved with. */
export interface Said {
  readonly mode: ClockMode | undefined;
  readonly logEvidence: number;
  readonly level: number;
  readonly levelVariance: number;
  readonly jump: number;
  readonly jumpVariance: number;
  readonly both: number;
}

const nothingSaid = -1e9;

export function said(block: Block, sums: Sums, prior: PacePrior, start: ClockMode | undefined): Said {
  const pace = paceGaussian(block, sums, prior);
  const mode =
    (pace && modeOf(block, sums, pace, start)) ?? (pace && start && modeOf(block, sums, pace, undefined));
  const blank = {
    level: prior.level,
    levelVariance: prior.levelVariance,
    jump: prior.jump,
    jumpVariance: prior.jumpVariance,
    both: 0,
  };
  if (!pace || !mode) return { mode: undefined, logEvidence: nothingSaid, ...blank };
  const m = block.stretches;
  const size = m + block.biases + block.width;
  const km = new Float64Array(size);
  const kj = new Float64Array(size);
  let level = prior.level;
  let jump = prior.jump;
  let levelVariance = prior.levelVariance;
  let jumpVariance = prior.jumpVariance;
  let both = 0;
  for (let j = 0; j < m; j++) {
    for (let k = 0; k < m; k++) {
      km[j]! += prior.levelVariance * pace.precision[j * m + k]!;
      if (prior.from >= 0 && k >= prior.from) kj[j]! += prior.jumpVariance * pace.precision[j * m + k]!;
    }
    const off = mode.v[j]! - pace.mean[j]!;
    level += km[j]! * off;
    jump += kj[j]! * off;
    levelVariance -= km[j]! * prior.levelVariance;
    if (prior.from >= 0 && j >= prior.from) {
      jumpVariance -= kj[j]! * prior.jumpVariance;
      both -= km[j]! * prior.jumpVariance;
    }
  }
  const sm = solveCholesky(mode.factor, size, km);
  const sj = solveCholesky(mode.factor, size, kj);
  for (let a = 0; a < m; a++) {
    levelVariance += km[a]! * sm[a]!;
    jumpVariance += kj[a]! * sj[a]!;
    both += km[a]! * sj[a]!;
  }
  return { mode, logEvidence: mode.logEvidence, level, levelVariance, jump, jumpVariance, both };
}

/** Conveyors of one product, with the looks that a shared change may have come at, latest first: candidate of each conveyor or −1. */
export interface Group {
  readonly blocks: readonly number[];
  readonly shared: readonly (readonly number[])[];
}

export function groupsOf(blocks: readonly Block[]): readonly Group[] {
  const byProduct = new Map<string, number[]>();
  blocks.forEach(({ product }, b) => {
    const key = product === undefined ? '' : `=${product}`;
    byProduct.set(key, [...(byProduct.get(key) ?? []), b]);
  });
  return [...byProduct].map(([key, members]) => {
    if (key === '' || members.length < 2) return { blocks: members, shared: [] };
    const reference = members.reduce((a, b) =>
      blocks[b]!.candidates.length > blocks[a]!.candidates.length ? b : a,
    );
    const days = blocks[reference]!.candidates.map(({ look }) => blocks[reference]!.lookDay[look]!);
    const shared = days
      .slice(-clockPriors.sharedLooksBack)
      .reverse()
      .map((day) => members.map((b) => nearestCandidate(blocks[b]!, day)));
    return { blocks: members, shared };
  });
}

function nearestCandidate({ candidates, lookDay }: Block, day: number): number {
  let best = -1;
  candidates.forEach(({ look }, k) => {
    if (best < 0 || Math.abs(lookDay[look]! - day) < Math.abs(lookDay[candidates[best]!.look]! - day))
      best = k;
  });
  return best;
}

/** What may have befallen a conveyor by itself, with the ln prior chance of each: nothing, a change at each candidate, a last look off. */
export interface OwnRegime {
  readonly from: number;
  readonly lastOff: boolean;
  readonly logChance: number;
}

export function ownRegimes(block: Block): readonly OwnRegime[] {
  const n = block.candidates.length;
  const each = block.ownChange;
  const { chance } = clockPriors.lookOff;
  const steady = 1 - each * n;
  return [
    { from: -1, lastOff: false, logChance: Math.log(steady * (1 - chance)) },
    ...block.candidates.map(({ stretch }) => ({ from: stretch, lastOff: false, logChance: Math.log(each) })),
    { from: -1, lastOff: true, logChance: Math.log(steady * chance) },
  ];
}

export interface LevelPrior {
  readonly mean: number;
  readonly spread: number;
}

/** What a conveyor's clock may be before its own records: for each regime a prior, and its ln chance. */
export interface Cavity {
  readonly regimes: readonly (Regime & { readonly prior: PacePrior; readonly logChance: number })[];
}

export interface GroupAnswer {
  readonly logEvidence: number;
  /** By conveyor of the group. */
  readonly cavities: readonly Cavity[];
}

const levels = 33;

/** @param answers of each conveyor of the group, steady first, then its candidates. */
export function combine(
  blocks: readonly Block[],
  group: Group,
  answers: readonly (readonly Said[])[],
  level: LevelPrior,
  levelSpread: number,
): GroupAnswer {
  const omega2 = levelSpread ** 2;
  const wide = level.spread ** 2 + omega2;
  const alone = group.blocks.length === 1;
  const each = blocks[group.blocks[0]!]!.sharedChange;
  const sharedChance = each * group.shared.length;
  const own = ownOnLine(blocks, group, answers, level, omega2);
  const shared = group.shared.map((candidates) => sharedLabel(answers, candidates, level, omega2));
  const label0 = own.total + Math.log(1 - sharedChance);
  const labels = shared.map(({ logEvidence }) => logEvidence + Math.log(each));
  const logEvidence = logSum([label0, ...labels]);
  const cavities = group.blocks.map((b, c): Cavity => {
    const { mean, variance, rest } = alone
      ? { mean: level.mean, variance: wide - omega2, rest: 0 }
      : own.without(c);
    const block = blocks[b]!;
    const base = { level: mean, levelVariance: variance + omega2 };
    const chance0 = rest + Math.log(1 - sharedChance);
    const regimes = ownRegimes(block).map(({ from, lastOff, logChance }) => ({
      from,
      shared: false,
      prior: { ...base, from, lastOff, ...ownJump },
      logChance: chance0 + logChance,
    }));
    const together = shared.flatMap((label, e) => {
      const k = group.shared[e]![c]!;
      if (k < 0) return [];
      const { logChance, prior } = label.without(c);
      const from = block.candidates[k]!.stretch;
      return [
        {
          from,
          shared: true,
          prior: { ...prior, from, lastOff: false },
          logChance: logChance + Math.log(each),
        },
      ];
    });
    return { regimes: [...regimes, ...together] };
  });
  return { logEvidence, cavities };
}

export const ownJump = {
  jump: clockPriors.logFactor.mean,
  jumpVariance: clockPriors.logFactor.spread ** 2,
} as const;

interface OnLine {
  readonly total: number;
  readonly without: (c: number) => {
    readonly mean: number;
    readonly variance: number;
    readonly rest: number;
  };
}

/** Each conveyor by itself: its evidence at every value of the common level. */
function ownOnLine(
  blocks: readonly Block[],
  group: Group,
  answers: readonly (readonly Said[])[],
  level: LevelPrior,
  omega2: number,
): OnLine {
  const wide = level.spread ** 2 + omega2;
  const messages = answers.map((regimes, c) => {
    const own = ownRegimes(blocks[group.blocks[c]!]!);
    return regimes.map((s, r) => {
      const precision = Math.max(1 / s.levelVariance - 1 / wide, 1e-6);
      const centre = (s.level / s.levelVariance - level.mean / wide) / precision;
      const undo =
        0.5 * Math.log(precision * wide + 1) + (0.5 * (centre - level.mean) ** 2) / (wide + 1 / precision);
      return { log: s.logEvidence + own[r]!.logChance + undo, precision, centre };
    });
  });
  // The line runs where the messages put the common level.
  let weight = 1 / level.spread ** 2;
  let pull = level.mean * weight;
  for (const regimes of messages) {
    const best = regimes.reduce((a, b) => (b.log > a.log ? b : a));
    const w = 1 / (omega2 + 1 / best.precision);
    weight += w;
    pull += w * best.centre;
  }
  const reach = 5 / Math.sqrt(weight) + 0.1;
  const at = Float64Array.from(
    { length: levels },
    (_, i) => pull / weight + reach * ((2 * i) / (levels - 1) - 1),
  );
  const cell = Math.log((2 * reach) / (levels - 1));
  const prior = at.map(
    (x) => -0.5 * ((x - level.mean) / level.spread) ** 2 - Math.log(level.spread) - 0.9189385332046727 + cell,
  );
  const each = messages.map((regimes) =>
    at.map((x) =>
      logSum(
        regimes.map(
          ({ log, precision, centre }) =>
            log -
            0.5 * Math.log(1 + precision * omega2) -
            (0.5 * (centre - x) ** 2) / (omega2 + 1 / precision),
        ),
      ),
    ),
  );
  const all = prior.map((p, i) => each.reduce((sum, z) => sum + z[i]!, p));
  return {
    total: logSum(all),
    without: (c) => {
      const left = all.map((a, i) => a - each[c]![i]!);
      const rest = logSum(left);
      let mean = 0;
      let square = 0;
      left.forEach((a, i) => {
        const w = Math.exp(a - rest);
        mean += w * at[i]!;
        square += w * at[i]! ** 2;
      });
      return { mean, variance: Math.max(square - mean * mean, 1e-8), rest };
    },
  };
}

interface SharedLabel {
  readonly logEvidence: number;
  readonly without: (c: number) => {
    readonly logChance: number;
    readonly prior: Omit<PacePrior, 'from' | 'lastOff'>;
  };
}

type Sym = readonly [number, number, number]; // a00, a01, a11
const det = ([a, b, d]: Sym): number => a * d - b * b;
const inverse = (s: Sym): Sym => {
  const q = det(s);
  return [s[2] / q, -s[1] / q, s[0] / q];
};
const plus = (s: Sym, t: Sym): Sym => [s[0] + t[0], s[1] + t[1], s[2] + t[2]];
const minus = (s: Sym, t: Sym): Sym => [s[0] - t[0], s[1] - t[1], s[2] - t[2]];
const times = (s: Sym, x: readonly [number, number]): readonly [number, number] => [
  s[0] * x[0] + s[1] * x[1],
  s[1] * x[0] + s[2] * x[1],
];
const quadratic = (s: Sym, x: readonly [number, number]): number => {
  const y = times(s, x);
  return x[0] * y[0] + x[1] * y[1];
};

/** The nearest matrix with eigenvalues of at least `least`. */
function raised([a, b, d]: Sym, least: number): Sym {
  const middle = 0.5 * (a + d);
  const radius = Math.hypot(0.5 * (a - d), b);
  const [low, high] = [Math.max(middle - radius, least), Math.max(middle + radius, least)];
  if (radius < 1e-300) return [high, 0, high];
  const [c, s] = [0.5 * (1 + (0.5 * (a - d)) / radius), (0.5 * b) / radius];
  return [low + (high - low) * c, (high - low) * s, low + (high - low) * (1 - c)];
}

/** All conveyors changed at one look: messages on (level, jump), about the prior's means. */
function sharedLabel(
  answers: readonly (readonly Said[])[],
  candidates: readonly number[],
  level: LevelPrior,
  omega2: number,
): SharedLabel {
  const wide = level.spread ** 2 + omega2;
  const { jump, jumpVariance } = ownJump;
  const apart = clockPriors.factorSpread ** 2;
  const prior0: Sym = [1 / wide, 0, 1 / jumpVariance];
  const common: Sym = [1 / level.spread ** 2, 0, 1 / jumpVariance];
  const parts = answers.map((regimes, c) => {
    const s = regimes[candidates[c]! + 1] ?? regimes[0]!;
    const moments: Sym = [s.levelVariance + 1e-9, s.both, s.jumpVariance + 1e-9];
    const message = raised(minus(inverse(moments), prior0), 1e-4);
    const off: readonly [number, number] = [s.level - level.mean, s.jump - jump];
    const centre = times(inverse(message), times(plus(message, prior0), off));
    const sw = plus(inverse(message), inverse(prior0));
    const sn = plus(inverse(message), [omega2, 0, apart]);
    const precision = inverse(sn);
    const log =
      s.logEvidence +
      0.5 * Math.log(det(sw)) +
      0.5 * quadratic(inverse(sw), centre) -
      0.5 * Math.log(det(sn)) -
      0.5 * quadratic(precision, centre);
    return { log, precision, pull: times(precision, centre) };
  });
  const put = (list: typeof parts): { log: number; matrix: Sym; mean: readonly [number, number] } => {
    const matrix = list.reduce((sum, p) => plus(sum, p.precision), common);
    const pull = list.reduce<readonly [number, number]>(
      (sum, p) => [sum[0] + p.pull[0], sum[1] + p.pull[1]],
      [0, 0],
    );
    const mean = times(inverse(matrix), pull);
    const log =
      list.reduce((sum, p) => sum + p.log, 0) +
      0.5 * Math.log(det(common)) -
      0.5 * Math.log(det(matrix)) +
      0.5 * (pull[0] * mean[0] + pull[1] * mean[1]);
    return { log, matrix, mean };
  };
  return {
    logEvidence: put(parts).log,
    without: (c) => {
      const { log, matrix, mean } = put(parts.filter((_, k) => k !== c));
      const spread = inverse(matrix);
      return {
        logChance: log,
        prior: {
          level: level.mean + mean[0],
          levelVariance: spread[0] + omega2,
          jump: jump + mean[1],
          jumpVariance: spread[2] + apart,
        },
      };
    },
  };
}

export function logSum(values: ArrayLike<number>): number {
  let top = -Infinity;
  for (let i = 0; i < values.length; i++) if (values[i]! > top) top = values[i]!;
  if (top === -Infinity) return -Infinity;
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += Math.exp(values[i]! - top);
  return top + Math.log(sum);
}
