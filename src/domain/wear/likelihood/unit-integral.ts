// How likely are one unit's records when its ln rate u is normal about the pool's, and what is u then? One integral over u by
// Gauss–Legendre on the unit's subintervals; the moments for score and information come in the same pass.
// Index arithmetic runs within lengths made here and in reduce.ts, so `!` after an index is safe.

import { halfLogTwoPi } from '../numeric/normal.js';
import { gaussLegendre } from '../numeric/quadrature.js';
import { laySubintervals } from './subintervals.js';
import type { Subintervals, UnitTerms } from './shape.js';
import { edgesBetween, fineNodes, mostSubintervals, readingPart, squaresThere, wall } from './shape.js';

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

/** Likelihood and moments of one unit. */
export function unitMoments(
  terms: UnitTerms,
  unit: number,
  mean: number,
  spread: number,
  error: number,
  subintervals: Subintervals,
  out: Moments,
): void {
  const { units, summary } = terms;
  laySubintervals(terms, unit, mean, spread, error, subintervals);
  const n = summary.n[unit]!;
  const readingConstant = n > 0 ? -n * (Math.log(error) + halfLogTwoPi) - summary.logScale[unit]! : 0;
  const noise = summary.sse[unit]! / (error * error);
  if (subintervals.kind === 'open') {
    const v = spread * spread;
    out.logLikelihood =
      readingConstant - 0.5 * (noise + (summary.slope[unit]! ** 2 * summary.sxx[unit]!) / (error * error));
    out.r1 = out.r3 = out.rq = 0;
    out.r2 = v;
    out.r4 = 3 * v * v;
    out.q1 = noise;
    out.q2 = noise * noise;
    out.rrq = v * noise;
    return;
  }
  if (subintervals.kind === 'point') {
    const r = units.life[unit]! - mean;
    out.logLikelihood = -0.5 * (r / spread) ** 2 - Math.log(spread) - halfLogTwoPi;
    out.r1 = r;
    out.r2 = r * r;
    out.r3 = out.r2 * r;
    out.r4 = out.r2 * out.r2;
    out.q1 = out.q2 = out.rq = out.rrq = 0;
    return;
  }
  const log = integrate(terms, subintervals);
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
      if (subintervals.walk >= 0) {
        readingPart(summary, subintervals, u);
        q = squaresThere() * precision;
      } else {
        const miss = Math.exp(u) - subintervals.slope;
        q = noise + 2 * subintervals.stiffness * miss * miss;
      }
      q1 += w * q;
      q2 += w * q * q;
      rq += wr * q;
      rrq += wrr * q;
    }
  }
  // With a walk, squares and scale are in the integrand already.
  const fixed =
    subintervals.walk >= 0 ? readingConstant + summary.logScale[unit]! : readingConstant - 0.5 * noise;
  let constant = fixed - Math.log(spread) - halfLogTwoPi + subintervals.height;
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

const nodeU = new Float64Array(mostSubintervals * fineNodes);
const nodeW = new Float64Array(mostSubintervals * fineNodes);
const nodeL = new Float64Array(mostSubintervals * fineNodes);
let nodeCount = 0;

/** ln ∫ exp(shape) over the subintervals; leaves the nodes in the workspace. */
export function integrate(terms: UnitTerms, subintervals: Subintervals): number {
  const rule = gaussLegendre(terms.nodes);
  const { node, weight } = rule;
  const order = node.length;
  const edged = subintervals.firstEdge < subintervals.lastEdge;
  let nodes = 0;
  let top = -Infinity;
  for (let k = 0; k < subintervals.count; k++) {
    const low = subintervals.cut[k]!;
    const high = subintervals.cut[k + 1]!;
    if (!(low < high)) continue;
    const half = 0.5 * (high - low);
    const middle = 0.5 * (high + low);
    // Where the edges are soft over the whole subinterval, they are found at a few places and carried to the nodes by their polynomial.
    const smooth = edged && high - low <= 4 * softest(terms, subintervals);
    if (smooth) edgesOnFew(terms, subintervals, middle, half);
    const between = smooth ? interpolation(order) : undefined;
    for (let i = 0; i < order; i++) {
      const u = middle + half * node[i]!;
      const z = (u - subintervals.centre) / subintervals.spread;
      let value = -0.5 * z * z;
      if (subintervals.walk >= 0) {
        value -= readingPart(terms.summary, subintervals, u);
      } else if (subintervals.stiffness > 0) {
        const miss = Math.exp(u) - subintervals.slope;
        value -= subintervals.stiffness * miss * miss;
      }
      if (between) {
        const at = i * few;
        for (let j = 0; j < few; j++) value += between[at + j]! * fewValues[j]!;
      } else if (edged) {
        value += edgesBetween(terms, subintervals.firstEdge, subintervals.lastEdge, u);
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

function edgesOnFew(terms: UnitTerms, subintervals: Subintervals, middle: number, half: number): void {
  const { node } = gaussLegendre(few);
  for (let j = 0; j < few; j++)
    fewValues[j] = edgesBetween(
      terms,
      subintervals.firstEdge,
      subintervals.lastEdge,
      middle + half * node[j]!,
    );
}

/** Smallest softness among a unit's edges; 0 where one is a wall. */
function softest({ edges }: UnitTerms, subintervals: Subintervals): number {
  let least = Infinity;
  for (let e = subintervals.firstEdge; e < subintervals.lastEdge; e++) {
    if (edges.lowSoft[e]! < least) least = edges.lowSoft[e]!;
    if (edges.highSoft[e]! < least) least = edges.highSoft[e]!;
  }
  return least < wall ? 0 : least;
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
