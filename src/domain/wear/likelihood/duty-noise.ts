// How unlike are the hours? The ratio (ψ/σ)² of the wear's wandering to the reading error is found by a walk over its logarithm: at
// each value the other parameters are at their mode, and likelihood and prior are compared; a parabola through the best three gives
// the peak and its width. First on a few units, then, where there are more, again on many. Thicknesses alone are asked: colours are
// too coarse to tell, and what they share of the wandering is not in the model. Three ratios about the peak stand for its width.
// Index arithmetic runs within lengths made here and in reduce.ts, so `!` after an index is safe.

import type { Units } from '../reduce.js';
import type { Design } from './design.js';
import { designOf } from './design.js';
import type { Mode } from './mode.js';
import { findMode } from './mode.js';
import type { RatioCandidate } from './parameter-nodes.js';
import { sampleOf, sampleRows, sampleUnits } from './sample.js';
import { median } from '../median.js';
import type { ReadingSums } from './summary.js';
import { summarise } from './summary.js';
import type { UnitTerms } from './shape.js';
import { bulkNodes, coarseNodes, fineNodes, nodesOnGrid, unitTerms } from './shape.js';
import type { NormalPrior, Parameters, Priors } from './parameters.js';

/**
 * `estimate` with a prior on ln of the variation over a usual interval; the same `prior` alone where nothing tells it from the spread
 * between units; or `psi` declared; or none.
 */
export type DutyAsked =
  | { readonly kind: 'none' }
  | { readonly kind: 'declared'; readonly psi: number }
  | { readonly kind: 'estimate' | 'prior'; readonly prior: NormalPrior };

export interface DutyNoiseFit {
  /** (ψ/σ)² at the mode; 0 where duty is taken as even. */
  readonly ratio: number;
  readonly from: 'estimated' | 'declared' | 'none';
  readonly terms: UnitTerms;
  readonly mode: Mode;
  /** Values of the ratio to integrate over. */
  readonly candidates: () => readonly RatioCandidate[];
}

const fewUnits = 120;
const manyUnits = 2000;
const manyUnderClocks = 500;
const startUnits = 1500; // where there are many times more, Newton starts from the mode of as many
/** From this many units on, each one's last digits no longer count; with wear clocks, which only start from them, from fewer. */
export const bulk = 5000;
const bulkUnderClocks = 400;
const near = 1e-3;

/**
 * Mode over everything, duty noise included.
 * @param per a usual interval between readings.
 * @param before a mode found with other weights: its ratio is kept.
 */
export function modeWithDuty(
  units: Units,
  design: Design,
  priors: Priors,
  asked: DutyAsked,
  per: number,
  weight: Float64Array,
  straight: ReadingSums,
  start: Parameters,
  before: DutyNoiseFit | undefined,
): DutyNoiseFit {
  const clocked = units.columns.clock !== undefined && units.count > bulkUnderClocks;
  const finest = units.count > bulk ? bulkNodes : clocked ? coarseNodes : fineNodes;
  const plainTerms = unitTerms(units, straight, undefined, finest);
  const every = Math.floor(units.count / startUnits);
  if (!before && every > 1)
    start = findMode(
      { ...plainTerms, nodes: coarseNodes },
      design,
      priors,
      start,
      { spreads: true, near: 1e-6, every },
      30,
    ).pass.parameters;
  if (asked.kind === 'none') {
    const mode = findMode(
      plainTerms,
      design,
      priors,
      start,
      units.count > bulk ? { spreads: true, near: 1e-6 } : { spreads: true },
    );
    return {
      ratio: 0,
      from: 'none',
      terms: plainTerms,
      mode,
      candidates: () => [{ ratio: 0, terms: plainTerms, mode, share: 1 }],
    };
  }
  const plain =
    before?.mode ??
    findMode({ ...plainTerms, nodes: coarseNodes }, design, priors, start, { spreads: true, near });
  const rate = ratesAt(units, straight, plain.pass.parameters, plain.pass.mean);
  const termsAt = (ratio: number, error: number, nodes?: number): UnitTerms =>
    unitTerms(units, summarise(units, ratio, rate, weight), { ratio, error, rate, weight }, nodes ?? finest);
  if (asked.kind === 'declared') return withDeclared(design, priors, asked.psi, plain, finest, termsAt);
  const expected = 2 * asked.prior.mean + Math.log(per) - 2 * plain.pass.parameters.logError;
  if (asked.kind === 'prior') {
    const peak = { at: expected, width: 2 * asked.prior.spread, parameters: plain.pass.parameters };
    return aboutPeak(units, design, priors, peak, plain, termsAt);
  }
  const logPrior = (ratio: number, error: number): number => {
    const z = (0.5 * Math.log(ratio / per) + Math.log(error) - asked.prior.mean) / asked.prior.spread;
    return -0.5 * z * z;
  };
  // Wear that varies by more than itself over a usual interval is no longer wear by a rate.
  const most = Math.log(per) - 2 * plain.pass.parameters.logError + 0.5;
  const search = (size: number, centre: number, stride: number, warm: Parameters): Peak => {
    const sample = sampleOf(units, size);
    const part = designOf(sample.units.count, []);
    const from: Parameters = {
      ...warm,
      effects: { dense: warm.effects.dense.slice(0, 1), apart: new Float64Array(0) },
      poolSpread: [],
    };
    const partRate = sampleUnits(sample, rate);
    const partWeight = sampleRows(units, sample, weight);
    return peakOf(centre, stride, most, from, (logRatio, at) => {
      const ratio = Math.exp(logRatio);
      const terms = unitTerms(
        sample.units,
        summarise(sample.units, ratio, partRate, partWeight),
        undefined,
        coarseNodes,
      );
      const mode = findMode(terms, part, priors, at, { spreads: true, near }, 12);
      return {
        value: mode.pass.objective + logPrior(ratio, Math.exp(mode.pass.parameters.logError)),
        parameters: mode.pass.parameters,
      };
    });
  };
  const guess = before ? Math.log(before.ratio) : expected;
  let peak = search(fewUnits, guess, before ? 0.8 : 1.5, plain.pass.parameters);
  if (units.count > 1.5 * fewUnits)
    peak = search(
      clocked ? manyUnderClocks : manyUnits,
      peak.at,
      Math.max(0.3, Math.min(0.8, 0.6 * peak.width)),
      {
        ...plain.pass.parameters,
        logSpread: peak.parameters.logSpread,
        logError: peak.parameters.logError,
      },
    );
  return aboutPeak(units, design, priors, peak, plain, termsAt);
}

/** The mode at the peak, and three ratios that stand for its width. */
function aboutPeak(
  units: Units,
  design: Design,
  priors: Priors,
  peak: Peak,
  plain: Mode,
  termsAt: (ratio: number, error: number, nodes?: number) => UnitTerms,
): DutyNoiseFit {
  const ratio = Math.exp(peak.at);
  const terms = termsAt(ratio, Math.exp(peak.parameters.logError));
  const mode = findMode(
    terms,
    design,
    priors,
    // What the pools explain is not in the sample's spread between units.
    {
      ...plain.pass.parameters,
      ...(design.pools.length === 0 && { logSpread: peak.parameters.logSpread }),
      logError: peak.parameters.logError,
    },
    // Where wear clocks make the forecasts this mode is what they start from, and a hundredth of a standard error is near enough.
    units.columns.clock ? { spreads: true, near: 1e-4 } : { spreads: true },
  );
  // With thousands of units the ratio is as good as known. Otherwise by Gauss–Hermite; each with its share of the peak, whatever the
  // colours would make of it.
  if (units.count > bulk)
    return { ratio, from: 'estimated', terms, mode, candidates: () => [{ ratio, terms, mode, share: 1 }] };
  const candidates = (): readonly RatioCandidate[] =>
    [-Math.sqrt(3), 0, Math.sqrt(3)].map((z) => {
      const value = Math.exp(peak.at + peak.width * z);
      return {
        ratio: value,
        mode: z === 0 ? mode : undefined,
        terms:
          z === 0
            ? { ...terms, nodes: nodesOnGrid }
            : termsAt(value, Math.exp(mode.pass.parameters.logError), nodesOnGrid),
        share: z === 0 ? 2 / 3 : 1 / 6,
      };
    });
  return { ratio, from: 'estimated', terms, mode, candidates };
}

/**
 * ψ is given, so every ratio fixes σ with it: the walk is over ratios with σ held at ψ/√ratio, and the peak is that of σ.
 */
function withDeclared(
  design: Design,
  priors: Priors,
  psi: number,
  plain: Mode,
  nodes: number,
  termsAt: (ratio: number, error: number, nodes?: number) => UnitTerms,
): DutyNoiseFit {
  const held = (logRatio: number): Priors => ({
    ...priors,
    logError: { mean: Math.log(psi) - 0.5 * logRatio, spread: 1e-3 },
  });
  const own = (logError: number): number =>
    priors.logError ? -0.5 * ((logError - priors.logError.mean) / priors.logError.spread) ** 2 : 0;
  const modeAt = (logRatio: number, from: Parameters, fine: boolean): { terms: UnitTerms; mode: Mode } => {
    const logError = Math.log(psi) - 0.5 * logRatio;
    const terms = termsAt(Math.exp(logRatio), Math.exp(logError), fine ? nodes : coarseNodes);
    return {
      terms,
      mode: findMode(
        terms,
        design,
        held(logRatio),
        { ...from, logError },
        { spreads: true, near: fine ? 1e-8 : near },
        30,
      ),
    };
  };
  const guess = 2 * (Math.log(psi) - plain.pass.parameters.logError);
  const peak = peakOf(guess, 1, Infinity, plain.pass.parameters, (logRatio, from) => {
    const { mode } = modeAt(logRatio, from, false);
    return {
      value: mode.pass.objective + own(mode.pass.parameters.logError),
      parameters: mode.pass.parameters,
    };
  });
  const best = modeAt(peak.at, peak.parameters, true);
  const candidates = (): readonly RatioCandidate[] =>
    [-Math.sqrt(3), 0, Math.sqrt(3)].map((z) => {
      const logRatio = peak.at + peak.width * z;
      const { terms, mode } = z === 0 ? best : modeAt(logRatio, best.mode.pass.parameters, true);
      return {
        ratio: Math.exp(logRatio),
        terms: { ...terms, nodes: Math.min(nodes, nodesOnGrid) },
        mode,
        priors: held(logRatio),
        share: z === 0 ? 2 / 3 : 1 / 6,
      };
    });
  return { ratio: Math.exp(peak.at), from: 'declared', terms: best.terms, mode: best.mode, candidates };
}

interface Peak {
  readonly at: number;
  /** Half-width: one standard deviation of a normal of that curvature; 2 at most. */
  readonly width: number;
  readonly parameters: Parameters;
}

function peakOf(
  guess: number,
  stride: number,
  most: number,
  warm: Parameters,
  evaluate: (x: number, warm: Parameters) => { readonly value: number; readonly parameters: Parameters },
): Peak {
  const tried = new Map<number, number>();
  let parameters = warm;
  const at = (x: number): number => {
    const known = tried.get(x);
    if (known !== undefined) return known;
    if (x > most) return -Infinity;
    const found = evaluate(x, parameters);
    parameters = found.parameters;
    tried.set(x, found.value);
    return found.value;
  };
  let centre = Math.min(guess, most);
  for (let step = 0; step < 14; step++) {
    const here = at(centre);
    if (at(centre + stride) > here) centre += stride;
    else if (at(centre - stride) > here) centre -= stride;
    else if (stride > 0.8) stride /= 2;
    else break;
  }
  const middle = at(centre);
  const left = at(centre - stride);
  const right = centre + stride > most ? left : at(centre + stride);
  const bend = (2 * middle - left - right) / (stride * stride);
  const shift = bend > 0 ? Math.max(-stride, Math.min(stride, (right - left) / (2 * stride * bend))) : 0;
  return { at: centre + shift, width: Math.min(2, bend > 0 ? 1 / Math.sqrt(bend) : 2), parameters };
}

/** Median stretch of exposure between two thicknesses of a unit, or up to the first where there is but one; 0 where there is none. */
export function usualInterval(units: Units): number {
  const gaps: number[] = [];
  const stride = Math.max(1, Math.floor(units.count / 400));
  for (let unit = 0; unit < units.count; unit += stride) {
    for (let at = units.start[unit]!; at < units.start[unit + 1]!; at++) {
      const gap = units.exposure[at]! - (at > units.start[unit]! ? units.exposure[at - 1]! : 0);
      if (gap > 0) gaps.push(gap);
    }
  }
  return gaps.length > 0 ? median(gaps) : 0;
}

/** Whether any unit has two thicknesses: without, nothing tells the wandering from the spread between units. */
export function hasPairs(units: Units): boolean {
  for (let unit = 0; unit < units.count; unit++)
    if (units.start[unit + 1]! - units.start[unit]! >= 2) return true;
  return false;
}

/** About what each unit's rate is: its own line drawn towards the pool's middle. */
export function ratesAt(
  units: Units,
  summary: ReadingSums,
  parameters: Parameters,
  mean: Float64Array,
): Float64Array {
  const rate = new Float64Array(units.count);
  const error = Math.exp(parameters.logError);
  const spread = Math.exp(parameters.logSpread);
  for (let unit = 0; unit < units.count; unit++) {
    const pool = Math.exp(mean[unit]!);
    const own = summary.sxx[unit]! / (error * error);
    const prior = 1 / (pool * spread) ** 2;
    rate[unit] = Math.max((own * summary.slope[unit]! + prior * pool) / (own + prior), 0.05 * pool);
  }
  return rate;
}
