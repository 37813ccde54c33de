// Where do the colours put the edges on a unit's ln rate, and how soft are they? With even duty a depth h not yet reached at exposure
// x says u < ln(h/x), softened by the layer's tolerance. With uneven duty the wear at x has wandered, and the unit's thicknesses tell
// where to: the wear expected there is a + rate·c with some variance, found by smoothing the walk between the thicknesses before and
// after (two filters meeting at x; Durbin & Koopman 2012, section 4.4). What two colours of a unit share of the wandering is left out.
// Index arithmetic runs within lengths made here and in reduce.ts, so `!` after an index is safe.

import type { Units } from '../reduce.js';

export interface Edges {
  /** ln rate below which, and above which, each edge is unlikely; −Infinity and Infinity where it does not bound. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** One standard deviation of each. */
  readonly lowSoft: Float64Array;
  readonly highSoft: Float64Array;
  /** The two sides of a depth share its tolerance: the depth itself is what is soft. Otherwise each side is soft by itself. */
  readonly shared: boolean;
}

export interface DutyWalk {
  /** (ψ/σ)² and σ, mm. */
  readonly ratio: number;
  readonly error: number;
  /** About what each unit's rate is. */
  readonly rate: Float64Array;
  /** Of each thickness row. */
  readonly weight: Float64Array;
}

export function edgesOf(units: Units, walk: DutyWalk | undefined): Edges {
  const total = units.edgeDepth.length;
  const edges: Edges = {
    low: new Float64Array(total).fill(-Infinity),
    high: new Float64Array(total).fill(Infinity),
    lowSoft: new Float64Array(total),
    highSoft: new Float64Array(total),
    shared: walk === undefined,
  };
  for (let unit = 0; unit < units.count; unit++) {
    for (let e = units.edgeStart[unit]!; e < units.edgeStart[unit + 1]!; e++) {
      const depth = units.edgeDepth[e]!;
      const tolerance = units.edgeTolerance[e]!;
      const reached = units.edgeReached[e]!;
      const notYet = units.edgeNotYet[e]!;
      edges.lowSoft[e] = edges.highSoft[e] = tolerance;
      if (reached < Infinity)
        [edges.low[e], edges.lowSoft[e]] = edgeAt(units, unit, depth, tolerance, reached, walk);
      if (notYet > 0)
        [edges.high[e], edges.highSoft[e]] = edgeAt(units, unit, depth, tolerance, notYet, walk);
    }
  }
  return edges;
}

function edgeAt(
  units: Units,
  unit: number,
  depth: number,
  tolerance: number,
  exposure: number,
  walk: DutyWalk | undefined,
): [number, number] {
  if (!walk) return [Math.log(depth / exposure), tolerance];
  const state = smoothAt(units, unit, exposure, walk);
  // A path that has wandered by almost the whole depth says little of the rate; keep the edge where it can be written.
  const left = Math.max(depth - state.wear, 0.1 * depth);
  const spread = Math.sqrt(state.variance * walk.error * walk.error + (tolerance * depth) ** 2);
  return [Math.log(left / state.exposure), spread / left];
}

/** Wear at an exposure, given the unit's thicknesses: wear + rate·exposure, variance in units of σ². */
function smoothAt(
  units: Units,
  unit: number,
  exposure: number,
  { ratio, rate, weight }: DutyWalk,
): { readonly wear: number; readonly exposure: number; readonly variance: number } {
  const step = ratio * rate[unit]! * rate[unit]!;
  const first = units.start[unit]!;
  const end = units.start[unit + 1]!;
  // Deviation from the line by the thicknesses before: it starts at nothing when the liner is fitted.
  let variance = 0;
  let y = 0;
  let x = 0;
  let place = 0;
  let at = first;
  for (; at < end && units.exposure[at]! <= exposure; at++) {
    variance += step * (units.exposure[at]! - place);
    place = units.exposure[at]!;
    const gain = variance / (variance + noiseOf(units, at) / Math.max(weight[at]!, 1e-9));
    y += gain * (units.wear[at]! - y);
    x += gain * (place - x);
    variance *= 1 - gain;
  }
  variance += step * (exposure - place);
  // And by those after, from the last back to here.
  if (at < end) {
    let backVariance = Infinity;
    let backY = 0;
    let backX = 0;
    let from = units.exposure[end - 1]!;
    for (let back = end - 1; back >= at; back--) {
      const noise = noiseOf(units, back) / Math.max(weight[back]!, 1e-9);
      const here = units.exposure[back]!;
      if (backVariance === Infinity) {
        backVariance = noise;
        backY = units.wear[back]!;
        backX = here;
      } else {
        backVariance += step * (from - here);
        const gain = backVariance / (backVariance + noise);
        backY += gain * (units.wear[back]! - backY);
        backX += gain * (here - backX);
        backVariance *= 1 - gain;
      }
      from = here;
    }
    backVariance += step * (from - exposure);
    const gain = variance / (variance + backVariance);
    y += gain * (backY - y);
    x += gain * (backX - x);
    variance *= 1 - gain;
  }
  return { wear: y, exposure: Math.max(exposure - x, 0.02 * exposure), variance };
}

function noiseOf({ noise }: Units, at: number): number {
  return noise ? noise[at]! : 1;
}
