// Which thicknesses stray, and which colours cannot be right beside the thicknesses? Strays count for less and are always named.
// Index arithmetic runs within lengths made here and in reduce.ts, so `!` after an index is safe.

import type { Remark } from '../columns.js';
import type { Units } from '../reduce.js';
import type { Design } from './design.js';
import type { DutyNoiseFit } from './duty-noise.js';
import { ratesAt } from './duty-noise.js';
import type { LeaveOneOut } from './leave-one-out.js';
import { crowdWeight, leaveOneOut } from './leave-one-out.js';
import type { Mode } from './mode.js';
import { nodeFrom } from './parameter-nodes.js';
import type { UnitTerms } from './shape.js';
import { emptySubintervals } from './shape.js';
import { emptyMoments, unitMoments } from './unit-integral.js';

/** A unit's only thickness keeps its full weight: nothing of its own says that it strays, and the unit may well be unlike the rest. */
export function crowdWeights(units: Units, { deviation }: LeaveOneOut): Float64Array {
  const weight = deviation.map(crowdWeight);
  for (let unit = 0; unit < units.count; unit++)
    if (units.start[unit + 1]! - units.start[unit]! === 1) weight[units.start[unit]!] = 1;
  return weight;
}

export function leaveOut(
  units: Units,
  design: Design,
  found: DutyNoiseFit,
  weight: Float64Array,
): LeaveOneOut {
  const { terms, mode } = found;
  const error = Math.exp(mode.pass.parameters.logError);
  const node = nodeFrom(terms, design, mode.pass, 1, Math.sqrt(found.ratio) * error);
  if (!node) return { deviation: new Float64Array(units.exposure.length), expected: units.wear };
  const scale = ratesAt(units, terms.summary, mode.pass.parameters, mode.pass.mean);
  const prior = (unit: number): { mean: number; variance: number } => {
    const m = node.priorMean[unit]!;
    const v = Math.min(node.priorVariance[unit]!, 4);
    const mean = Math.exp(m + v / 2);
    return { mean, variance: mean * mean * (Math.exp(v) - 1) };
  };
  return leaveOneOut(units, error, found.ratio, scale, prior, weight);
}

export function outlierRemarks(
  units: Units,
  { deviation, expected }: LeaveOneOut,
  weight: Float64Array,
): readonly Remark[] {
  const remarks: Remark[] = [];
  for (let unit = 0; unit < units.count; unit++) {
    for (let at = units.start[unit]!; at < units.start[unit + 1]!; at++) {
      if (weight[at]! >= 1 && crowdWeight(deviation[at]!) >= 1) continue;
      const fitted = units.columns.fitted[unit] ?? 0;
      remarks.push({
        kind: 'outlier',
        reading: units.reading[at]!,
        unit,
        weight: weight[at]!,
        expected: fitted - expected[at]!,
        deviation: deviation[at]!,
      });
    }
  }
  return remarks;
}

const unlikely = 1e-4;

/** Units whose colours are next to impossible once the thicknesses are known. */
export function coloursAgainstThicknesses(
  terms: UnitTerms,
  mode: Mode,
  gaugeError: number,
): readonly Remark[] {
  const { units } = terms;
  const remarks: Remark[] = [];
  const subintervals = emptySubintervals();
  const moments = emptyMoments();
  const noEdges: UnitTerms = { ...terms, units: { ...units, edgeStart: new Int32Array(units.count + 1) } };
  const spread = Math.exp(mode.pass.parameters.logSpread);
  // Readings at odds with colours swell the fitted error; the gauge is not worse for it.
  const error = Math.min(Math.exp(mode.pass.parameters.logError), gaugeError);
  for (let unit = 0; unit < units.count; unit++) {
    if (units.thicknesses[unit] === 0 || units.edgeStart[unit] === units.edgeStart[unit + 1]) continue;
    if (terms.summary.slope[unit]! > 0 && withinEdges(terms, unit, Math.log(terms.summary.slope[unit]!)))
      continue;
    unitMoments(terms, unit, mode.pass.mean[unit]!, spread, error, subintervals, moments);
    const both = moments.logLikelihood;
    unitMoments(noEdges, unit, mode.pass.mean[unit]!, spread, error, subintervals, moments);
    const chance = Math.exp(both - moments.logLikelihood);
    if (chance < unlikely) remarks.push({ kind: 'colour against thickness', unit, chance });
  }
  return remarks;
}

/** At the thicknesses' own rate every colour is within three softnesses of its edge: nothing to look into. */
function withinEdges({ units, edges }: UnitTerms, unit: number, own: number): boolean {
  for (let e = units.edgeStart[unit]!; e < units.edgeStart[unit + 1]!; e++) {
    if (own < edges.low[e]! - 3 * edges.lowSoft[e]! || own > edges.high[e]! + 3 * edges.highSoft[e]!)
      return false;
  }
  return true;
}
