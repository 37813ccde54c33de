// How does ignorance of the parameters enter a forecast? As a short list of parameter values with weights. Few units: a grid over
// (ln τ, ln σ, and ln of the duty noise where it is estimated), weighed by likelihood and weak priors. Many units: the mode alone,
// and each unit's spread widened by Kass & Steffey (1989, J. Am. Stat. Assoc. 84, 717): V + cᵀ·I⁻¹·c, c = Cov(u, score).
// In both, the general level and the offsets are left open: a unit sees the pool as all the OTHER units leave it (its own share
// taken out again), with that uncertainty in the spread of its ln rate.
// Index arithmetic runs within lengths made here and in design.ts, so `!` after an index is safe.

import type { Design, Solved, System } from './design.js';
import { effectVariance, solveSystem } from './design.js';
import type { Mode } from './mode.js';
import { findMode } from './mode.js';
import type { UnitTerms } from './shape.js';
import { emptySubintervals } from './shape.js';
import { emptyMoments, unitMoments } from './unit-integral.js';
import type { Parameters, Pass, Priors } from './parameters.js';

export interface ParameterNode {
  readonly weight: number;
  /** τ, σ (mm), and ψ: duty noise, √exposure. */
  readonly spread: number;
  readonly error: number;
  readonly dutyNoise: number;
  readonly terms: UnitTerms;
  /** What the pool says of each unit's ln rate before its own records: mean and variance, parameters left open. */
  readonly priorMean: Float64Array;
  readonly priorVariance: Float64Array;
  /** Factor on the spread of u about its mean, for parameters not integrated. */
  readonly widen: Float64Array | undefined;
  /** Pool mean of each unit with all records in, and what is needed for the covariance between two of them. */
  readonly mean: Float64Array;
  readonly system: System;
  readonly solved: Solved;
}

const widestVariance = 1e4;
const leastWeight = 3e-4; // of a grid value; what is left out is shared among the rest

/** One node from a pass at given parameters; undefined where the effects are not determined. */
export function nodeFrom(
  terms: UnitTerms,
  design: Design,
  pass: Pass,
  weight: number,
  dutyNoise: number,
): ParameterNode | undefined {
  const { effectsOnly: solved, system } = pass;
  if (!solved) return undefined;
  const { count } = terms.units;
  const spread = Math.exp(pass.parameters.logSpread);
  const priorMean = new Float64Array(count);
  const priorVariance = new Float64Array(count);
  const cellVariance = design.cellUnit.map((unit) => effectVariance(design, system, solved, unit));
  for (let unit = 0; unit < count; unit++) {
    const v = cellVariance[design.cell[unit]!]!;
    const rest = Math.max(1 - v * Math.max(0, pass.information[unit]!), 1e-6);
    const others = Math.min(v / rest, widestVariance);
    priorMean[unit] = pass.mean[unit]! - others * pass.score[unit]!;
    priorVariance[unit] = spread * spread + others;
  }
  return {
    weight,
    spread,
    error: Math.exp(pass.parameters.logError),
    dutyNoise,
    terms,
    priorMean,
    priorVariance,
    widen: undefined,
    mean: pass.mean,
    system,
    solved,
  };
}

/** The mode with the effects fixed at it: for comparison with other programs only, never for a report. */
export function plugInNode(node: ParameterNode): ParameterNode {
  return {
    ...node,
    priorMean: node.mean,
    priorVariance: new Float64Array(node.mean.length).fill(node.spread * node.spread),
  };
}

/** Kass–Steffey factor of every unit for ln τ and ln σ. */
function widened(node: ParameterNode, design: Design, full: System): ParameterNode {
  const solved = solveSystem(full, full.size);
  if (!solved) return node;
  const t = design.dense;
  const s = t + 1;
  const { size, inverse } = solved;
  const vtt = inverse[t * size + t]!;
  const vts = inverse[t * size + s]!;
  const vss = inverse[s * size + s]!;
  const { units } = node.terms;
  const widen = new Float64Array(units.count).fill(1);
  const subintervals = emptySubintervals();
  const m = emptyMoments();
  for (let unit = 0; unit < units.count; unit++) {
    const scale = Math.sqrt(node.priorVariance[unit]!);
    unitMoments(node.terms, unit, node.priorMean[unit]!, scale, node.error, subintervals, m);
    if (subintervals.kind === 'point') continue;
    const variance = m.r2 - m.r1 * m.r1;
    const ct = (m.r3 - m.r1 * m.r2) / (node.spread * node.spread);
    const cs = m.rq - m.r1 * m.q1;
    const extra = ct * ct * vtt + 2 * ct * cs * vts + cs * cs * vss;
    if (variance > 0 && extra > 0) widen[unit] = Math.sqrt(1 + Math.min(extra / variance, 3));
  }
  return { ...node, widen };
}

export interface RatioCandidate {
  /** (ψ/σ)². */
  readonly ratio: number;
  readonly terms: UnitTerms;
  /** The mode at this ratio where it is known. */
  readonly mode: Mode | undefined;
  /** Priors of its own, where the ratio fixes the reading error. */
  readonly priors?: Priors;
  /** Share of the weight that this ratio stands for, 0 to 1. */
  readonly share: number;
}

/** One node for each value of the duty noise, at its own mode, widened. */
export function modeNodes(
  candidates: readonly RatioCandidate[],
  design: Design,
  priors: Priors,
  start: Mode,
): readonly ParameterNode[] {
  return candidates.flatMap((candidate) => {
    const mode =
      candidate.mode ??
      findMode(
        candidate.terms,
        design,
        candidate.priors ?? priors,
        start.pass.parameters,
        { spreads: true, near: 1e-6 },
        25,
      );
    const node = nodeFrom(
      candidate.terms,
      design,
      mode.pass,
      candidate.share,
      Math.sqrt(candidate.ratio) * Math.exp(mode.pass.parameters.logError),
    );
    return node ? [widened(node, design, mode.pass.system)] : [];
  });
}

/** The grid. `start` is the mode of the middle candidate. */
export function gridNodes(
  candidates: readonly RatioCandidate[],
  design: Design,
  priors: Priors,
  start: Parameters,
): readonly ParameterNode[] {
  const all: ParameterNode[] = [];
  const fine = candidates.length === 1;
  const step = fine ? 1 : 1.25;
  const reach = fine ? 3 : 2;
  for (const candidate of candidates) {
    const ownPriors = candidate.priors ?? priors;
    const mode =
      candidate.mode ??
      findMode(candidate.terms, design, ownPriors, start, { spreads: true, near: 1e-6 }, 25);
    const full = solveSystem(mode.pass.system, mode.pass.system.size);
    if (!full) continue;
    const t = design.dense;
    const vtt = full.inverse[t * full.size + t]!;
    const vts = full.inverse[t * full.size + t + 1]!;
    const vss = full.inverse[(t + 1) * full.size + t + 1]!;
    const a = Math.sqrt(vtt);
    const b = vts / a;
    const c = Math.sqrt(Math.max(vss - b * b, 1e-12));
    const nodes: { node: ParameterNode; log: number }[] = [];
    let parameters = mode.pass.parameters;
    for (let i = -reach; i <= reach; i++) {
      const across = c < 0.01 ? 0 : reach; // σ is held: nothing to walk across
      for (let k = -across; k <= across; k++) {
        const z1 = step * i;
        const z2 = step * (i % 2 === 0 ? k : -k); // to and fro, so that each start is near
        if (z1 * z1 + z2 * z2 > 10.5) continue;
        const at: Parameters = {
          ...parameters,
          logSpread: mode.pass.parameters.logSpread + a * z1,
          logError: mode.pass.parameters.logError + b * z1 + c * z2,
        };
        const found = findMode(candidate.terms, design, ownPriors, at, { spreads: false, near: 1e-6 }, 12);
        parameters = found.pass.parameters;
        const error = Math.exp(at.logError);
        const dutyNoise = Math.sqrt(candidate.ratio) * error;
        const node = nodeFrom(candidate.terms, design, found.pass, 0, dutyNoise);
        if (node) nodes.push({ node, log: found.pass.objective });
      }
    }
    for (const node of weighedNodes(nodes)) all.push({ ...node, weight: node.weight * candidate.share });
  }
  return all;
}

function weighedNodes(
  nodes: readonly { readonly node: ParameterNode; readonly log: number }[],
): readonly ParameterNode[] {
  let top = -Infinity;
  for (const { log } of nodes) if (log > top) top = log;
  let sum = 0;
  for (const { log } of nodes) sum += Math.exp(log - top);
  const weighed = nodes
    .map(({ node, log }) => ({ ...node, weight: Math.exp(log - top) / sum }))
    .filter(({ weight }) => weight > leastWeight);
  const kept = weighed.reduce((total, { weight }) => total + weight, 0);
  return weighed.map((node) => ({ ...node, weight: node.weight / kept }));
}

/** The likeliest value; a fit has at least one. */
export function heaviest(nodes: readonly ParameterNode[]): ParameterNode {
  let best = nodes[0]!; // a fit has at least one node
  for (const node of nodes) if (node.weight > best.weight) best = node;
  return best;
}
