// Where does a unit's integrand have its mass? Subintervals are laid from the middle outwards to where nothing is left, cut at soft edges,
// so that a few Gauss–Legendre nodes on each give all digits; where pool, readings and colours pull apart, the mass is searched for.
// Index arithmetic runs within lengths made here and in reduce.ts, so `!` after an index is safe.

import type { Subintervals, UnitTerms } from './shape.js';
import { evenShape, logShape, mostSubintervals, readingPart, wall } from './shape.js';
import type { ReadingSums } from './summary.js';
import { gridSize } from './summary.js';

/** Subintervals for a unit under pool mean and spread (> 0) and reading error σ (> 0). */
export function laySubintervals(
  terms: UnitTerms,
  unit: number,
  mean: number,
  spread: number,
  error: number,
  subintervals: Subintervals,
): void {
  const { units, summary } = terms;
  const life = units.life[unit]!;
  const known = life === life;
  const firstEdge = (subintervals.firstEdge = units.edgeStart[unit]!);
  const lastEdge = (subintervals.lastEdge = units.edgeStart[unit + 1]!);
  const stiffness = (subintervals.stiffness = summary.sxx[unit]! / (2 * error * error));
  const slope = (subintervals.slope = summary.slope[unit]!);
  subintervals.centre = mean;
  subintervals.spread = spread;
  subintervals.height = 0;
  if (known) {
    const own = units.lifeSpread[unit]!;
    if (own === 0) {
      subintervals.kind = 'point';
      return;
    }
    addNormal(subintervals, life, own);
  }
  const walkFrom = stiffness > 0 && summary.walk ? summary.walk.from[unit]! : NaN;
  subintervals.walk = walkFrom === walkFrom ? 4 * gridSize * unit : -1;
  subintervals.walkFrom = walkFrom;
  subintervals.half = 0.5 / (error * error);
  if (!known && stiffness === 0 && firstEdge === lastEdge) {
    subintervals.kind = 'open';
    return;
  }
  subintervals.kind = 'subintervals';
  if (stiffness > 0) reachByReadings(terms, subintervals);
  else {
    subintervals.middle = subintervals.centre;
    subintervals.low = subintervals.centre - 8 * subintervals.spread;
    subintervals.high = subintervals.centre + 8 * subintervals.spread;
  }
  reachByColours(terms, subintervals);
  if (atOdds(subintervals, slope) || !(subintervals.low < subintervals.high))
    searchedSubintervals(terms, subintervals);
  else cutSubintervals(terms, subintervals);
}

/** Middle and ends where thicknesses count: Newton's way to the top, then out to where nothing is left. */
function reachByReadings({ reach, summary }: UnitTerms, subintervals: Subintervals): void {
  const { centre: c, spread: s, stiffness, slope } = subintervals;
  const rough = roughVariance(stiffness, slope);
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
  const floor = evenShape(subintervals, u) - 0.5 * reach * reach;
  let high = u + reach * width;
  for (let step = 0; step < 3; step++) {
    const e = Math.exp(high);
    const over = evenShape(subintervals, high) - floor;
    const tilt = -(high - c) / (s * s) - 2 * stiffness * e * (e - slope);
    if (over >= 0 || tilt >= 0) break;
    high -= over / tilt;
  }
  let low = u - reach * width;
  for (let step = 0; step < 60 && evenShape(subintervals, low) > floor; step++) low -= width;
  if (subintervals.walk >= 0) [low, high] = walkEnds(summary, subintervals, u, width);
  subintervals.middle = u;
  subintervals.low = low;
  subintervals.high = high;
}

/** Variance of ln rate by the readings alone. */
function roughVariance(stiffness: number, slope: number): number {
  return 1 / (2 * stiffness * slope * slope);
}

/** Each edge of a colour cuts the ends to where its own foot is; where colours are all there is, it pulls the other end out too. */
function reachByColours({ edges }: UnitTerms, subintervals: Subintervals): void {
  const { centre: c, spread: s, stiffness, firstEdge, lastEdge } = subintervals;
  let { low, high } = subintervals;
  for (let e = firstEdge; e < lastEdge; e++) {
    const edgeLow = edges.low[e]!;
    const edgeHigh = edges.high[e]!;
    // How far the rest pulls an edge's own foot: a shift of soft·(distance/spread²), in units of `soft`.
    if (edgeLow > -Infinity) {
      const soft = edges.lowSoft[e]!;
      const pull = Math.max(0, (soft * (edgeLow - c)) / (s * s));
      low = Math.max(low, soft < wall ? edgeLow : edgeLow - soft * (9 + pull));
      if (stiffness === 0) high = Math.max(high, c + Math.sqrt(Math.max(0, edgeLow - c) ** 2 + 64 * s * s));
    }
    if (edgeHigh < Infinity) {
      const soft = edges.highSoft[e]!;
      const pull = Math.max(0, (soft * (c - edgeHigh)) / (s * s));
      high = Math.min(high, soft < wall ? edgeHigh : edgeHigh + soft * (9 + pull));
      if (stiffness === 0) low = Math.min(low, c - Math.sqrt(Math.max(0, c - edgeHigh) ** 2 + 64 * s * s));
    }
  }
  // A second look after both sides moved: an edge may not be wider than what it cuts.
  for (let e = firstEdge; e < lastEdge && stiffness === 0; e++) {
    const up = edges.lowSoft[e]!;
    const down = edges.highSoft[e]!;
    const pullUp = Math.max(0, (up * (edges.low[e]! - c)) / (s * s));
    const pullDown = Math.max(0, (down * (c - edges.high[e]!)) / (s * s));
    if (edges.low[e]! > -Infinity)
      low = Math.max(low, up < wall ? edges.low[e]! : edges.low[e]! - up * (9 + pullUp));
    if (edges.high[e]! < Infinity)
      high = Math.min(high, down < wall ? edges.high[e]! : edges.high[e]! + down * (9 + pullDown));
  }
  subintervals.low = low;
  subintervals.high = high;
}

/** Where readings pull away from the pool, or from the colours, the mass lies in the tail of both, and subintervals from either alone would miss it. */
function atOdds(subintervals: Subintervals, slope: number): boolean {
  const { centre, spread, stiffness, middle, low, high, firstEdge, lastEdge } = subintervals;
  if (stiffness === 0) return false;
  const rough = roughVariance(stiffness, slope);
  if (slope > 0 && rough < 1 && Math.abs(Math.log(slope) - centre) > 6 * Math.max(spread, Math.sqrt(rough)))
    return true;
  if (firstEdge === lastEdge) return false;
  const nearest = Math.min(Math.max(middle, low), high);
  return evenShape(subintervals, nearest) < evenShape(subintervals, middle) - 12;
}

function searchedSubintervals(terms: UnitTerms, subintervals: Subintervals): void {
  const [low, high] = searchMass(terms, subintervals, subintervals.low, subintervals.high);
  subintervals.count = 3;
  for (let k = 0; k <= 3; k++) subintervals.cut[k] = low + ((high - low) * k) / 3;
}

function cutSubintervals({ edges }: UnitTerms, subintervals: Subintervals): void {
  const { low, high, firstEdge, lastEdge } = subintervals;
  subintervals.cut[0] = low;
  let count = 0;
  for (let e = firstEdge; e < lastEdge && count < mostSubintervals - 6; e++) {
    count = cutAround(subintervals, count, edges.low[e]!, edges.lowSoft[e]!, low, high);
    count = cutAround(subintervals, count, edges.high[e]!, edges.highSoft[e]!, low, high);
  }
  subintervals.count = count + 1;
  subintervals.cut[subintervals.count] = high;
}

/** Ends by the sums that change with u: out from the middle until the rest is nothing, however slowly that comes. */
function walkEnds(
  summary: ReadingSums,
  subintervals: Subintervals,
  middle: number,
  width: number,
): [number, number] {
  const value = (u: number): number =>
    -(((u - subintervals.centre) / subintervals.spread) ** 2) / 2 - readingPart(summary, subintervals, u);
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

/** The pool's normal times that of a life. */
function addNormal(subintervals: Subintervals, mean: number, spread: number): void {
  const pool = 1 / (subintervals.spread * subintervals.spread);
  const own = 1 / (spread * spread);
  // Measured from the pool's centre, so that nothing large is subtracted.
  const d = mean - subintervals.centre;
  subintervals.height -= (0.5 * d * d * pool * own) / (pool + own);
  subintervals.centre += (d * own) / (pool + own);
  subintervals.spread = 1 / Math.sqrt(pool + own);
}

/** Subintervals end seven softnesses to either side of an edge, where it is soft enough to be told from a wall and narrow enough to matter. */
function cutAround(
  subintervals: Subintervals,
  count: number,
  edge: number,
  soft: number,
  low: number,
  high: number,
): number {
  if (soft < wall || 14 * soft > high - low) return count;
  for (let side = -7; side <= 7; side += 14) {
    const at = edge + side * soft;
    if (!(at > low && at < high)) continue;
    let place = ++count;
    for (; place > 1 && subintervals.cut[place - 1]! > at; place--)
      subintervals.cut[place] = subintervals.cut[place - 1]!;
    subintervals.cut[place] = at;
  }
  return count;
}

/** Where the integrand has its mass when pool, readings and colours pull apart: a walk over everything, zoomed in. */
function searchMass(
  terms: UnitTerms,
  subintervals: Subintervals,
  low: number,
  high: number,
): [number, number] {
  const c = subintervals.centre;
  const s = subintervals.spread;
  let from = Math.min(low, high, c - 9 * s);
  let to = Math.max(low, high, c + 9 * s);
  if (subintervals.stiffness > 0 && subintervals.slope > 0) {
    from = Math.min(from, Math.log(subintervals.slope) - 1);
    to = Math.max(to, Math.log(subintervals.slope) + 1);
  }
  for (let e = subintervals.firstEdge; e < subintervals.lastEdge; e++) {
    if (terms.edges.low[e]! > -Infinity) to = Math.max(to, terms.edges.low[e]! + 1);
    if (terms.edges.high[e]! < Infinity) from = Math.min(from, terms.edges.high[e]! - 1);
  }
  const points = 65;
  const value = new Float64Array(points);
  for (let zoom = 0; zoom < 12; zoom++) {
    let top = -Infinity;
    for (let i = 0; i < points; i++) {
      const v = (value[i] = logShape(terms, subintervals, from + ((to - from) * i) / (points - 1)));
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
