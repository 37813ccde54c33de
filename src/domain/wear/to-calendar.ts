// Which dates do exposures stand for? The hours (or tonnes) that a coming day brings are themselves uncertain: their long-run
// average is lognormal about the forward duty with a declared or observed spread, and that spread is part of the interval.

import type { CalendarDay } from '../units/calendar.js';
import { crossing } from './numeric/root.js';
import { gaussNormal } from './numeric/quadrature.js';

export interface ForwardDuty {
  /** Exposure a calendar day brings: running hours a day (or tonnes a day), ≥ 0. */
  readonly perDay: number;
  /** One standard deviation of the coming average as a share of it, ≥ 0. */
  readonly spread: number;
  /** The day at which exposure is `now`. */
  readonly from: CalendarDay;
  /** Exposure on that day: since fitting for one unit, 0 for the first of several. */
  readonly now: number;
  /** Wear of a coming hour over that of a past one: 22/18 where the screw is to run at 22 rpm instead of 18. 1 where left out. */
  readonly pace?: number;
}

export interface DayQuantiles {
  readonly q05: CalendarDay | undefined;
  readonly q10: CalendarDay | undefined;
  readonly q50: CalendarDay | undefined;
  readonly q90: CalendarDay | undefined;
  readonly q95: CalendarDay | undefined;
}

export type CalendarForecast =
  | {
      readonly kind: 'dates';
      /** The last whole day before the quantile: the early side. `duty.from` where it may have happened already. Undefined beyond `horizon`. */
      readonly quantiles: DayQuantiles;
      readonly horizon: CalendarDay;
      /** Chance that it has happened by the end of a day, 0 to 1. */
      readonly reachedBy: (day: CalendarDay) => number;
      /** Day by which the chance is `level`; undefined beyond the horizon. */
      readonly dayOf: (level: number) => CalendarDay | undefined;
      readonly duty: ForwardDuty;
    }
  | { readonly kind: 'cannot say'; readonly why: 'it does not run' | 'no duty' };

/** A forecast further off than this is not printed as a date: 40 years of 365.25 days. */
export const horizonDays = 14610;

const dutyRule = gaussNormal(9);

/** @param forecast one with a distribution over exposure: since fitting, or from now with `duty.now` 0. */
export function toCalendar(forecast: { readonly reachedBy: (exposure: number) => number }, duty: ForwardDuty): CalendarForecast {
  const pace = duty.pace ?? 1;
  if (![duty.perDay, duty.spread, duty.from, duty.now, pace].every(Number.isFinite) || duty.perDay < 0 || duty.spread < 0 || pace < 0) return { kind: 'cannot say', why: 'no duty' };
  if (duty.perDay * pace === 0) return { kind: 'cannot say', why: 'it does not run' };
  // Lognormal with mean 1 and the given coefficient of variation.
  const variance = Math.log1p(duty.spread * duty.spread);
  const factors = duty.spread > 0 ? Array.from(dutyRule.node, (z, i) => [Math.exp(Math.sqrt(variance) * z - variance / 2), dutyRule.weight[i] ?? 0] as const) : [[1, 1] as const];
  const chanceAt = (days: number): number => {
    if (days <= 0) return forecast.reachedBy(duty.now + duty.perDay * days);
    let sum = 0;
    for (const [factor, weight] of factors) sum += weight * forecast.reachedBy(duty.now + duty.perDay * pace * factor * days);
    return sum;
  };
  const already = chanceAt(0);
  const atHorizon = chanceAt(horizonDays);
  const dayOf = (level: number): CalendarDay | undefined => {
    if (already >= level) return duty.from;
    if (!(atHorizon > level)) return undefined;
    // On the logarithm of the days, so that near and far dates are found alike.
    const log = crossing((x) => chanceAt(Math.exp(x)), level, Math.log(1e-3), Math.log(horizonDays), 1e-7);
    return log === undefined ? duty.from : plusDays(duty.from, Math.floor(Math.exp(log)));
  };
  return {
    kind: 'dates',
    quantiles: { q05: dayOf(0.05), q10: dayOf(0.1), q50: dayOf(0.5), q90: dayOf(0.9), q95: dayOf(0.95) },
    horizon: plusDays(duty.from, horizonDays),
    reachedBy: (day) => chanceAt(day - duty.from),
    dayOf,
    duty,
  };
}

function plusDays(day: CalendarDay, days: number): CalendarDay {
  return (day + days) as CalendarDay; // a whole number of days after a calendar day is one
}
