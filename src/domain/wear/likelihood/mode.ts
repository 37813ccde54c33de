// At which general level, offsets, spread τ and reading error σ are the records most likely, weak priors counted? Newton on
// (effects, ln τ, ln σ): the score is a posterior mean and the information follows Louis (1982, J. R. Statist. Soc. B 44, 226),
// complete information less the variance of the complete score, both from one pass over the units. The offsets are integrated out
// by Laplace's method, which adds to the scores of τ and σ what the offsets have taken up (restricted likelihood, as Patterson &
// Thompson 1971), and the spread of each pool follows from its offsets and their covariance.
// Index arithmetic runs within lengths made here and in design.ts, so `!` after an index is safe.

import type { Design, System } from './design.js';
import { addUnit, effectOn, effectVariance, emptySystem, newtonStep, solveSystem } from './design.js';
import { updatePoolSpreads } from './pool-spread.js';
import type { UnitTerms } from './shape.js';
import { emptySubintervals } from './shape.js';
import { emptyMoments, unitMoments } from './unit-integral.js';
import type { Pass, Parameters, Priors } from './parameters.js';

export interface Convergence {
  readonly converged: boolean;
  readonly iterations: number;
  /** gradientᵀ·information⁻¹·gradient at the end: the squared distance to the mode in standard errors. */
  readonly decrement: number;
}

export interface Mode extends Convergence {
  readonly pass: Pass;
}

const smallestLogSpread = Math.log(0.003);
const largestLogSpread = Math.log(5);

export interface Search {
  /** Whether ln τ and ln σ may move: on a parameter grid neither may. */
  readonly spreads: boolean;
  /** Stop at this decrement. */
  readonly near?: number;
  /** Look at every so many units only, for a start. */
  readonly every?: number;
}

export function findMode(
  terms: UnitTerms,
  design: Design,
  priors: Priors,
  start: Parameters,
  free: Search,
  most = 60,
): Mode {
  // With priors the mode is no more than where a spread is measured from; without, it is an answer by itself.
  const near = free.near ?? (priors.logSpread ? 1e-8 : 1e-14);
  const every = free.every ?? 1;
  let parameters = start;
  let pass = passOver(terms, design, priors, parameters, free.spreads, every);
  let decrement = Infinity;
  let iterations = 0;
  let settled = 0;
  while (iterations < most) {
    iterations++;
    if (free.spreads) holdAtWall(design, pass);
    const step = safeStep(design, pass.system, free.spreads);
    if (!step) break;
    decrement = step.decrement;
    if (decrement < near && design.pools.length === 0) break;
    // A step that ends lower is halved, beyond what the integrals are good for. The Laplace term moves with the effects though its
    // slope is not in their score, so with it a short step is taken as it comes and a long one may lose a little.
    const exact = priors.logSpread === undefined && design.pools.length === 0;
    const grace = exact ? 1e-7 * Math.max(1, Math.abs(pass.objective)) : decrement < 0.5 ? Infinity : 0.1;
    let share = 1;
    let next: Pass | undefined;
    for (let halving = 0; halving < 25; halving++) {
      const trial = moved(design, parameters, step, share, free.spreads);
      next = passOver(terms, design, priors, trial, free.spreads, every);
      if (next.objective >= pass.objective - grace) break;
      share *= 0.5;
    }
    if (!next || !(next.objective >= pass.objective - grace)) break;
    pass = next;
    parameters = next.parameters;
    // Only once the offsets have settled on the present spreads do they tell of the next.
    const settledHere = decrement < 1e-2;
    let poolMove = settledHere ? 0 : Infinity;
    if (free.spreads && settledHere && design.pools.length > 0) {
      const poolSpread = updatePoolSpreads(design, priors, pass);
      poolMove = poolSpread.reduce(
        (most, s, k) => Math.max(most, Math.abs(Math.log(s / parameters.poolSpread[k]!))),
        0,
      );
      parameters = { ...parameters, poolSpread };
      if (poolMove > 1e-12) pass = passOver(terms, design, priors, parameters, free.spreads, every);
    }
    const still = design.pools.length === 0 || !free.spreads || poolMove < Math.max(1e-3, near);
    settled = decrement < 1e-9 && still ? settled + 1 : 0;
    if (decrement < near && still) break;
    if (settled >= 2) break;
  }
  return { pass, converged: decrement < 1e-6 && iterations < most, iterations, decrement };
}

export function passOver(
  terms: UnitTerms,
  design: Design,
  priors: Priors,
  parameters: Parameters,
  spreads: boolean,
  every = 1,
): Pass {
  const { units, summary } = terms;
  const { count } = units;
  const tau = Math.exp(parameters.logSpread);
  const sigma = Math.exp(parameters.logError);
  const precision = 1 / (tau * tau);
  const system = emptySystem(design, 2);
  const mean = new Float64Array(count);
  const score = new Float64Array(count);
  const information = new Float64Array(count);
  const moments = emptyMoments();
  const subintervals = emptySubintervals();
  const cellMean = design.cellUnit.map((unit) => effectOn(design, parameters.effects, unit));
  const cross = [0, 0];
  const t = design.dense;
  const s = t + 1;
  const { size, matrix, gradient } = system;
  let logLikelihood = 0;
  let gradientSpread = 0;
  let gradientError = 0;
  let tt = 0;
  let ts = 0;
  let ss = 0;
  let readings = 0;
  for (let unit = 0; unit < count; unit += every) {
    const m = (mean[unit] = cellMean[design.cell[unit]!]! + units.offset[unit]!);
    const n = summary.n[unit]!;
    const silent =
      n === 0 && units.edgeStart[unit] === units.edgeStart[unit + 1] && Number.isNaN(units.life[unit]!);
    if (silent) continue;
    unitMoments(terms, unit, m, tau, sigma, subintervals, moments);
    const { r1, r2, r3, r4, q1, q2, rq, rrq } = moments;
    logLikelihood += moments.logLikelihood;
    readings += n;
    const g = (score[unit] = r1 * precision);
    // Records at odds with the pool can bend the wrong way; taken as nothing, so that the effects' matrix stays positive.
    const h = (information[unit] = Math.max(0, precision - (r2 - r1 * r1) * precision * precision));
    const ht = 2 * r1 * precision - (r3 - r1 * r2) * precision * precision;
    const hs = -(rq - r1 * q1) * precision;
    gradientSpread += r2 * precision - 1;
    gradientError += q1 - n;
    tt += 2 * r2 * precision - (r4 - r2 * r2) * precision * precision;
    ts += -(rrq - r2 * q1) * precision;
    ss += 2 * q1 - (q2 - q1 * q1);
    cross[0] = ht;
    cross[1] = hs;
    addUnit(design, system, unit, g, h, cross);
  }
  gradient[t] = gradientSpread;
  gradient[s] = gradientError;
  matrix[t * size + t] = tt;
  matrix[t * size + s] = matrix[s * size + t] = ts;
  matrix[s * size + s] = ss;
  let objective = logLikelihood + addEffectPriors(design, priors, parameters, system);
  // A general level that nothing determines still needs a finite matrix.
  if (!(matrix[0]! > 0)) matrix[0] = 1e-12;
  const integrated = priors.logSpread !== undefined || design.pools.length > 0;
  const effectsOnly = solveSystem(system, design.dense);
  if (integrated && effectsOnly) {
    objective -= 0.5 * effectsOnly.logDeterminant;
    if (spreads) {
      const cellVariance = design.cellUnit.map((unit) => effectVariance(design, system, effectsOnly, unit));
      const tauSquared = tau * tau;
      for (let unit = 0; unit < count; unit++) {
        const h = information[unit]!;
        if (!(h > 0)) continue;
        const v = cellVariance[design.cell[unit]!]!;
        gradient[t]! += v * tauSquared * h * h;
        if (summary.n[unit]! > 0) gradient[s]! += v * Math.max(0, h - tauSquared * h * h);
      }
    }
  }
  objective += addSpreadPriors(priors, parameters, system, t, s);
  if (readings === 0 && !priors.logError) {
    gradient[s] = 0;
    matrix[s * size + s] = 1;
  }
  return { parameters, logLikelihood, objective, system, effectsOnly, mean, score, information };
}

/**
 * Where pools and records leave nothing for the spread between units, τ stands at its least value and is no longer free: otherwise
 * its slope would keep the others from ever counting as settled.
 */
function holdAtWall(design: Design, { parameters, system }: Pass): void {
  const { size, matrix, gradient, apartRow, apartDiagonal } = system;
  const t = design.dense;
  const below = parameters.logSpread <= smallestLogSpread && gradient[t]! < 0;
  const above = parameters.logSpread >= largestLogSpread && gradient[t]! > 0;
  if (!below && !above) return;
  gradient[t] = 0;
  for (let a = 0; a < size; a++) matrix[t * size + a] = matrix[a * size + t] = 0;
  matrix[t * size + t] = 1;
  for (let j = 0; j < apartDiagonal.length; j++) apartRow[j * size + t] = 0;
}

/** Priors of the level and of the pools' effects, added to the slopes and bends; returns their share of the objective. */
function addEffectPriors(design: Design, priors: Priors, parameters: Parameters, system: System): number {
  const { size, matrix, gradient } = system;
  const { dense } = parameters.effects;
  let share = 0;
  if (priors.level) {
    const z = (dense[0]! - priors.level.mean) / priors.level.spread;
    share -= 0.5 * z * z;
    gradient[0]! -= z / priors.level.spread;
    matrix[0]! += 1 / priors.level.spread ** 2;
  }
  design.pools.forEach((_, k) => {
    const omega = parameters.poolSpread[k]!;
    const weight = 1 / (omega * omega);
    const first = design.firstColumn[k]!;
    for (let j = 0; j < design.levels[k]!; j++) {
      const value = first < 0 ? parameters.effects.apart[j]! : dense[first + j]!;
      share -= 0.5 * value * value * weight + Math.log(omega);
      if (first < 0) {
        system.apartGradient[j]! -= value * weight;
        system.apartDiagonal[j]! += weight;
      } else {
        const c = first + j;
        gradient[c]! -= value * weight;
        matrix[c * size + c]! += weight;
      }
    }
    const z = (Math.log(omega) - priors.logPoolSpread.mean) / priors.logPoolSpread.spread;
    share -= 0.5 * z * z;
  });
  return share;
}

/** The same for the spread between points (column t) and the error of a reading (column s). */
function addSpreadPriors(
  priors: Priors,
  parameters: Parameters,
  { size, matrix, gradient }: System,
  t: number,
  s: number,
): number {
  let share = 0;
  for (const [at, value, prior] of [
    [t, parameters.logSpread, priors.logSpread],
    [s, parameters.logError, priors.logError],
  ] as const) {
    if (!prior) continue;
    const z = (value - prior.mean) / prior.spread;
    share -= 0.5 * z * z;
    gradient[at]! -= z / prior.spread;
    matrix[at * size + at]! += 1 / prior.spread ** 2;
  }
  return share;
}

/** Newton's step; where the observed information is not positive definite, the diagonal is raised until it is. */
function safeStep(
  design: Design,
  system: System,
  spreads: boolean,
): ReturnType<typeof newtonStep> | undefined {
  const size = spreads ? system.size : design.dense;
  for (let raise = 0; raise < 40; raise++) {
    const solved = solveSystem(system, size);
    if (solved) return newtonStep(system, solved);
    const share = raise === 0 ? 0.1 : 0.5;
    for (let a = 0; a < system.size; a++) {
      const at = a * system.size + a;
      system.matrix[at] = system.matrix[at]! + share * Math.max(1e-3, Math.abs(system.matrix[at]!));
    }
    for (let j = 0; j < system.apartDiagonal.length; j++)
      system.apartDiagonal[j] = Math.abs(system.apartDiagonal[j]!) * (1 + share) + 1e-6;
  }
  return undefined;
}

function moved(
  design: Design,
  from: Parameters,
  step: ReturnType<typeof newtonStep>,
  share: number,
  spreads: boolean,
): Parameters {
  let largest = 0;
  for (let a = 0; a < design.dense; a++) largest = Math.max(largest, Math.abs(step.dense[a]!) / 2);
  for (let j = 0; j < step.apart.length; j++) largest = Math.max(largest, Math.abs(step.apart[j]!) / 2);
  if (spreads)
    largest = Math.max(largest, Math.abs(step.dense[design.dense]!), Math.abs(step.dense[design.dense + 1]!));
  const scale = largest > 1 ? share / largest : share;
  const dense = from.effects.dense.map((value, a) => value + scale * step.dense[a]!);
  const apart = from.effects.apart.map((value, j) => value + scale * step.apart[j]!);
  const logSpread = spreads ? from.logSpread + scale * step.dense[design.dense]! : from.logSpread;
  return {
    ...from,
    effects: { dense, apart },
    logSpread: Math.max(smallestLogSpread, Math.min(largestLogSpread, logSpread)),
    logError: spreads ? from.logError + scale * step.dense[design.dense + 1]! : from.logError,
  };
}
