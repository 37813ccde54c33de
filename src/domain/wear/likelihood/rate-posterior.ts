// What is a unit's ln rate u, given its records and its pool, parameters uncertain? The mixture over the fit's parameter values, put
// into a table. One table for each duty-noise value in the fit, since that changes what the last reading says.
// Index arithmetic runs within lengths made here, so `!` after an index is safe.

import { gaussLegendre } from '../numeric/quadrature.js';
import { laySubintervals } from './subintervals.js';
import type { ParameterNode } from './parameter-nodes.js';
import type { RateTable } from './rate-table.js';
import { order } from './rate-table.js';
import { emptySubintervals, logShape } from './shape.js';
import { integrate } from './unit-integral.js';

const rule = gaussLegendre(order);
const basis = lagrangeCoefficients(rule.node);

/** Row i: coefficients, constant first, of the polynomial that is 1 at node i and 0 at the others. */
function lagrangeCoefficients(node: Float64Array): Float64Array {
  const rows = new Float64Array(order * order);
  for (let i = 0; i < order; i++) {
    let row = [1];
    for (let j = 0; j < order; j++) {
      if (j === i) continue;
      const over = node[i]! - node[j]!;
      const next = new Array<number>(row.length + 1).fill(0);
      row.forEach((c, k) => {
        next[k]! -= (c * node[j]!) / over;
        next[k + 1]! += c / over;
      });
      row = next;
    }
    rows.set(row, i * order);
  }
  return rows;
}

export function rateTables(nodes: readonly ParameterNode[], unit: number): readonly RateTable[] {
  return groupsOf(nodes, (node) => node.terms).map((group) => tableOf(group, unit));
}

/** One table for each spread between units as well: given that, units differ by chance and by the pool's level only. */
export function tablesBySpread(
  groups: readonly (readonly ParameterNode[])[],
  unit: number,
): readonly RateTable[] {
  return groups.map((group) => tableOf(group, unit));
}

export function groupsBySpread(nodes: readonly ParameterNode[]): readonly (readonly ParameterNode[])[] {
  return groupsOf(nodes, (node) => node.terms).flatMap((group) => groupsOf(group, (node) => node.spread));
}

function groupsOf<Key>(
  nodes: readonly ParameterNode[],
  key: (node: ParameterNode) => Key,
): readonly (readonly ParameterNode[])[] {
  const groups = new Map<Key, ParameterNode[]>();
  for (const node of nodes) {
    const group = groups.get(key(node));
    if (group) group.push(node);
    else groups.set(key(node), [node]);
  }
  return [...groups.values()];
}

interface Part {
  readonly node: ParameterNode;
  readonly kind: 'open' | 'point' | 'subintervals';
  readonly mean: number;
  readonly spread: number;
  readonly log: number;
  readonly subintervals: ReturnType<typeof emptySubintervals>;
}

function tableOf(group: readonly ParameterNode[], unit: number): RateTable {
  const share = group.reduce((sum, node) => sum + node.weight, 0);
  const first = group[0]!; // groups are never empty
  const { units, summary } = first.terms;
  let low = Infinity;
  let high = -Infinity;
  const cuts: number[] = [];
  const parts: Part[] = group.map((node) => {
    const subintervals = emptySubintervals();
    const mean = node.priorMean[unit]!;
    const spread = Math.sqrt(node.priorVariance[unit]!);
    laySubintervals(node.terms, unit, mean, spread, node.error, subintervals);
    if (subintervals.kind === 'subintervals') {
      low = Math.min(low, subintervals.cut[0]!);
      high = Math.max(high, subintervals.cut[subintervals.count]!);
      for (let k = 1; k < subintervals.count; k++) cuts.push(subintervals.cut[k]!);
      return {
        node,
        kind: 'subintervals',
        mean,
        spread,
        log: integrate(node.terms, subintervals),
        subintervals,
      };
    }
    const centre = subintervals.kind === 'point' ? units.life[unit]! : mean;
    const width = subintervals.kind === 'point' ? pointWidth : spread;
    low = Math.min(low, centre - 8 * width);
    high = Math.max(high, centre + 8 * width);
    return { node, kind: subintervals.kind, mean: centre, spread: width, log: 0, subintervals };
  });
  const density = (u: number): number => {
    let sum = 0;
    for (const part of parts) {
      if (part.kind === 'subintervals') {
        if (u < part.subintervals.cut[0]! || u > part.subintervals.cut[part.subintervals.count]!) continue;
        sum += part.node.weight * Math.exp(logShape(part.node.terms, part.subintervals, u) - part.log);
      } else {
        const z = (u - part.mean) / part.spread;
        sum += (part.node.weight * Math.exp(-0.5 * z * z)) / (part.spread * 2.5066282746310002);
      }
    }
    return sum / share;
  };
  const hardCuts: number[] = [];
  for (let e = units.edgeStart[unit]!; e < units.edgeStart[unit + 1]!; e++) {
    const { edges } = first.terms;
    for (const [centre, soft] of [
      [edges.low[e]!, edges.lowSoft[e]!],
      [edges.high[e]!, edges.highSoft[e]!],
    ] as const) {
      if (!Number.isFinite(centre)) continue;
      if (soft < 1e-9) hardCuts.push(centre);
      else for (const side of [-4, 0, 4]) hardCuts.push(centre + side * soft);
    }
  }
  [low, high] = trim(density, low, high);
  const cut = subintervalCuts(low, high, hardCuts);
  const table = fill(density, cut);
  const factor = group.length === 1 && first.widen ? first.widen[unit]! : 1;
  const stretched = withNodes(stretch(table, factor));
  return {
    share,
    ...stretched,
    dutyVariance: group.reduce((sum, node) => sum + node.weight * node.dutyNoise ** 2, 0) / share,
    stateWear: summary.stateWear[unit]!,
    stateExposure: summary.stateExposure[unit]!,
    stateVariance:
      (summary.stateVariance[unit]! * group.reduce((sum, node) => sum + node.weight * node.error ** 2, 0)) /
      share,
    at: units.start[unit + 1]! > units.start[unit]! ? units.exposure[units.start[unit + 1]! - 1]! : 0,
  };
}

const pointWidth = 1e-6;

/** Leaves out what holds less than about 1e-10 of the mass at either end. */
function trim(density: (u: number) => number, low: number, high: number): [number, number] {
  const points = 48;
  for (let pass = 0; pass < 4; pass++) {
    const value = Array.from({ length: points + 1 }, (_, i) => density(low + ((high - low) * i) / points));
    const top = Math.max(...value);
    let first = 0;
    let last = points;
    while (first < last && value[first]! < 1e-10 * top) first++;
    while (last > first && value[last]! < 1e-10 * top) last--;
    const step = (high - low) / points;
    const narrower: [number, number] = [
      low + step * Math.max(0, first - 1),
      low + step * Math.min(points, last + 1),
    ];
    const enough = narrower[1] - narrower[0] > 0.3 * (high - low);
    [low, high] = narrower;
    if (enough) break;
  }
  return [low, high];
}

function subintervalCuts(low: number, high: number, wanted: readonly number[]): Float64Array {
  const even = 12;
  const all = Array.from({ length: even + 1 }, (_, i) => low + ((high - low) * i) / even);
  for (const at of wanted) if (at > low && at < high) all.push(at);
  all.sort((a, b) => a - b);
  const least = 1e-9 * (high - low);
  return Float64Array.from(all.filter((at, i) => i === 0 || at - all[i - 1]! > least));
}

interface Filled {
  readonly cut: Float64Array;
  readonly mass: Float64Array;
  readonly density: Float64Array;
  readonly mean: number;
  readonly spread: number;
}

function fill(density: (u: number) => number, cut: Float64Array): Filled {
  const subintervals = cut.length - 1;
  const values = new Float64Array(subintervals * order);
  const mass = new Float64Array(subintervals);
  let total = 0;
  let m1 = 0;
  let m2 = 0;
  const origin = cut[0]!;
  for (let k = 0; k < subintervals; k++) {
    const half = 0.5 * (cut[k + 1]! - cut[k]!);
    const middle = 0.5 * (cut[k + 1]! + cut[k]!);
    let sum = 0;
    for (let i = 0; i < order; i++) {
      const u = middle + half * rule.node[i]!;
      const value = (values[k * order + i] = density(u));
      const w = half * rule.weight[i]! * value;
      sum += w;
      m1 += w * (u - origin);
      m2 += w * (u - origin) ** 2;
    }
    mass[k] = sum;
    total += sum;
  }
  for (let k = 0; k < subintervals; k++) mass[k]! /= total;
  const coefficients = new Float64Array(subintervals * order);
  for (let k = 0; k < subintervals; k++) {
    for (let i = 0; i < order; i++) {
      const value = values[k * order + i]! / total;
      for (let power = 0; power < order; power++)
        coefficients[k * order + power]! += value * basis[i * order + power]!;
    }
  }
  m1 /= total;
  m2 /= total;
  return {
    cut,
    mass,
    density: coefficients,
    mean: origin + m1,
    spread: Math.sqrt(Math.max(m2 - m1 * m1, 0)),
  };
}

/** The same density, drawn out about its mean. */
function stretch(table: Filled, factor: number): Filled {
  if (factor === 1) return table;
  return {
    ...table,
    cut: table.cut.map((u) => table.mean + (u - table.mean) * factor),
    density: table.density.map((p) => p / factor),
    spread: table.spread * factor,
  };
}

function withNodes(
  table: Filled,
): Filled & { readonly nodeWeight: Float64Array; readonly nodeRate: Float64Array } {
  const subintervals = table.mass.length;
  const nodeWeight = new Float64Array(subintervals * order);
  const nodeRate = new Float64Array(subintervals * order);
  for (let k = 0; k < subintervals; k++) {
    const half = 0.5 * (table.cut[k + 1]! - table.cut[k]!);
    const middle = 0.5 * (table.cut[k + 1]! + table.cut[k]!);
    for (let i = 0; i < order; i++) {
      const at = k * order + i;
      const place = rule.node[i]!;
      let p = table.density[k * order + order - 1]!;
      for (let power = order - 2; power >= 0; power--) p = p * place + table.density[k * order + power]!;
      nodeWeight[at] = half * rule.weight[i]! * p;
      nodeRate[at] = Math.exp(middle + half * place);
    }
  }
  return { ...table, nodeWeight, nodeRate };
}
