// When does a point reach a depth, given the list of clocks? Each clock and each node of the point's own rate is a straight line in
// effective hours from the state at its last thickness, with a normal spread that grows as duty wanders on; the chance is the mean
// over all of them. Index arithmetic runs within lengths made here and in blocks.ts, so `!` after an index is safe.

import { areaTabled, slopeOfLogArea } from '../numeric/normal.js';
import type { Block } from './blocks.js';
import type { ClockDraw } from './draws.js';
import { emptyPointNodes, mostNodes, placeTerm, pointGiven } from './point.js';
import { hoursAt, stateOff } from './sums.js';
import type { Rising } from './tabled.js';
import { points, tabled } from './tabled.js';
import { ageClock } from './theta.js';

export interface Outlook {
  /** Chance of each clock's having reached a depth (mm, with a spread of its own) by an age, into `out`; by clock. */
  readonly byClock: (depth: number, age: number, depthSpread: number, out: Float64Array) => void;
  readonly weight: Float64Array;
  /** Weight of the clocks with a change. */
  readonly changed: number;
  /** Chances of a depth over exposure: 0 all clocks, 1 those with a change, 2 those without. Made once a depth. */
  readonly chances: (depth: number, depthSpread: number) => Rising;
  /** −ln of each clock's chance to be short of a depth at an age, added to `out` as often as `times`. Read off a grid, within 1e-3. */
  readonly addHazards: (
    depth: number,
    depthSpread: number,
    age: number,
    times: number,
    out: Float64Array,
  ) => void;
  /** Wear at an age, mm: mean, and one standard deviation without any gauge's error. */
  readonly wear: (age: number) => { readonly mean: number; readonly spread: number };
  /** ln rate now (mm per unit of exposure), mean and spread, and its nodes with weights. */
  readonly logRate: { readonly mean: number; readonly spread: number };
  readonly rates: () => RateNodes;
}

/** Values of ln rate now, rising, with weights that sum to 1. */
export interface RateNodes {
  readonly logRate: Float64Array;
  readonly weight: Float64Array;
}

/** Chances of one depth on a grid of ages, and by clock as hazards: a row a grid point. */
interface Kept {
  readonly rising: Rising;
  readonly hazard: Float32Array;
}

/** A point under all clocks: nodes of its own rate, clock after clock, in flat columns; and what each clock brings. */
interface Lines {
  /** Nodes of clock d: `start[d]` up to `start[d + 1]`. */
  readonly start: Int32Array;
  readonly share: Float64Array;
  readonly rate: Float64Array;
  /** Wear at the last thickness, mm; by clock its variance. */
  readonly wear: Float64Array;
  readonly variance: Float64Array;
  readonly hoursLast: Float64Array;
  /** Effective hours at the conveyor's last look, the age clock there, and the pace from then on. */
  readonly hoursEnd: Float64Array;
  readonly clockEnd: Float64Array;
  readonly now: Float64Array;
  /** The state where colours after the last thickness leave off; undefined where none was seen. */
  readonly after: AfterColours | undefined;
}

/** Where the path stands at the last colour after the last thickness, given what that and the colours between said; by node. */
interface AfterColours {
  readonly age: number;
  /** Effective hours there, by clock. */
  readonly hours: Float64Array;
  readonly wear: Float64Array;
  readonly variance: Float64Array;
  /** By clock: the least and the most wear of its nodes, and their largest variance. */
  readonly least: Float64Array;
  readonly most: Float64Array;
  readonly widest: Float64Array;
}

const nodes = emptyPointNodes();

export function outlookOf(block: Block, unit: number, draws: readonly ClockDraw[]): Outlook {
  const weight = Float64Array.from(draws, (draw) => draw.weight);
  const last = draws.length > 0 ? draws[0]!.sums.lastAge[unit]! : 0;
  const end = Math.max(0, block.meter[block.stretches]! - block.fitted[unit]!);
  const hours = new Float64Array(block.stretches);
  const lines = linesOf(block, unit, draws, end, hours);
  const byClock = (depth: number, age: number, depthSpread: number, out: Float64Array): void => {
    const asked = { depth, age, depthSpread, last, end };
    for (let k = 0; k < draws.length; k++)
      out[k] = chanceByLine(block, unit, draws[k]!, lines, k, asked, hours);
  };
  const logRate = momentsOf(draws, lines, Math.max(last, end));
  const { mean, spread } = logRate;
  const changed = draws.reduce((sum, draw) => sum + (draw.from >= 0 ? draw.weight : 0), 0);
  const row = new Float64Array(draws.length);
  const made = new Map<string, Kept>();
  const keptFor = (depth: number, depthSpread: number): Kept => {
    const key = `${depth} ${depthSpread}`;
    let kept = made.get(key);
    if (!kept) made.set(key, (kept = makeKept(depth, depthSpread)));
    return kept;
  };
  const makeKept = (depth: number, depthSpread: number): Kept => {
    const hazard = new Float32Array(points * draws.length);
    const centre = Math.log(depth) - mean;
    const reach = 4 * Math.max(spread, 0.05);
    const rising = tabled(
      (exposure, out) => {
        byClock(depth, exposure, depthSpread, row);
        let sum = 0;
        let withChange = 0;
        for (let k = 0; k < row.length; k++) {
          const part = weight[k]! * row[k]!;
          sum += part;
          if (draws[k]!.from >= 0) withChange += part;
        }
        out[0] = sum;
        out[1] = changed > 0 ? withChange / changed : 0;
        out[2] = changed < 1 ? (sum - withChange) / (1 - changed) : 0;
      },
      3,
      centre - reach,
      centre + reach,
      (k) => {
        for (let d = 0; d < row.length; d++)
          hazard[k * row.length + d] = -Math.log1p(-Math.min(row[d]!, 1 - 1e-12));
      },
    );
    return { rising, hazard };
  };
  const chances = (depth: number, depthSpread: number): Rising => keptFor(depth, depthSpread).rising;
  const addHazards: Outlook['addHazards'] = (depth, depthSpread, age, times, out) => {
    const { rising, hazard } = keptFor(depth, depthSpread);
    if (!(age > 0)) return;
    const { log } = rising;
    const place = (Math.log(age) - log[0]!) / (log[1]! - log[0]!);
    if (place <= -1) return;
    const n = out.length;
    const k = Math.max(0, Math.min(points - 2, Math.floor(place)));
    const t = Math.min(place - k, 1);
    for (let d = 0; d < n; d++) {
      const low = hazard[k * n + d]!;
      const at = t >= 0 ? low + t * (hazard[(k + 1) * n + d]! - low) : low * (1 + t);
      out[d]! += times * at;
    }
  };
  const wear = (age: number): { readonly mean: number; readonly spread: number } => {
    let first = 0;
    let second = 0;
    draws.forEach((draw, d) => {
      const at = reachAt(block, unit, draw, lines, d, age, { last, end }, hours);
      for (let k = lines.start[d]!; k < lines.start[d + 1]!; k++) {
        const middle = wearOfNode(lines, at, k);
        const variance = varianceOfNode(lines, at, k);
        const share = weight[d]! * lines.share[k]!;
        first += share * middle;
        second += share * (middle * middle + variance);
      }
    });
    return { mean: first, spread: Math.sqrt(Math.max(0, second - first * first)) };
  };
  const rates = (): RateNodes => rateNodes(draws, lines, Math.max(last, end));
  return { byClock, addHazards, wear, weight, changed, chances, rates, logRate };
}

/** Grown as needed, and copied out once a point. */
const work = { share: new Float64Array(0), rate: new Float64Array(0), wear: new Float64Array(0) };

function linesOf(
  block: Block,
  unit: number,
  draws: readonly ClockDraw[],
  end: number,
  hours: Float64Array,
): Lines {
  const n = draws.length;
  if (work.share.length < n * mostNodes) {
    work.share = new Float64Array(n * mostNodes);
    work.rate = new Float64Array(n * mostNodes);
    work.wear = new Float64Array(n * mostNodes);
  }
  const start = new Int32Array(n + 1);
  const column = (): Float64Array => new Float64Array(n);
  const by = {
    variance: column(),
    hoursLast: column(),
    hoursEnd: column(),
    clockEnd: column(),
    now: column(),
  };
  draws.forEach((draw, d) => {
    const { sums, v, pace, now } = draw;
    const { theta, reference } = sums;
    const { stretches: m } = block;
    pointGiven(block, sums, v, pace, unit, draw.u[unit] ?? 0, nodes);
    const place = placeTerm(block, v, unit);
    hoursAt(block, unit, end, theta.power, reference, hours, 0);
    let filtered = 0;
    const off = stateOff(block, sums, v, unit);
    for (let j = 0; j < m; j++) {
      by.hoursEnd[d]! += pace[j]! * hours[j]!;
      by.hoursLast[d]! += pace[j]! * sums.lastHours[unit * m + j]!;
      filtered += pace[j]! * sums.stateHours[unit * m + j]!;
    }
    by.variance[d] = sums.stateVariance[unit]!;
    by.clockEnd[d] = ageClock(end, theta.power, reference);
    by.now[d] = Math.exp(now);
    for (let k = 0; k < nodes.count; k++) {
      const at = start[d]! + k;
      work.share[at] = nodes.share[k]!;
      work.rate[at] = Math.exp(nodes.u[k]! + place);
      work.wear[at] = work.rate[at]! * (by.hoursLast[d]! - filtered) + off;
    }
    start[d + 1] = start[d]! + nodes.count;
  });
  const all = start[n]!;
  const lines = {
    start,
    share: work.share.slice(0, all),
    rate: work.rate.slice(0, all),
    wear: work.wear.slice(0, all),
    ...by,
  };
  return { ...lines, after: afterColours(block, unit, draws, lines, end, hours) };
}

/**
 * Each node's path from its state at the last thickness through the colours seen since: a depth that shows, or does not yet, cuts its
 * normal off softly, and the first two moments of what is left go on (moment matching; Minka 2001, assumed-density filtering).
 */
function afterColours(
  block: Block,
  unit: number,
  draws: readonly ClockDraw[],
  lines: Omit<Lines, 'after'>,
  end: number,
  hours: Float64Array,
): AfterColours | undefined {
  const { sums } = draws[0] ?? {};
  if (!sums) return undefined;
  const first = block.edgeStart[unit]!;
  const edges = Array.from({ length: block.edgeStart[unit + 1]! - first }, (_, k) => first + k)
    .filter((e) => sums.edgeFrom[e] === 1)
    .sort((a, b) => block.edgeAge[a]! - block.edgeAge[b]!);
  const lastEdge = edges.at(-1);
  if (lastEdge === undefined) return undefined;
  const wear = Float64Array.from(lines.wear);
  const variance = new Float64Array(wear.length);
  const hoursThere = new Float64Array(draws.length);
  draws.forEach((draw, d) => {
    const { pointNoise, sharedNoise } = draw.sums.theta;
    variance.fill(lines.variance[d]!, lines.start[d], lines.start[d + 1]);
    let [age, before] = [sums.lastAge[unit]!, lines.hoursLast[d]!];
    for (const e of edges) {
      const at = block.edgeAge[e]!;
      const there = effective(block, unit, draw, lines, d, at, end, hours);
      const ahead = there - before;
      const pace = at > age ? ahead / (at - age) : 0;
      const alone = pointNoise ** 2 * block.step * (at - age);
      const together = sharedNoise ** 2 * block.step * Math.max(0, at - Math.max(age, end));
      const depth = block.edgeDepth[e]!;
      const edge = { depth, side: block.edgeSide[e]!, tolerance: (block.edgeTolerance[e]! * depth) ** 2 };
      for (let k = lines.start[d]!; k < lines.start[d + 1]!; k++) {
        wear[k]! += lines.rate[k]! * ahead;
        variance[k]! += (lines.rate[k]! * pace) ** 2 * (alone + together);
        cutOff(wear, variance, k, edge);
      }
      [age, before] = [at, there];
    }
    hoursThere[d] = before;
  });
  const ofClock = (values: Float64Array, best: (a: number, b: number) => number): Float64Array =>
    Float64Array.from(draws, (_, d) => values.subarray(lines.start[d], lines.start[d + 1]).reduce(best));
  return {
    age: block.edgeAge[lastEdge]!,
    hours: hoursThere,
    wear,
    variance,
    least: ofClock(wear, (a, b) => Math.min(a, b)),
    most: ofClock(wear, (a, b) => Math.max(a, b)),
    widest: ofClock(variance, (a, b) => Math.max(a, b)),
  };
}

/** The normal of one node, given that a depth of some tolerance (a variance) is reached (+1) or not (−1). */
function cutOff(
  wear: Float64Array,
  variance: Float64Array,
  k: number,
  { depth, side, tolerance }: { readonly depth: number; readonly side: number; readonly tolerance: number },
): void {
  const mean = wear[k]!;
  const own = variance[k]!;
  const spread = Math.sqrt(own + tolerance);
  if (!(spread > 0) || !(own > 0)) return;
  const z = (side * (mean - depth)) / spread;
  const lambda = slopeOfLogArea(z);
  wear[k] = mean + (side * lambda * own) / spread;
  variance[k] = Math.max(0, own - (lambda * (lambda + z) * own * own) / (spread * spread));
}

/** ln of what turns a node's rate into the rate now. */
function toNow(draw: ClockDraw, age: number): number {
  const { theta, reference } = draw.sums;
  return draw.now + (theta.power === 1 || !(age > 0) ? 0 : (theta.power - 1) * Math.log(age / reference));
}

function momentsOf(
  draws: readonly ClockDraw[],
  { start, rate, share }: Lines,
  age: number,
): { readonly mean: number; readonly spread: number } {
  let mean = 0;
  let square = 0;
  draws.forEach((draw, d) => {
    const now = toNow(draw, age);
    const w = draw.weight;
    for (let k = start[d]!; k < start[d + 1]!; k++) {
      const log = Math.log(rate[k]!) + now;
      mean += w * share[k]! * log;
      square += w * share[k]! * log * log;
    }
  });
  return { mean, spread: Math.sqrt(Math.max(0, square - mean * mean)) };
}

function rateNodes(draws: readonly ClockDraw[], { start, rate, share }: Lines, age: number): RateNodes {
  const log = new Float64Array(rate.length);
  const part = new Float64Array(rate.length);
  draws.forEach((draw, d) => {
    const now = toNow(draw, age);
    for (let k = start[d]!; k < start[d + 1]!; k++) {
      log[k] = Math.log(rate[k]!) + now;
      part[k] = draw.weight * share[k]!;
    }
  });
  const order = Uint32Array.from(log.keys()).sort((a, b) => log[a]! - log[b]!);
  return {
    logRate: Float64Array.from(order, (k) => log[k]!),
    weight: Float64Array.from(order, (k) => part[k]!),
  };
}

interface Asked {
  readonly depth: number;
  readonly age: number;
  readonly depthSpread: number;
  /** Age at the point's last thickness, and at the conveyor's last look. */
  readonly last: number;
  readonly end: number;
}

/** Effective hours at an age, beyond the last look at the pace now. */
function effective(
  block: Block,
  unit: number,
  draw: ClockDraw,
  lines: Omit<Lines, 'after'>,
  d: number,
  age: number,
  end: number,
  hours: Float64Array,
): number {
  const { theta, reference } = draw.sums;
  if (age > end)
    return lines.hoursEnd[d]! + lines.now[d]! * (ageClock(age, theta.power, reference) - lines.clockEnd[d]!);
  hoursAt(block, unit, age, theta.power, reference, hours, 0);
  let sum = 0;
  for (let j = 0; j < block.stretches; j++) sum += draw.pace[j]! * hours[j]!;
  return sum;
}
/**
 * Wear at an age by one clock: base·(wear at the last thickness) + rate·ahead, with variance fixed + rate²·walk. Where colours were seen
 * since, `share` of the way to where they leave off.
 */
interface Reach {
  readonly base: number;
  readonly ahead: number;
  readonly fixed: number;
  readonly walk: number;
  readonly share: number;
}

function reachAt(
  block: Block,
  unit: number,
  draw: ClockDraw,
  lines: Lines,
  d: number,
  age: number,
  { last, end }: Pick<Asked, 'last' | 'end'>,
  hours: Float64Array,
): Reach {
  const { pointNoise, sharedNoise } = draw.sums.theta;
  const { after } = lines;
  const there = effective(block, unit, draw, lines, d, age, end, hours);
  if (age >= last) {
    // Wander after what was seen last: of the point by itself, and of the conveyor after its last look.
    const [seen, hoursSeen] = after ? [after.age, after.hours[d]!] : [last, lines.hoursLast[d]!];
    if (after && age < seen) {
      const whole = hoursSeen - lines.hoursLast[d]!;
      const share = whole > 0 ? (there - lines.hoursLast[d]!) / whole : (age - last) / (seen - last);
      return { base: 1, ahead: 0, fixed: lines.variance[d]!, walk: 0, share };
    }
    const wander = pointNoise ** 2 * block.step * (age - seen);
    const from = Math.max(seen, end);
    const shared = age > from ? sharedNoise ** 2 * block.step * (age - from) : 0;
    const ahead = there - hoursSeen;
    const mean = age > seen ? ahead / (age - seen) : 0;
    return { base: 1, ahead, fixed: lines.variance[d]!, walk: (wander + shared) * mean * mean, share: 1 };
  }
  // Before it: drawn straight to the state there.
  const base = lines.hoursLast[d]! > 0 ? there / lines.hoursLast[d]! : 0;
  const walk = age > 0 ? pointNoise ** 2 * block.step * age * (1 - base) * (there / age) ** 2 : 0;
  return { base, ahead: 0, fixed: lines.variance[d]! * base * base, walk, share: 0 };
}

/** Wear by one node, mm. */
function wearOfNode({ wear, rate, after }: Lines, { base, ahead, share }: Reach, k: number): number {
  const from = base * wear[k]!;
  const known = after && share !== 0 ? from + share * (after.wear[k]! - from) : from;
  return known + rate[k]! * ahead;
}

/** Its variance, mm². */
function varianceOfNode({ rate, after }: Lines, { fixed, walk, share }: Reach, k: number): number {
  const known = after && share !== 0 ? fixed + share * (after.variance[k]! - fixed) : fixed;
  return known + rate[k]! * rate[k]! * walk;
}

function chanceByLine(
  block: Block,
  unit: number,
  draw: ClockDraw,
  lines: Lines,
  d: number,
  asked: Asked,
  hours: Float64Array,
): number {
  if (!(asked.age > 0)) return 0;
  const at = reachAt(block, unit, draw, lines, d, asked.age, asked, hours);
  const { base, ahead, fixed: own, walk } = at;
  const { rate, share, wear, start } = lines;
  if (lines.after && at.share > 0) return chanceAfterColours(lines, lines.after, d, at, asked);
  const fixed = own + asked.depthSpread * asked.depthSpread;
  const first = start[d]!;
  const top = start[d + 1]! - 1;
  // The fastest node far short of the depth, or the slowest far beyond it: nothing to add up.
  const fast = rate[top]!;
  const reach = 6 * Math.sqrt(fixed + fast * fast * walk);
  if (base * wear[top]! + fast * ahead < asked.depth - reach) return 0;
  if (base * wear[first]! + rate[first]! * ahead > asked.depth + reach) return 1;
  let chance = 0;
  for (let k = first; k <= top; k++) {
    const r = rate[k]!;
    const far = base * wear[k]! + r * ahead - asked.depth;
    const spread = Math.sqrt(fixed + r * r * walk);
    chance += share[k]! * (spread > 0 ? areaTabled(far / spread) : far >= 0 ? 1 : 0);
  }
  return chance;
}

function chanceAfterColours(
  lines: Lines,
  { least, most, widest }: AfterColours,
  d: number,
  at: Reach,
  { depth, depthSpread }: Pick<Asked, 'depth' | 'depthSpread'>,
): number {
  const [slow, fast] = [lines.rate[lines.start[d]!]!, lines.rate[lines.start[d + 1]! - 1]!];
  // As above: all of it far short of the depth, or far beyond.
  if (at.share === 1) {
    const reach = 6 * Math.sqrt(widest[d]! + fast * fast * at.walk + depthSpread * depthSpread);
    if (most[d]! + fast * at.ahead < depth - reach) return 0;
    if (least[d]! + slow * at.ahead > depth + reach) return 1;
  }
  let chance = 0;
  for (let k = lines.start[d]!; k < lines.start[d + 1]!; k++) {
    const middle = wearOfNode(lines, at, k);
    const spread = Math.sqrt(varianceOfNode(lines, at, k) + depthSpread * depthSpread);
    chance +=
      lines.share[k]! * (spread > 0 ? areaTabled((middle - depth) / spread) : middle >= depth ? 1 : 0);
  }
  return chance;
}
