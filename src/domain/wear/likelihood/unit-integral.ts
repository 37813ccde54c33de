// How likely are one unit's records when its ln rate u is normal about the pool's, and what is u then? One integral over u:
//   −(u−mean)²/2·spread² − [SSE + Sxx·(eᵘ−b)²]/2σ² + Σ ln(Φ((u−low)/soft) − Φ((u−high)/soft)),
// by Gauss–Legendre on panels laid where the integrand has its mass; the moments for score and information come in the same pass.
// Index arithmetic runs within lengths made here and in reduce.ts, so `!` after an index is safe.

import { halfLogTwoPi, logAreaBetweenTabled, logAreaTabled } from '../numeric/normal.js';
import { gaussLegendre } from '../numeric/quadrature.js';
import type { Units } from '../reduce.js';
import type { Edges, Walk } from './edges.js';
import { edgesOf } from './edges.js';
import type { Summary } from './summary.js';
import { gridSize, gridStep } from './summary.js';

/** Everything the integral needs of every unit, and a workspace. One per fit. */
export interface UnitTerms {
  readonly units: Units;
  readonly summary: Summary;
  readonly edges: Edges;
  /** Gauss–Legendre nodes on a panel, and how many spreads a panel reaches to either side of the middle. */
  readonly nodes: number;
  readonly reach: number;
}

/** @param walk where duty is uneven. */
export function unitTerms(units: Units, summary: Summary, walk: Walk | undefined, nodes = fineNodes): UnitTerms {
  return { units, summary, edges: edgesOf(units, walk), nodes, reach: nodes === bulkNodes ? 6 : 8 };
}

/** Moments of r = u − mean and q = [SSE + Sxx·(eᵘ−b)²]/σ² given the unit's records; and the ln likelihood of those records. */
export interface Moments {
  logLikelihood: number;
  r1: number;
  r2: number;
  r3: number;
  r4: number;
  q1: number;
  q2: number;
  rq: number;
  rrq: number;
}

export function emptyMoments(): Moments {
  return { logLikelihood: 0, r1: 0, r2: 0, r3: 0, r4: 0, q1: 0, q2: 0, rq: 0, rrq: 0 };
}

/** The panels on which a unit's integrand has its mass, and its shape: refilled by `layPanels`. */
export interface Panels {
  /** 'open': the records say nothing; u is normal(mean, spread). 'point': a life states u. Otherwise panels. */
  kind: 'open' | 'point' | 'panels';
  count: number;
  readonly cut: Float64Array;
  /** Centre and spread of pool and life together. */
  centre: number;
  spread: number;
  /** Their exponents' sum at that centre. */
  height: number;
  /** Sxx/2σ² and b. */
  stiffness: number;
  slope: number;
  /** Start of the unit's rows in the walk's table, −1 where duty is even: then Sxx, slope, SSE and scale change with u. */
  walk: number;
  walkFrom: number;
  /** 1/2σ². */
  half: number;
  firstEdge: number;
  lastEdge: number;
}

export function emptyPanels(): Panels {
  return { kind: 'open', count: 0, cut: new Float64Array(mostPanels), centre: 0, spread: 1, height: 0, stiffness: 0, slope: 0, walk: -1, walkFrom: 0, half: 0, firstEdge: 0, lastEdge: 0 };
}

/** Nodes on a panel: 32 agree with R to about 1e-9, 24 to 1e-6; 16 are enough to compare one value with the next. */
export const fineNodes = 32;
export const gridNodesOnPanel = 24;
export const coarseNodes = 24;
/** With thousands of units each one's last digits no longer count. */
export const bulkNodes = 16;
const mostPanels = 64;
const hard = 1e-9; // an edge softer than this is a plain cut
const nodeU = new Float64Array(mostPanels * fineNodes);
const nodeW = new Float64Array(mostPanels * fineNodes);
const nodeL = new Float64Array(mostPanels * fineNodes);
let nodeCount = 0;

/** Panels for a unit under pool mean and spread (> 0) and reading error σ (> 0). */
export function layPanels(terms: UnitTerms, unit: number, mean: number, spread: number, error: number, panels: Panels): void {
  const { units, summary, edges, reach } = terms;
  const life = units.life[unit]!;
  const known = life === life;
  const firstEdge = (panels.firstEdge = units.edgeStart[unit]!);
  const lastEdge = (panels.lastEdge = units.edgeStart[unit + 1]!);
  const stiffness = (panels.stiffness = summary.sxx[unit]! / (2 * error * error));
  const slope = (panels.slope = summary.slope[unit]!);
  panels.centre = mean;
  panels.spread = spread;
  panels.height = 0;
  if (known) {
    const own = units.lifeSpread[unit]!;
    if (own === 0) {
      panels.kind = 'point';
      return;
    }
    addNormal(panels, life, own);
  }
  const walkFrom = stiffness > 0 && summary.walk ? summary.walk.from[unit]! : NaN;
  panels.walk = walkFrom === walkFrom ? 4 * gridSize * unit : -1;
  panels.walkFrom = walkFrom;
  panels.half = 0.5 / (error * error);
  if (!known && stiffness === 0 && firstEdge === lastEdge) {
    panels.kind = 'open';
    return;
  }
  panels.kind = 'panels';
  const c = panels.centre;
  const s = panels.spread;
  let low: number;
  let high: number;
  let clash = false;
  let mode = c;
  if (stiffness > 0) {
    const rough = 1 / (2 * stiffness * slope * slope); // variance of ln rate by the readings alone
    clash = slope > 0 && rough < 1 && Math.abs(Math.log(slope) - c) > 6 * Math.max(s, Math.sqrt(rough));
    let u = slope > 0 ? (Math.log(slope) / rough + c / (s * s)) / (1 / rough + 1 / (s * s)) : c;
    let bend = 1 / (s * s);
    for (let step = 0; step < 30; step++) {
      const e = Math.exp(u);
      const tilt = -(u - c) / (s * s) - 2 * stiffness * e * (e - slope);
      bend = 1 / (s * s) + 2 * stiffness * e * (2 * e - slope);
      if (!(bend > 0.25 / (s * s))) bend = Math.max(1 / (s * s), 2 * stiffness * e * e);
      let move = tilt / bend;
      if (move > 2) move = 2;
      else if (move < -2) move = -2;
      u += move;
      if (Math.abs(move) * Math.sqrt(bend) < 0.02) break;
    }
    const width = 1 / Math.sqrt(bend);
    const floor = evenShape(panels, u) - 0.5 * reach * reach;
    mode = u;
    high = u + reach * width;
    for (let step = 0; step < 3; step++) {
      const e = Math.exp(high);
      const over = evenShape(panels, high) - floor;
      const tilt = -(high - c) / (s * s) - 2 * stiffness * e * (e - slope);
      if (over >= 0 || tilt >= 0) break;
      high -= over / tilt;
    }
    low = u - reach * width;
    for (let step = 0; step < 60 && evenShape(panels, low) > floor; step++) low -= width;
    if (panels.walk >= 0) [low, high] = walkEnds(summary, panels, u, width);
  } else {
    low = c - 8 * s;
    high = c + 8 * s;
  }
  for (let e = firstEdge; e < lastEdge; e++) {
    const edgeLow = edges.low[e]!;
    const edgeHigh = edges.high[e]!;
    // How far the rest pulls an edge's own foot: a shift of soft·(distance/spread²), in units of `soft`.
    if (edgeLow > -Infinity) {
      const soft = edges.lowSoft[e]!;
      const pull = Math.max(0, (soft * (edgeLow - c)) / (s * s));
      low = Math.max(low, soft < hard ? edgeLow : edgeLow - soft * (9 + pull));
      if (stiffness === 0) high = Math.max(high, c + Math.sqrt(Math.max(0, edgeLow - c) ** 2 + 64 * s * s));
    }
    if (edgeHigh < Infinity) {
      const soft = edges.highSoft[e]!;
      const pull = Math.max(0, (soft * (c - edgeHigh)) / (s * s));
      high = Math.min(high, soft < hard ? edgeHigh : edgeHigh + soft * (9 + pull));
      if (stiffness === 0) low = Math.min(low, c - Math.sqrt(Math.max(0, c - edgeHigh) ** 2 + 64 * s * s));
    }
  }
  // A second look after both sides moved: an edge may not be wider than what it cuts.
  for (let e = firstEdge; e < lastEdge && stiffness === 0; e++) {
    const up = edges.lowSoft[e]!;
    const down = edges.highSoft[e]!;
    const pullUp = Math.max(0, (up * (edges.low[e]! - c)) / (s * s));
    const pullDown = Math.max(0, (down * (c - edges.high[e]!)) / (s * s));
    if (edges.low[e]! > -Infinity) low = Math.max(low, up < hard ? edges.low[e]! : edges.low[e]! - up * (9 + pullUp));
    if (edges.high[e]! < Infinity) high = Math.min(high, down < hard ? edges.high[e]! : edges.high[e]! + down * (9 + pullDown));
  }
  if (stiffness > 0 && firstEdge < lastEdge && !clash) {
    // Readings and colours at odds: the mass lies in the tail of both, where panels from either alone would miss it.
    const nearest = Math.min(Math.max(mode, low), high);
    if (evenShape(panels, nearest) < evenShape(panels, mode) - 12) clash = true;
  }
  if (clash || !(low < high)) {
    [low, high] = searchMass(terms, panels, low, high);
    panels.count = 3;
    for (let k = 0; k <= 3; k++) panels.cut[k] = low + ((high - low) * k) / 3;
    return;
  }
  panels.cut[0] = low;
  let count = 0;
  for (let e = firstEdge; e < lastEdge && count < mostPanels - 6; e++) {
    count = cutAround(panels, count, edges.low[e]!, edges.lowSoft[e]!, low, high);
    count = cutAround(panels, count, edges.high[e]!, edges.highSoft[e]!, low, high);
  }
  panels.count = count + 1;
  panels.cut[panels.count] = high;
}

/** Ends by the sums that change with u: out from the middle until the rest is nothing, however slowly that comes. */
function walkEnds(summary: Summary, panels: Panels, middle: number, width: number): [number, number] {
  const value = (u: number): number => -(((u - panels.centre) / panels.spread) ** 2) / 2 - readingPart(summary, panels, u);
  let top = value(middle);
  const ends: [number, number] = [middle, middle];
  for (const side of [-1, 1] as const) {
    let u = middle;
    let stride = width;
    for (let step = 0; step < 80; step++) {
      u += side * stride;
      const v = value(u);
      if (v > top) top = v;
      if (v < top - 32) break;
      if (step > 8) stride *= 1.15;
    }
    ends[side < 0 ? 0 : 1] = u;
  }
  return ends;
}

let squares = 0;

/** What the thicknesses subtract at u where the walk counts; leaves the sum of squares, mm², in `squares`. */
function readingPart(summary: Summary, panels: Panels, u: number): number {
  const { table } = summary.walk!; // only called where panels.walk ≥ 0, that is, where there is one
  const place = (u - panels.walkFrom) / gridStep;
  const last = gridSize - 1;
  const cell = place <= 1 ? 0 : place >= last - 1 ? gridSize - 4 : Math.floor(place) - 1;
  const clamped = place < 0 ? 0 : place > last ? last : place;
  const t = clamped - cell;
  // Lagrange's cubic through the four grid rates from `cell` on.
  const a = t - 1;
  const b = t - 2;
  const c = t - 3;
  const w0 = -(a * b * c) / 6;
  const w1 = (t * b * c) / 2;
  const w2 = -(t * a * c) / 2;
  const w3 = (t * a * b) / 6;
  const at = panels.walk + 4 * cell;
  const sxx = w0 * table[at]! + w1 * table[at + 4]! + w2 * table[at + 8]! + w3 * table[at + 12]!;
  const slope = w0 * table[at + 1]! + w1 * table[at + 5]! + w2 * table[at + 9]! + w3 * table[at + 13]!;
  const sse = w0 * table[at + 2]! + w1 * table[at + 6]! + w2 * table[at + 10]! + w3 * table[at + 14]!;
  const logScale = w0 * table[at + 3]! + w1 * table[at + 7]! + w2 * table[at + 11]! + w3 * table[at + 15]!;
  const miss = Math.exp(u) - slope;
  squares = sse + sxx * miss * miss;
  return logScale + panels.half * squares;
}

/** The pool's normal times that of a life. */
function addNormal(panels: Panels, mean: number, spread: number): void {
  const pool = 1 / (panels.spread * panels.spread);
  const own = 1 / (spread * spread);
  // Measured from the pool's centre, so that nothing large is subtracted.
  const d = mean - panels.centre;
  panels.height -= (0.5 * d * d * pool * own) / (pool + own);
  panels.centre += (d * own) / (pool + own);
  panels.spread = 1 / Math.sqrt(pool + own);
}

/** Panels end seven softnesses to either side of an edge, where it is soft enough to be told from a wall and narrow enough to matter. */
function cutAround(panels: Panels, count: number, edge: number, soft: number, low: number, high: number): number {
  if (soft < hard || 14 * soft > high - low) return count;
  for (let side = -7; side <= 7; side += 14) {
    const at = edge + side * soft;
    if (!(at > low && at < high)) continue;
    let place = ++count;
    for (; place > 1 && panels.cut[place - 1]! > at; place--) panels.cut[place] = panels.cut[place - 1]!;
    panels.cut[place] = at;
  }
  return count;
}

/** Pool, life and thicknesses alone, with even duty. */
function evenShape(panels: Panels, u: number): number {
  const z = (u - panels.centre) / panels.spread;
  const miss = Math.exp(u) - panels.slope;
  return -0.5 * z * z - panels.stiffness * miss * miss;
}

/** Where the integrand has its mass when pool, readings and colours pull apart: a walk over everything, zoomed in. */
function searchMass(terms: UnitTerms, panels: Panels, low: number, high: number): [number, number] {
  const c = panels.centre;
  const s = panels.spread;
  let from = Math.min(low, high, c - 9 * s);
  let to = Math.max(low, high, c + 9 * s);
  if (panels.stiffness > 0 && panels.slope > 0) {
    from = Math.min(from, Math.log(panels.slope) - 1);
    to = Math.max(to, Math.log(panels.slope) + 1);
  }
  for (let e = panels.firstEdge; e < panels.lastEdge; e++) {
    if (terms.edges.low[e]! > -Infinity) to = Math.max(to, terms.edges.low[e]! + 1);
    if (terms.edges.high[e]! < Infinity) from = Math.min(from, terms.edges.high[e]! - 1);
  }
  const points = 65;
  const value = new Float64Array(points);
  for (let zoom = 0; zoom < 12; zoom++) {
    let top = -Infinity;
    for (let i = 0; i < points; i++) {
      const v = (value[i] = logShape(terms, panels, from + ((to - from) * i) / (points - 1)));
      if (v > top) top = v;
    }
    let first = 0;
    let last = points - 1;
    while (first < last && value[first]! < top - 34) first++;
    while (last > first && value[last]! < top - 34) last--;
    const step = (to - from) / (points - 1);
    [from, to] = [from + step * Math.max(0, first - 1), from + step * Math.min(points - 1, last + 1)];
    if (last - first > 16) break;
  }
  return [from, to];
}

/** The integrand's logarithm without its constants. */
export function logShape(terms: UnitTerms, panels: Panels, u: number): number {
  const z = (u - panels.centre) / panels.spread;
  let value = -0.5 * z * z;
  if (panels.walk >= 0) {
    value -= readingPart(terms.summary, panels, u);
  } else if (panels.stiffness > 0) {
    const miss = Math.exp(u) - panels.slope;
    value -= panels.stiffness * miss * miss;
  }
  if (panels.firstEdge < panels.lastEdge) value += edgesBetween(terms, panels.firstEdge, panels.lastEdge, u);
  return value;
}

/** ln of edge factors at u. */
function edgesBetween({ edges }: UnitTerms, from: number, to: number, u: number): number {
  let value = 0;
  for (let e = from; e < to; e++) {
    const lowSoft = edges.lowSoft[e]!;
    const low = edges.low[e]!;
    const high = edges.high[e]!;
    if (lowSoft < hard) {
      if (u < low || u > high) return -Infinity;
      continue;
    }
    const above = (u - low) / lowSoft;
    const below = (u - high) / edges.highSoft[e]!;
    // Well inside an end, what it cuts off is nothing to the last digit.
    const lowCuts = above < 8.3;
    const highCuts = below > -8.3;
    if (lowCuts && highCuts) value += edges.shared ? logAreaBetweenTabled(below, above) : logAreaTabled(above) + logAreaTabled(-below);
    else if (lowCuts) value += logAreaTabled(above);
    else if (highCuts) value += logAreaTabled(-below);
  }
  return value;
}

/** ln ∫ exp(shape) over the panels; leaves the nodes in the workspace. */
export function integrate(terms: UnitTerms, panels: Panels): number {
  const rule = gaussLegendre(terms.nodes);
  const { node, weight } = rule;
  const order = node.length;
  const edged = panels.firstEdge < panels.lastEdge;
  let nodes = 0;
  let top = -Infinity;
  for (let k = 0; k < panels.count; k++) {
    const low = panels.cut[k]!;
    const high = panels.cut[k + 1]!;
    if (!(low < high)) continue;
    const half = 0.5 * (high - low);
    const middle = 0.5 * (high + low);
    // Where the edges are soft over the whole panel, they are found at a few places and carried to the nodes by their polynomial.
    const smooth = edged && high - low <= 4 * softest(terms, panels);
    if (smooth) edgesOnFew(terms, panels, middle, half);
    const between = smooth ? interpolation(order) : undefined;
    for (let i = 0; i < order; i++) {
      const u = middle + half * node[i]!;
      const z = (u - panels.centre) / panels.spread;
      let value = -0.5 * z * z;
      if (panels.walk >= 0) {
        value -= readingPart(terms.summary, panels, u);
      } else if (panels.stiffness > 0) {
        const miss = Math.exp(u) - panels.slope;
        value -= panels.stiffness * miss * miss;
      }
      if (between) {
        const at = i * few;
        for (let j = 0; j < few; j++) value += between[at + j]! * fewValues[j]!;
      } else if (edged) {
        value += edgesBetween(terms, panels.firstEdge, panels.lastEdge, u);
      }
      nodeU[nodes] = u;
      nodeW[nodes] = half * weight[i]!;
      nodeL[nodes] = value;
      if (value > top) top = value;
      nodes++;
    }
  }
  let sum = 0;
  if (top > -Infinity) for (let i = 0; i < nodes; i++) sum += nodeW[i]! * Math.exp(nodeL[i]! - top);
  nodeCount = nodes;
  return sum > 0 ? top + Math.log(sum) : -Infinity;
}

const few = 12;
const fewValues = new Float64Array(few);
const matrices = new Map<number, Float64Array>();

function edgesOnFew(terms: UnitTerms, panels: Panels, middle: number, half: number): void {
  const { node } = gaussLegendre(few);
  for (let j = 0; j < few; j++) fewValues[j] = edgesBetween(terms, panels.firstEdge, panels.lastEdge, middle + half * node[j]!);
}

/** Smallest softness among a unit's edges; 0 where one is a wall. */
function softest({ edges }: UnitTerms, panels: Panels): number {
  let least = Infinity;
  for (let e = panels.firstEdge; e < panels.lastEdge; e++) {
    if (edges.lowSoft[e]! < least) least = edges.lowSoft[e]!;
    if (edges.highSoft[e]! < least) least = edges.highSoft[e]!;
  }
  return least < hard ? 0 : least;
}

/** Row i: weights of the values at the few places for the value at node i of the rule, by Lagrange's polynomial. */
function interpolation(order: number): Float64Array {
  let matrix = matrices.get(order);
  if (matrix) return matrix;
  matrix = new Float64Array(order * few);
  const from = gaussLegendre(few).node;
  const to = gaussLegendre(order).node;
  for (let i = 0; i < order; i++) {
    for (let j = 0; j < few; j++) {
      let product = 1;
      for (let m = 0; m < few; m++) if (m !== j) product *= (to[i]! - from[m]!) / (from[j]! - from[m]!);
      matrix[i * few + j] = product;
    }
  }
  matrices.set(order, matrix);
  return matrix;
}

/** Likelihood and moments of one unit. */
export function unitMoments(terms: UnitTerms, unit: number, mean: number, spread: number, error: number, panels: Panels, out: Moments): void {
  const { units, summary } = terms;
  layPanels(terms, unit, mean, spread, error, panels);
  const n = summary.n[unit]!;
  const readingConstant = n > 0 ? -n * (Math.log(error) + halfLogTwoPi) - summary.logScale[unit]! : 0;
  const noise = summary.sse[unit]! / (error * error);
  if (panels.kind === 'open') {
    const v = spread * spread;
    out.logLikelihood = readingConstant - 0.5 * (noise + (summary.slope[unit]! ** 2 * summary.sxx[unit]!) / (error * error));
    out.r1 = out.r3 = out.rq = 0;
    out.r2 = v;
    out.r4 = 3 * v * v;
    out.q1 = noise;
    out.q2 = noise * noise;
    out.rrq = v * noise;
    return;
  }
  if (panels.kind === 'point') {
    const r = units.life[unit]! - mean;
    out.logLikelihood = -0.5 * (r / spread) ** 2 - Math.log(spread) - halfLogTwoPi;
    out.r1 = r;
    out.r2 = r * r;
    out.r3 = out.r2 * r;
    out.r4 = out.r2 * out.r2;
    out.q1 = out.q2 = out.rq = out.rrq = 0;
    return;
  }
  const log = integrate(terms, panels);
  const nodes = nodeCount;
  let r1 = 0;
  let r2 = 0;
  let r3 = 0;
  let r4 = 0;
  let q1 = 0;
  let q2 = 0;
  let rq = 0;
  let rrq = 0;
  const withReadings = n > 0;
  const precision = 1 / (error * error);
  for (let i = 0; i < nodes; i++) {
    const u = nodeU[i]!;
    const w = nodeW[i]! * Math.exp(nodeL[i]! - log);
    const r = u - mean;
    const wr = w * r;
    const wrr = wr * r;
    r1 += wr;
    r2 += wrr;
    r3 += wrr * r;
    r4 += wrr * r * r;
    if (withReadings) {
      let q: number;
      if (panels.walk >= 0) {
        readingPart(summary, panels, u);
        q = squares * precision;
      } else {
        const miss = Math.exp(u) - panels.slope;
        q = noise + 2 * panels.stiffness * miss * miss;
      }
      q1 += w * q;
      q2 += w * q * q;
      rq += wr * q;
      rrq += wrr * q;
    }
  }
  // With a walk, squares and scale are in the integrand already.
  const fixed = panels.walk >= 0 ? readingConstant + summary.logScale[unit]! : readingConstant - 0.5 * noise;
  let constant = fixed - Math.log(spread) - halfLogTwoPi + panels.height;
  const life = units.life[unit]!;
  if (life === life) constant -= Math.log(units.lifeSpread[unit]!) + halfLogTwoPi;
  out.logLikelihood = constant + log;
  out.r1 = r1;
  out.r2 = r2;
  out.r3 = r3;
  out.r4 = r4;
  out.q1 = q1;
  out.q2 = q2;
  out.rq = rq;
  out.rrq = rrq;
}
