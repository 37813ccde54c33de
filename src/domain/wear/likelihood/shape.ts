// What is the integrand of one unit, and what does it need? ln of
//   pool normal × life normal × thicknesses × colours, as a function of the unit's ln rate u:
//   −(u−centre)²/2·spread² − [SSE + Sxx·(eᵘ−b)²]/2σ² + Σ ln(Φ((u−low)/soft) − Φ((u−high)/soft)).
// With even duty Sxx, b and SSE are numbers; with uneven duty they change with u and are read off the walk's table.
// Index arithmetic runs within lengths made here and in reduce.ts, so `!` after an index is safe.

import { logAreaBetweenTabled, logAreaTabled } from '../numeric/normal.js';
import type { Units } from '../reduce.js';
import type { Edges, DutyWalk } from './edges.js';
import { edgesOf } from './edges.js';
import type { ReadingSums } from './summary.js';
import { gridSize, gridStep } from './summary.js';

/** Everything the integral needs of every unit, and a workspace. One per fit. */
export interface UnitTerms {
  readonly units: Units;
  readonly summary: ReadingSums;
  readonly edges: Edges;
  /** Gauss–Legendre nodes on a subinterval, and how many spreads a subinterval reaches to either side of the middle. */
  readonly nodes: number;
  readonly reach: number;
}

/** @param walk where duty is uneven. */
export function unitTerms(
  units: Units,
  summary: ReadingSums,
  walk: DutyWalk | undefined,
  nodes = fineNodes,
): UnitTerms {
  return { units, summary, edges: edgesOf(units, walk), nodes, reach: nodes === bulkNodes ? 6 : 8 };
}

/** Nodes on a subinterval: 32 agree with R to about 1e-9, 24 to 1e-6; 16 are enough to compare one value with the next. */
export const fineNodes = 32;
export const nodesOnGrid = 24;
export const coarseNodes = 24;
/** With thousands of units each one's last digits no longer count. */
export const bulkNodes = 16;
/** The subintervals on which a unit's integrand has its mass, and its shape: refilled by `laySubintervals`. */
export interface Subintervals {
  /** 'open': the records say nothing; u is normal(mean, spread). 'point': a life states u. Otherwise subintervals. */
  kind: 'open' | 'point' | 'subintervals';
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
  /** Where the integrand is looked for: its middle, and the two ends. */
  middle: number;
  low: number;
  high: number;
  /** Start of the unit's rows in the walk's table, −1 where duty is even: then Sxx, slope, SSE and scale change with u. */
  walk: number;
  walkFrom: number;
  /** 1/2σ². */
  half: number;
  firstEdge: number;
  lastEdge: number;
}

export function emptySubintervals(): Subintervals {
  return {
    kind: 'open',
    count: 0,
    cut: new Float64Array(mostSubintervals),
    centre: 0,
    spread: 1,
    height: 0,
    stiffness: 0,
    slope: 0,
    middle: 0,
    low: 0,
    high: 0,
    walk: -1,
    walkFrom: 0,
    half: 0,
    firstEdge: 0,
    lastEdge: 0,
  };
}

export const mostSubintervals = 64;

/** An edge less soft than this is a wall. */
export const wall = 1e-9;

/** The integrand's logarithm without its constants. */
export function logShape(terms: UnitTerms, subintervals: Subintervals, u: number): number {
  const z = (u - subintervals.centre) / subintervals.spread;
  let value = -0.5 * z * z;
  if (subintervals.walk >= 0) {
    value -= readingPart(terms.summary, subintervals, u);
  } else if (subintervals.stiffness > 0) {
    const miss = Math.exp(u) - subintervals.slope;
    value -= subintervals.stiffness * miss * miss;
  }
  if (subintervals.firstEdge < subintervals.lastEdge)
    value += edgesBetween(terms, subintervals.firstEdge, subintervals.lastEdge, u);
  return value;
}

/** ln of edge factors at u. */
export function edgesBetween({ edges }: UnitTerms, from: number, to: number, u: number): number {
  let value = 0;
  for (let e = from; e < to; e++) {
    const lowSoft = edges.lowSoft[e]!;
    const low = edges.low[e]!;
    const high = edges.high[e]!;
    if (lowSoft < wall) {
      if (u < low || u > high) return -Infinity;
      continue;
    }
    const above = (u - low) / lowSoft;
    const below = (u - high) / edges.highSoft[e]!;
    // Well inside an end, what it cuts off is nothing to the last digit.
    const lowCuts = above < 8.3;
    const highCuts = below > -8.3;
    if (lowCuts && highCuts)
      value += edges.shared
        ? logAreaBetweenTabled(below, above)
        : logAreaTabled(above) + logAreaTabled(-below);
    else if (lowCuts) value += logAreaTabled(above);
    else if (highCuts) value += logAreaTabled(-below);
  }
  return value;
}

/** Pool, life and thicknesses alone, with even duty. */
export function evenShape(subintervals: Subintervals, u: number): number {
  const z = (u - subintervals.centre) / subintervals.spread;
  const miss = Math.exp(u) - subintervals.slope;
  return -0.5 * z * z - subintervals.stiffness * miss * miss;
}

let squares = 0;

/** The sum of squares, mm², that the last call of `readingPart` found. */
export function squaresThere(): number {
  return squares;
}

/** What the thicknesses subtract at u where the walk counts; see `squaresThere` for the sum of squares. */
export function readingPart(summary: ReadingSums, subintervals: Subintervals, u: number): number {
  const { table } = summary.walk!; // only called where subintervals.walk ≥ 0, that is, where there is one
  const place = (u - subintervals.walkFrom) / gridStep;
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
  const at = subintervals.walk + 4 * cell;
  const sxx = w0 * table[at]! + w1 * table[at + 4]! + w2 * table[at + 8]! + w3 * table[at + 12]!;
  const slope = w0 * table[at + 1]! + w1 * table[at + 5]! + w2 * table[at + 9]! + w3 * table[at + 13]!;
  const sse = w0 * table[at + 2]! + w1 * table[at + 6]! + w2 * table[at + 10]! + w3 * table[at + 14]!;
  const logScale = w0 * table[at + 3]! + w1 * table[at + 7]! + w2 * table[at + 11]! + w3 * table[at + 15]!;
  const miss = Math.exp(u) - slope;
  squares = sse + sxx * miss * miss;
  return logScale + subintervals.half * squares;
}
