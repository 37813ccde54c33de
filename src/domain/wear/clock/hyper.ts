// Which values of the shared parameters (spread, scatter, noises, power) are likely? The straight clock (power exactly 1) and the
// curved one each get a search for the mode by differences, and then a fixed set of evenly spread nodes about it, each weighed by
// prior × evidence over the density it was drawn from. Same records, same nodes: nothing here is left to chance.
// Index arithmetic runs within lengths made here, so `!` after an index is safe.

import { median } from '../median.js';
import type { NormalPrior } from '../likelihood/parameters.js';
import { normalQuantile } from '../numeric/normal.js';
import type { Block } from './blocks.js';
import type { ClockMode } from './laplace.js';
import type { Cavity, Group, LevelPrior, Said } from './level.js';
import { combine, groupsOf, logSum, ownJump, ownRegimes, said } from './level.js';
import { clockPriors } from './priors.js';
import type { Sums } from './sums.js';
import { sumsOf } from './sums.js';
import type { Theta } from './theta.js';
import { ageClock } from './theta.js';

export interface Setting {
  readonly blocks: readonly Block[];
  /** Weight of each thickness of each block. */
  readonly weight: readonly Float64Array[];
  /** A depth reached at an exposure, as expected before any record; `spread` of its ln. */
  readonly expected: { readonly depth: number; readonly exposure: number; readonly spread: number };
  /** ln of the factor on declared errors. */
  readonly scatter: NormalPrior;
  /** Chance before any record that wear is no straight line in exposure. */
  readonly curvedChance: number;
  /** What is known of the noise of a point and of a conveyor: priors of their logarithms. */
  readonly pointNoise: NormalPrior;
  readonly sharedNoise: NormalPrior;
  /** Age at which an hour is an hour whatever the power. */
  readonly reference: number;
}

export function referenceAge(blocks: readonly Block[]): number {
  const ages = blocks.flatMap((block) =>
    Array.from({ length: block.known }, (_, i) => {
      const end = block.start[i + 1]!;
      return end > block.start[i]! ? block.age[end - 1]! : NaN;
    }).filter((a) => a > 0),
  );
  return ages.length > 0 ? median(ages) : 1;
}

/** ln τ, ln f, ln point noise, ln shared noise, ln ω, power. */
type Vector = Float64Array;
const powerAt = 5;

function priorsOf(setting: Setting): readonly NormalPrior[] {
  return [
    clockPriors.logSpread,
    setting.scatter,
    setting.pointNoise,
    setting.sharedNoise,
    clockPriors.logLevelSpread,
    clockPriors.power,
  ];
}

export function thetaOf(z: Vector): Theta {
  const [low, high] = clockPriors.powerRange;
  return {
    spread: Math.exp(z[0]!),
    scatter: Math.exp(z[1]!),
    pointNoise: Math.exp(z[2]!),
    sharedNoise: Math.exp(z[3]!),
    levelSpread: Math.exp(z[4]!),
    power: Math.max(low, Math.min(high, z[powerAt]!)),
  };
}

/** The shared parameters as expected before any record, and a straight clock. */
export function priorTheta(setting: Setting): Theta {
  const z = Float64Array.from(priorsOf(setting), ({ mean }) => mean);
  z[powerAt] = 1;
  return thetaOf(z);
}

export interface Answer {
  readonly theta: Theta;
  readonly logEvidence: number;
  readonly sums: readonly Sums[];
  readonly cavities: readonly Cavity[];
  readonly answers: readonly (readonly Said[])[];
}

/** Modes found before, by block and regime: where Newton starts. */
export type Warm = (readonly (ClockMode | undefined)[])[];

export function answerAt(
  setting: Setting,
  groups: readonly Group[],
  theta: Theta,
  chosen: readonly number[],
  warm: Warm,
): Answer {
  const { blocks, expected, reference } = setting;
  const level: LevelPrior = {
    mean: Math.log(expected.depth / ageClock(expected.exposure, theta.power, reference)),
    spread: expected.spread,
  };
  const wide = level.spread ** 2 + theta.levelSpread ** 2;
  const sums = blocks.map((block, b) =>
    chosen.includes(b) ? sumsOf(block, theta, reference, setting.weight[b]!) : undefined,
  );
  const answers = blocks.map((block, b) => {
    const own = sums[b];
    if (!own) return [];
    let start: ClockMode | undefined;
    return ownRegimes(block).map(({ from, lastOff }, r) => {
      const s = said(
        block,
        own,
        { level: level.mean, levelVariance: wide, from, lastOff, ...ownJump },
        warm[b]?.[r] ?? start,
      );
      start ??= s.mode;
      return s;
    });
  });
  const cavities: Cavity[] = new Array<Cavity>(blocks.length);
  let logEvidence = 0;
  for (const group of groups) {
    const members = group.blocks.filter((b) => chosen.includes(b));
    if (members.length === 0) continue;
    const keep = group.blocks.map((b) => chosen.includes(b));
    const part: Group = {
      blocks: members,
      shared: members.length > 1 ? group.shared.map((list) => list.filter((_, k) => keep[k])) : [],
    };
    const answer = combine(
      blocks,
      part,
      members.map((b) => answers[b]!),
      level,
      theta.levelSpread,
    );
    logEvidence += answer.logEvidence;
    members.forEach((b, k) => (cavities[b] = answer.cavities[k]!));
  }
  // Blocks not chosen have no sums; nobody reads theirs.
  return { theta, logEvidence, sums: sums as readonly Sums[], cavities, answers };
}

export interface HyperNode {
  readonly weight: number;
  readonly curved: boolean;
  readonly answer: Answer;
}

export interface Hyper {
  readonly groups: readonly Group[];
  readonly nodes: readonly HyperNode[];
  /** At the mode of the straight clock. */
  readonly centre: Answer;
}

export interface SearchEffort {
  /** Units that the search for the mode looks at. */
  readonly searchUnits: number;
  readonly straightNodes: number;
  readonly curvedNodes: number;
}

export function effortFor(blocks: readonly Block[]): SearchEffort {
  const units = blocks.reduce((sum, block) => sum + block.known, 0);
  if (units <= 6) return { searchUnits: 200, straightNodes: 96, curvedNodes: 96 };
  if (units <= 15) return { searchUnits: 200, straightNodes: 48, curvedNodes: 48 };
  if (units <= 60) return { searchUnits: 200, straightNodes: 32, curvedNodes: 32 };
  if (units <= 240) return { searchUnits: 120, straightNodes: 20, curvedNodes: 20 };
  return { searchUnits: 120, straightNodes: 10, curvedNodes: 10 };
}

export function explore(setting: Setting, effort: SearchEffort): Hyper {
  const { blocks } = setting;
  const groups = groupsOf(blocks);
  const priors = priorsOf(setting);
  const chosen = searchBlocks(blocks, effort.searchUnits);
  const all = blocks.map((_, b) => b);
  const shareOf = (list: readonly number[]): number =>
    list.reduce((sum, b) => sum + blocks[b]!.known, 0) / all.reduce((sum, b) => sum + blocks[b]!.known, 0);
  const narrower = Math.sqrt(shareOf(chosen));
  const start = Float64Array.from(priors, ({ mean }) => mean);
  start[powerAt] = 1;
  const lively = [0, 1, 2, 3, ...(groups.some((g) => g.blocks.length > 1) ? [4] : [])].filter(
    (a) => priors[a]!.spread > 0.1,
  );
  const straight = search(setting, groups, priors, chosen, start, lively, 3);
  const curved = search(setting, groups, priors, chosen, straight.z, [...lively, powerAt], 2, straight.warm);
  const centre = answerAt(setting, groups, thetaOf(straight.z), all, straight.warm);
  const warm: Warm = centre.answers.map((regimes) => regimes.map((s) => s.mode));
  const nodes = [
    ...nodesAbout(
      setting,
      groups,
      priors,
      all,
      straight,
      lively,
      effort.straightNodes,
      narrower,
      warm,
      false,
    ),
    ...nodesAbout(
      setting,
      groups,
      priors,
      all,
      curved,
      [...lively, powerAt],
      effort.curvedNodes,
      narrower,
      warm,
      true,
    ),
  ];
  const total = logSum(nodes.map(({ log }) => log));
  const weighed = nodes.map(({ log, ...node }) => ({ ...node, weight: Math.exp(log - total) }));
  const top = Math.max(...weighed.map(({ weight }) => weight));
  const kept = weighed.filter(({ weight }) => weight > 1e-3 * top);
  const sum = kept.reduce((s, { weight }) => s + weight, 0);
  return { groups, nodes: kept.map((node) => ({ ...node, weight: node.weight / sum })), centre };
}

/** Enough conveyors for the shared parameters; evenly over all. */
function searchBlocks(blocks: readonly Block[], enough: number): readonly number[] {
  const total = blocks.reduce((sum, block) => sum + block.known, 0);
  const wanted = Math.max(1, Math.ceil((blocks.length * enough) / total));
  if (wanted >= blocks.length) return blocks.map((_, b) => b);
  return Array.from({ length: wanted }, (_, k) => Math.floor(((k + 0.5) * blocks.length) / wanted));
}

interface Searched {
  readonly z: Vector;
  readonly width: Vector;
  readonly warm: Warm;
}

function search(
  setting: Setting,
  groups: readonly Group[],
  priors: readonly NormalPrior[],
  chosen: readonly number[],
  from: Vector,
  lively: readonly number[],
  rounds: number,
  known: Warm = [],
): Searched {
  let z = from.slice();
  let warm = known;
  const stride = Float64Array.from(priors, ({ spread }) => 0.5 * spread);
  const width = Float64Array.from(priors, ({ spread }) => spread);
  const value = (at: Vector): number =>
    answerAt(setting, groups, thetaOf(at), chosen, warm).logEvidence + logPrior(priors, at, lively);
  for (let round = 0; round < rounds; round++) {
    const here = answerAt(setting, groups, thetaOf(z), chosen, warm);
    warm = here.answers.map((regimes) => regimes.map((s) => s.mode));
    const middle = here.logEvidence + logPrior(priors, z, lively);
    const next = z.slice();
    for (const a of lively) {
      const up = z.slice();
      const down = z.slice();
      up[a]! += stride[a]!;
      down[a]! -= stride[a]!;
      const [high, low] = [value(up), value(down)];
      const slope = (high - low) / (2 * stride[a]!);
      const bend = Math.max(-(high + low - 2 * middle) / stride[a]! ** 2, 0.25 / priors[a]!.spread ** 2);
      next[a]! += Math.max(-1.5 * stride[a]!, Math.min(1.5 * stride[a]!, (0.8 * slope) / bend));
      width[a] = 1 / Math.sqrt(bend);
    }
    z = next;
    for (const a of lively) stride[a] = 0.8 * Math.min(Math.max(width[a]!, 0.05), priors[a]!.spread);
  }
  return { z, width, warm };
}

function logPrior(priors: readonly NormalPrior[], z: Vector, lively: readonly number[]): number {
  return lively.reduce(
    (sum, a) =>
      sum - 0.5 * ((z[a]! - priors[a]!.mean) / priors[a]!.spread) ** 2 - Math.log(priors[a]!.spread),
    0,
  );
}

const wider = 1.15;

function nodesAbout(
  setting: Setting,
  groups: readonly Group[],
  priors: readonly NormalPrior[],
  chosen: readonly number[],
  { z, width }: Searched,
  lively: readonly number[],
  count: number,
  narrower: number,
  warm: Warm,
  curved: boolean,
): readonly { readonly curved: boolean; readonly answer: Answer; readonly log: number }[] {
  const chance = curved ? setting.curvedChance : 1 - setting.curvedChance;
  return Array.from({ length: count }, (_, k) => {
    const at = z.slice();
    let density = 0;
    lively.forEach((a, d) => {
      const step = evenly(k, d, lively.length);
      const scale = wider * Math.min(width[a]! * narrower, priors[a]!.spread);
      at[a]! += scale * step;
      density -= 0.5 * step * step + Math.log(scale);
    });
    const answer = answerAt(setting, groups, thetaOf(at), chosen, warm);
    const log =
      answer.logEvidence + logPrior(priors, at, lively) - density + Math.log(chance) - Math.log(count);
    return { curved, answer, log };
  });
}

/** Normal values spread evenly in `size` dimensions: Kronecker's sequence by the generalised golden ratio, k-th value. */
export function evenly(k: number, dimension: number, size: number): number {
  const place = (0.5 + (k + 1) * Math.pow(goldenRatio(size), -dimension - 1)) % 1;
  return normalQuantile(Math.min(Math.max(place, 1e-4), 1 - 1e-4));
}

/** Root of x^(size + 1) = x + 1. */
function goldenRatio(size: number): number {
  let ratio = 2;
  for (let step = 0; step < 30; step++) ratio = Math.pow(1 + ratio, 1 / (size + 1));
  return ratio;
}
