// At what age is it cheapest to replace before failure? Minimises (planned·R(T) + failure·F(T)) / ∫₀ᵀ R, the cost per unit of
// exposure of replacing at age T or at failure, whichever comes first (Barlow & Proschan, Mathematical Theory of Reliability,
// 1965, chapter 4). It pays only where the risk of failure grows with age and a failure costs more than a planned replacement.

import { crossing } from './numeric/root.js';
import { gaussLegendre } from './numeric/quadrature.js';

export interface ReplacementCosts {
  /** Of a planned replacement and of one after failure; same currency, > 0. */
  readonly planned: number;
  readonly failure: number;
}

export type Replacement =
  | {
      readonly kind: 'replace at';
      readonly exposure: number;
      readonly costRate: number;
      /** Cost per unit of exposure when run to failure. */ readonly toFailure: number;
    }
  | {
      readonly kind: 'run to failure';
      readonly why: 'a failure costs no more' | 'age brings no more risk';
      readonly costRate: number;
    };

const rule = gaussLegendre(16);

/** Life by its chance of failure by an exposure (rising from 0 to 1); `scale` a typical life, > 0. */
export function ageReplacement(
  failedBy: (exposure: number) => number,
  scale: number,
  costs: ReplacementCosts,
): Replacement {
  const upTo = 12 * scale;
  const life = integral(failedBy, 0, upTo);
  const toFailure = costs.failure / life;
  if (!(costs.failure > costs.planned))
    return { kind: 'run to failure', why: 'a failure costs no more', costRate: toFailure };
  let best = { at: upTo, rate: toFailure };
  const points = 400;
  let used = 0;
  for (let i = 1; i <= points; i++) {
    const from = (upTo * (i - 1)) / points;
    const to = (upTo * i) / points;
    used += integral(failedBy, from, to, 1);
    const f = failedBy(to);
    const rate = (costs.planned * (1 - f) + costs.failure * f) / used;
    if (rate < best.rate * (1 - 1e-9)) best = { at: to, rate };
  }
  if (best.at >= upTo * (1 - 1 / points))
    return { kind: 'run to failure', why: 'age brings no more risk', costRate: toFailure };
  const step = upTo / points;
  const costRate = (t: number): number => costPerExposure(failedBy, t, costs);
  // The minimum is where the slope crosses nought; a central difference of a smooth function, then Newton's parabola on it.
  const width = step * 0.02;
  const slope = (t: number): number => (costRate(t + width) - costRate(t - width)) / (2 * width);
  const at = crossing(slope, 0, Math.max(best.at - step, 2 * width), best.at + step, 1e-9 * scale) ?? best.at;
  return { kind: 'replace at', exposure: at, costRate: costRate(at), toFailure };
}

/** Cost per unit of exposure of replacing at `age`. */
export function costPerExposure(
  failedBy: (exposure: number) => number,
  age: number,
  costs: ReplacementCosts,
): number {
  const f = failedBy(age);
  return (costs.planned * (1 - f) + costs.failure * f) / integral(failedBy, 0, age);
}

/** Weibull life: exact derivative, h(T)·∫₀ᵀR − F(T) = planned / (failure − planned). */
export function ageReplacementWeibull(shape: number, scale: number, costs: ReplacementCosts): Replacement {
  const failedBy = (t: number): number => -Math.expm1(-((t / scale) ** shape));
  const toFailure = costs.failure / integral(failedBy, 0, scale * 40 ** (1 / Math.min(shape, 1.5)), 200);
  if (!(costs.failure > costs.planned))
    return { kind: 'run to failure', why: 'a failure costs no more', costRate: toFailure };
  if (!(shape > 1)) return { kind: 'run to failure', why: 'age brings no more risk', costRate: toFailure };
  const wanted = costs.planned / (costs.failure - costs.planned);
  const balance = (t: number): number =>
    (shape / scale) * (t / scale) ** (shape - 1) * integral(failedBy, 0, t) - failedBy(t);
  let high = scale;
  for (let doubling = 0; doubling < 60 && balance(high) < wanted; doubling++) high *= 2;
  const at = crossing(balance, wanted, 0, high, 1e-10 * scale);
  if (at === undefined)
    return { kind: 'run to failure', why: 'age brings no more risk', costRate: toFailure };
  return { kind: 'replace at', exposure: at, costRate: costPerExposure(failedBy, at, costs), toFailure };
}

/** ∫ (1 − failedBy). */
function integral(failedBy: (exposure: number) => number, from: number, to: number, pieces = 24): number {
  let sum = 0;
  for (let k = 0; k < pieces; k++) {
    const half = (to - from) / (2 * pieces);
    const middle = from + half * (2 * k + 1);
    for (let i = 0; i < rule.node.length; i++)
      sum += (rule.weight[i] ?? 0) * half * (1 - failedBy(middle + half * (rule.node[i] ?? 0)));
  }
  return sum;
}
