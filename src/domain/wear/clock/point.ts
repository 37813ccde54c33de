// What is one point's own ln rate, given its conveyor's clock? A density of one variable: the pool's normal, the thicknesses as a
// quadratic in the rate, and the colours' soft edges. Thicknesses alone are near normal, and seven Gauss–Hermite nodes about the mode
// do; with colours the whole stretch where there is mass is walked by Gauss–Legendre.
// Index arithmetic runs within lengths made here and in blocks.ts, so `!` after an index is safe.

import { halfLogTwoPi, logAreaTabled, slopeOfLogArea } from '../numeric/normal.js';
import { gaussLegendre, gaussNormal } from '../numeric/quadrature.js';
import type { Block } from './blocks.js';
import type { Sums } from './sums.js';
import { stateOff } from './sums.js';

const normal = gaussNormal(7);
const few = gaussNormal(5);
const fewest = gaussNormal(3);
/** Narrower than these a point's own rate needs fewer nodes: the wandering duty smooths what lies between. */
const narrow = 0.15;
const narrowest = 0.05;
const legendre = gaussLegendre(40);
export const mostNodes = 40;

export interface PointNodes {
  /** ln of the chance of the point's records, own ln rate integrated out. */
  logEvidence: number;
  count: number;
  /** Own ln rate and share of each node; shares sum to 1. */
  readonly u: Float64Array;
  readonly share: Float64Array;
}

export function emptyPointNodes(): PointNodes {
  return { logEvidence: 0, count: 0, u: new Float64Array(mostNodes), share: new Float64Array(mostNodes) };
}

/** The density's pieces at one clock: ln f(u) = constant + X·r − ½·Y·r² − ½·u²/own + colours, r = e^(u + place). */
interface Density {
  constant: number;
  linear: number;
  square: number;
  own: number;
  place: number;
  edges: number;
  readonly hours: Float64Array;
  readonly depth: Float64Array;
  readonly soft: Float64Array;
  readonly side: Float64Array;
}

const scratch: Density = {
  constant: 0,
  linear: 0,
  square: 0,
  own: 1,
  place: 0,
  edges: 0,
  hours: new Float64Array(64),
  depth: new Float64Array(64),
  soft: new Float64Array(64),
  side: new Float64Array(64),
};

/** @param pace e^(ln pace) of each stretch. @param start about where u is. */
export function pointGiven(
  block: Block,
  sums: Sums,
  v: Float64Array,
  pace: Float64Array,
  unit: number,
  start: number,
  out: PointNodes,
): void {
  const density = densityOf(block, sums, v, pace, unit);
  if (density.square === 0 && density.edges === 0) {
    openNodes(density, out);
    return;
  }
  const { at, bend } = modeOf(density, start);
  const spread = 1 / Math.sqrt(bend);
  if (density.edges === 0 || nearNormal(density, at, spread)) hermiteNodes(density, at, spread, out);
  else legendreNodes(density, at, bend, out);
}

/** Thicknesses hold the rate, and every colour edge is either far off or softer than what is left open: as good as normal. */
function nearNormal(d: Density, at: number, spread: number): boolean {
  if (d.square === 0 || spread > narrow) return false;
  const rate = Math.exp(at + d.place);
  for (let e = 0; e < d.edges; e++) {
    const wear = rate * d.hours[e]!;
    const z = (d.side[e]! * (wear - d.depth[e]!)) / d.soft[e]!;
    const reach = (spread * wear) / d.soft[e]!;
    if (reach > 1 && z < 4 + 4 * reach) return false;
  }
  return true;
}

export function placeTerm(block: Block, v: Float64Array, unit: number): number {
  let sum = block.prior.mean[unit]!;
  const first = block.stretches + block.biases;
  for (let q = 0; q < block.width; q++) sum += v[first + q]! * block.place[unit * block.width + q]!;
  return sum;
}

function densityOf(block: Block, sums: Sums, v: Float64Array, pace: Float64Array, unit: number): Density {
  const { stretches: m, biases: l } = block;
  const d = scratch;
  d.place = placeTerm(block, v, unit);
  d.own = sums.theta.spread ** 2 * block.prior.share[unit]!;
  let misfit = sums.ww[unit]!;
  d.linear = 0;
  d.square = 0;
  for (let j = 0; j < m; j++) {
    const g = pace[j]!;
    let q = 0;
    const row = (unit * m + j) * m;
    for (let k = 0; k < m; k++) q += sums.hh[row + k]! * pace[k]!;
    let b = 0;
    const other = (unit * m + j) * l;
    for (let k = 0; k < l; k++) b += sums.hl[other + k]! * v[m + k]!;
    d.square += g * q;
    d.linear += g * (sums.hw[unit * m + j]! - b);
  }
  for (let a = 0; a < l; a++) {
    let there = 0;
    const row = (unit * l + a) * l;
    for (let b = 0; b < l; b++) there += sums.ll[row + b]! * v[m + b]!;
    misfit += v[m + a]! * (there - 2 * sums.lw[unit * l + a]!);
  }
  d.constant = sums.constant[unit]! - 0.5 * misfit - 0.5 * Math.log(d.own) - halfLogTwoPi;
  d.edges = 0;
  const off = stateOff(block, sums, v, unit);
  for (let e = block.edgeStart[unit]!; e < block.edgeStart[unit + 1]! && d.edges < 64; e++) {
    let hours = 0;
    for (let j = 0; j < m; j++) hours += pace[j]! * sums.edgeHours[e * m + j]!;
    if (!(hours > 0)) continue;
    d.hours[d.edges] = hours;
    d.depth[d.edges] = block.edgeDepth[e]! - (sums.edgeFrom[e] === 1 ? off : 0);
    d.soft[d.edges] = Math.max(sums.edgeSoft[e]!, 1e-4 * block.edgeDepth[e]!);
    d.side[d.edges] = block.edgeSide[e]!;
    d.edges++;
  }
  return d;
}

function logAt(d: Density, u: number): number {
  const rate = Math.exp(u + d.place);
  let log = d.constant + rate * (d.linear - 0.5 * rate * d.square) - (0.5 * u * u) / d.own;
  for (let e = 0; e < d.edges; e++)
    log += logAreaTabled((d.side[e]! * (rate * d.hours[e]! - d.depth[e]!)) / d.soft[e]!);
  return log;
}

function modeOf(d: Density, start: number): { readonly at: number; readonly bend: number } {
  let u = start;
  let bend = 1 / d.own;
  for (let step = 0; step < 40; step++) {
    const rate = Math.exp(u + d.place);
    let slope = rate * (d.linear - rate * d.square) - u / d.own;
    bend = rate * rate * d.square + 1 / d.own;
    for (let e = 0; e < d.edges; e++) {
      const wear = rate * d.hours[e]!;
      const z = (d.side[e]! * (wear - d.depth[e]!)) / d.soft[e]!;
      const lambda = slopeOfLogArea(z);
      slope += (d.side[e]! * lambda * wear) / d.soft[e]!;
      bend += (lambda * (z + lambda) * wear * wear) / (d.soft[e]! * d.soft[e]!);
    }
    const move = Math.max(-1, Math.min(1, slope / bend));
    u += move;
    if (Math.abs(move) * Math.sqrt(bend) < 1e-3) break;
  }
  // True curvature where it is sound: the quadratic in the rate bends a little more or less than its expectation.
  const rate = Math.exp(u + d.place);
  const sharp = bend + rate * (rate * d.square - d.linear);
  return { at: u, bend: sharp > 0.3 * bend ? sharp : bend };
}

function openNodes(d: Density, out: PointNodes): void {
  const spread = Math.sqrt(d.own);
  out.count = normal.node.length;
  for (let k = 0; k < out.count; k++) {
    out.u[k] = spread * normal.node[k]!;
    out.share[k] = normal.weight[k]!;
  }
  out.logEvidence = d.constant + 0.5 * Math.log(d.own) + halfLogTwoPi;
}

function hermiteNodes(d: Density, at: number, spread: number, out: PointNodes): void {
  // A soft edge asks for two nodes more.
  const rule =
    spread < narrowest ? (d.edges > 0 ? few : fewest) : spread < narrow && d.edges === 0 ? few : normal;
  out.count = rule.node.length;
  let top = -Infinity;
  for (let k = 0; k < out.count; k++) {
    const x = rule.node[k]!;
    out.u[k] = at + spread * x;
    const log = logAt(d, out.u[k]!) + 0.5 * x * x + Math.log(rule.weight[k]!);
    out.share[k] = log;
    if (log > top) top = log;
  }
  finish(out, top, Math.log(spread) + halfLogTwoPi);
}

function legendreNodes(d: Density, at: number, bend: number, out: PointNodes): void {
  const spread = Math.sqrt(d.own);
  let low = Math.min(-6 * spread, at - 2 * spread);
  let high = Math.max(6 * spread, at + 2 * spread);
  if (d.square > 0) {
    const tight = 1 / Math.sqrt(bend);
    low = Math.max(low, at - 9 * Math.max(tight, 0.02));
    high = Math.min(high, at + 9 * Math.max(tight, 0.02));
  }
  for (let e = 0; e < d.edges; e++) {
    const least = d.depth[e]! - 8 * d.soft[e]!;
    const most = d.depth[e]! + 8 * d.soft[e]!;
    if (d.side[e]! > 0 && least > 0)
      low = Math.max(low, Math.min(at - 0.05, Math.log(least / d.hours[e]!) - d.place));
    if (d.side[e]! < 0 && most > 0)
      high = Math.min(high, Math.max(at + 0.05, Math.log(most / d.hours[e]!) - d.place));
  }
  const half = 0.5 * (high - low);
  out.count = legendre.node.length;
  let top = -Infinity;
  for (let k = 0; k < out.count; k++) {
    out.u[k] = low + half * (1 + legendre.node[k]!);
    const log = logAt(d, out.u[k]!) + Math.log(legendre.weight[k]!);
    out.share[k] = log;
    if (log > top) top = log;
  }
  finish(out, top, Math.log(half));
  dropEmpty(out);
}

/** Nodes that hold next to nothing go: every forecast walks all that are left. */
function dropEmpty(out: PointNodes): void {
  let kept = 0;
  for (let k = 0; k < out.count; k++) {
    if (out.share[k]! < 1e-8) continue;
    out.u[kept] = out.u[k]!;
    out.share[kept++] = out.share[k]!;
  }
  out.count = kept;
}

function finish(out: PointNodes, top: number, scale: number): void {
  let sum = 0;
  for (let k = 0; k < out.count; k++) sum += out.share[k] = Math.exp(out.share[k]! - top);
  for (let k = 0; k < out.count; k++) out.share[k]! /= sum;
  out.logEvidence = top + Math.log(sum) + scale;
}
