// What does the density of a unit's ln rate say? Areas and means over it, and the chance that the wear has reached a depth by an
// exposure. The density is a polynomial on each of its subintervals, so an area is an integral good to about 1e-8 and costs next to nothing:
// forecasts find their quantiles on it by root-finding. Index arithmetic runs within lengths made here, so `!` after an index is safe.

import { areaTabled } from '../numeric/normal.js';
import { gaussLegendre } from '../numeric/quadrature.js';

/** Nodes of each subinterval, and the number of its polynomial's coefficients. */
export const order = 10;
const rule = gaussLegendre(order);

/** Density of u as a share of 1, with what a path forecast needs beside u. */
export interface RateTable {
  readonly share: number;
  readonly mean: number;
  readonly spread: number;
  readonly cut: Float64Array;
  readonly mass: Float64Array;
  /** Polynomial of each subinterval's density on its own −1 to 1, constant first. */
  readonly density: Float64Array;
  /** Weight of each node (they sum to 1) and the rate there, mm per unit of exposure: for what is smooth over a subinterval. */
  readonly nodeWeight: Float64Array;
  readonly nodeRate: Float64Array;
  /** ψ², σ², and the state at the last thickness (see Summary). */
  readonly dutyVariance: number;
  readonly stateWear: number;
  readonly stateExposure: number;
  readonly stateVariance: number;
  readonly at: number;
}

/** ∫ density·step(eᵘ) between two places of one subinterval. */
function integrateSubinterval(
  table: RateTable,
  subinterval: number,
  from: number,
  to: number,
  step: ((rate: number) => number) | undefined,
): number {
  const low = table.cut[subinterval]!;
  const high = table.cut[subinterval + 1]!;
  const half = 0.5 * (to - from);
  const middle = 0.5 * (to + from);
  const base = subinterval * order;
  const { density } = table;
  let sum = 0;
  for (let i = 0; i < order; i++) {
    const u = middle + half * rule.node[i]!;
    const place = (2 * u - low - high) / (high - low);
    let p = density[base + order - 1]!;
    for (let power = order - 2; power >= 0; power--) p = p * place + density[base + power]!;
    sum += rule.weight[i]! * (step ? p * step(Math.exp(u)) : p);
  }
  return sum * half;
}

/** P(u ≥ c). */
export function chanceAbove(table: RateTable, c: number): number {
  const subintervals = table.mass.length;
  let sum = 0;
  for (let k = subintervals - 1; k >= 0; k--) {
    if (table.cut[k]! >= c) sum += table.mass[k]!;
    else {
      if (table.cut[k + 1]! > c) sum += integrateSubinterval(table, k, c, table.cut[k + 1]!, undefined);
      break;
    }
  }
  return clamp(sum);
}

/** Mean of a soft upward step of the rate, centred at ln rate `centre` with width `width`: taken as 0 and 1 beyond six widths. */
export function meanOfStep(
  table: RateTable,
  centre: number,
  width: number,
  step: (rate: number) => number,
): number {
  if (!(width > 1e-7)) return chanceAbove(table, centre);
  const subintervals = table.mass.length;
  const low = centre - 6 * width;
  const high = centre + 6 * width;
  let sum = 0;
  for (let k = 0; k < subintervals; k++) {
    const from = table.cut[k]!;
    const to = table.cut[k + 1]!;
    if (to <= low) continue;
    if (from >= high) {
      sum += table.mass[k]!;
      continue;
    }
    if (to - from <= 4 * width) {
      for (let at = k * order; at < (k + 1) * order; at++)
        sum += table.nodeWeight[at]! * step(table.nodeRate[at]!);
      continue;
    }
    let a = Math.max(from, low);
    const end = Math.min(to, high);
    const pieces = Math.max(1, Math.ceil((end - a) / (4 * width)));
    for (let piece = 0; piece < pieces; piece++) {
      const b = piece === pieces - 1 ? end : a + (end - a) / (pieces - piece);
      sum += integrateSubinterval(table, k, a, b, step);
      a = b;
    }
    if (to > high) sum += integrateSubinterval(table, k, high, to, undefined);
  }
  return clamp(sum);
}

function clamp(p: number): number {
  return p < 0 ? 0 : p > 1 ? 1 : p;
}

/**
 * Chance that the wear has reached `depth` (mm) by an exposure, by one table. `depthSpread`: one standard deviation of the depth, mm.
 * Between the last thickness and later exposures the path wanders on; before it, the path is drawn straight to the state there.
 */
export function chanceReached(
  table: RateTable,
  depth: number,
  exposure: number,
  depthSpread: number,
): number {
  if (!(exposure > 0)) return 0;
  const { at } = table;
  let wear: number;
  let lever: number;
  let fixed: number;
  let walk: number;
  if (exposure >= at) {
    wear = table.stateWear;
    lever = table.stateExposure + exposure - at;
    fixed = table.stateVariance;
    walk = table.dutyVariance * (exposure - at);
  } else {
    const share = exposure / at;
    wear = table.stateWear * share;
    lever = table.stateExposure * share;
    fixed = table.stateVariance * share * share;
    walk = table.dutyVariance * exposure * (1 - share);
  }
  fixed += depthSpread * depthSpread;
  const left = depth - wear;
  if (!(lever > 0)) return left <= 0 ? 1 : 0;
  if (left <= 0 && fixed === 0) return 1;
  const steady = left > 0 ? left / lever : 0;
  // Width of the step on ln rate about its centre.
  const rate = Math.max(steady, 1e-3 * Math.exp(table.mean));
  const deviation = Math.sqrt(fixed + rate * rate * walk);
  const width = deviation / (rate * lever);
  const step = (r: number): number => areaTabled((r * lever - left) / Math.sqrt(fixed + r * r * walk));
  if (left <= 0 || width > 1) return wholeMean(table, step);
  return meanOfStep(table, Math.log(steady), width * 1.3, step);
}

function wholeMean(table: RateTable, step: (rate: number) => number): number {
  let sum = 0;
  for (let at = 0; at < table.nodeWeight.length; at++)
    sum += table.nodeWeight[at]! * step(table.nodeRate[at]!);
  return clamp(sum);
}
