// Which dates do exposures stand for? The hours (or tonnes) since the meter was last read are themselves uncertain, those that have
// run since then unread like those to come: their average over Δt days is lognormal about the duty with variation v, v² = level² +
// wander²·per/Δt, and that is part of the interval. Nothing is concluded from a limit that nobody saw reached: a risk that was there
// when the meter was read does not fall because nobody looked. The exposure still to come is held as a table of its distribution
// over ln exposure, straight between entries; against a lognormal duty each entry then integrates in closed form. A date may lie
// behind the day of the report, and is told as it is: before the last meter reading it follows the hours that were recorded.
// Index arithmetic runs within lengths made here, so `!` after an index is safe.

import type { CalendarDay } from '../units/calendar.js';
import { areaTabled, density } from './numeric/normal.js';
import { crossing } from './numeric/root.js';

export interface ForwardDuty {
  /** Exposure a calendar day brings: running hours a day (or tonnes a day), ≥ 0. */
  readonly perDay: number;
  /** One standard deviation of the long-run average as a share of it, ≥ 0. */
  readonly spread: number;
  /** One standard deviation of the average of `per` days as a share of it, where weeks are not alike. None where left out. */
  readonly wander?: { readonly ratio: number; readonly per: number };
  /** The day at which exposure is `now`: that of the last meter reading. */
  readonly from: CalendarDay;
  /** Exposure on that day: since fitting for one unit (below 0 where it was fitted later), 0 for the first of several. */
  readonly now: number;
  /** The horizon counts from it; `from` where left out. */
  readonly today?: CalendarDay;
  /** What ran before `from`; with nothing known of it, what happened earlier is told as that day. */
  readonly before?: RecordedBefore;
}

export interface RecordedBefore {
  /** Exposure on a day less that on `from`: 0 or less, as recorded. */
  readonly exposureOn: (day: CalendarDay) => number;
  /** Nothing ran before it. */
  readonly first: CalendarDay;
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
      /** The last whole day before the quantile: the early side. It may lie in the past. Undefined beyond `horizon`. */
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

/** @param forecast one with a distribution over exposure: since fitting, or from now with `duty.now` 0. */
export function toCalendar(
  forecast: { readonly reachedBy: (exposure: number) => number },
  duty: ForwardDuty,
): CalendarForecast {
  const { perDay, spread, from, now } = duty;
  const wander = duty.wander ?? { ratio: 0, per: 0 };
  const today = duty.today !== undefined && duty.today > from ? duty.today : from;
  if (
    ![perDay, spread, from, now, wander.ratio, wander.per, today].every(Number.isFinite) ||
    [perDay, spread, wander.ratio, wander.per].some((value) => value < 0)
  )
    return { kind: 'cannot say', why: 'no duty' };
  if (perDay === 0) return { kind: 'cannot say', why: 'it does not run' };
  const uneven = spread > 0 || wander.ratio * wander.per > 0;
  const table = uneven ? tableOf(forecast.reachedBy, now, perDay) : undefined;
  const chanceAt = (days: number): number => {
    if (days < 0 && duty.before)
      return forecast.reachedBy(now + duty.before.exposureOn(plusDays(from, days)));
    if (days <= 0 || !table) return forecast.reachedBy(now + perDay * days);
    // Lognormal with mean 1 and that variation: its ln has this spread, and half the square of it below 0 as mean.
    const square = Math.log1p(spread ** 2 + (wander.ratio ** 2 * wander.per) / days);
    return chanceBy(table, Math.log(perDay * days) - square / 2, Math.sqrt(square));
  };
  const already = chanceAt(0);
  const horizon = today - from + horizonDays;
  const atHorizon = chanceAt(horizon);
  const dayOf = (level: number): CalendarDay | undefined => {
    if (already >= level) return pastDay(chanceAt, level, duty);
    if (!(atHorizon > level)) return undefined;
    // On the logarithm of the days, so that near and far dates are found alike.
    const log = crossing((x) => chanceAt(Math.exp(x)), level, Math.log(1e-3), Math.log(horizon), 1e-7);
    return log === undefined ? from : plusDays(from, Math.floor(Math.exp(log)));
  };
  let quantiles: DayQuantiles | undefined;
  return {
    kind: 'dates',
    // Made when first asked for: whoever wants chances by day alone need not wait for them.
    get quantiles() {
      return (quantiles ??= {
        q05: dayOf(0.05),
        q10: dayOf(0.1),
        q50: dayOf(0.5),
        q90: dayOf(0.9),
        q95: dayOf(0.95),
      });
    },
    horizon: plusDays(from, horizon),
    reachedBy: (day) => chanceAt(day - from),
    dayOf,
    duty,
  };
}

/** The last day before the meter reading on which the chance was still below the level, by halving. */
function pastDay(
  chanceAt: (days: number) => number,
  level: number,
  { from, before }: ForwardDuty,
): CalendarDay {
  if (!before || before.first >= from) return from;
  let low = before.first - from;
  let high = 0;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (chanceAt(middle) >= level) high = middle;
    else low = middle;
  }
  return plusDays(from, low);
}

function plusDays(day: CalendarDay, days: number): CalendarDay {
  return (day + days) as CalendarDay; // a whole number of days after a calendar day is one
}

interface ExposureTable {
  /** ln of the exposure still to come, rising. */
  readonly log: Float64Array;
  readonly chance: Float64Array;
}

const entries = 96;

/** The distribution of the exposure still to come, from where it stirs to where it is all but done. */
function tableOf(reachedBy: (exposure: number) => number, now: number, bring: number): ExposureTable {
  const rise = (log: number): number => reachedBy(now + Math.exp(log));
  const start = reachedBy(now);
  const [least, most] = [Math.log(1e-3 * bring), Math.log(20 * horizonDays * bring)];
  const end = rise(most);
  const span = end - start;
  const from = span > 1e-9 ? (crossing(rise, start + 1e-5 * span, least, most, 1e-4) ?? least) : least;
  const to = span > 1e-9 ? (crossing(rise, end - 1e-5 * span, from, most, 1e-4) ?? most) : most;
  const log = Float64Array.from(
    { length: entries + 1 },
    (_, k) => from + (Math.max(to - from, 1e-9) * k) / entries,
  );
  const chance = log.map(rise);
  chance[0] = start;
  return { log, chance };
}

/** Chance that the exposure to come is within a lognormal one whose ln has `centre` and `spread`. */
function chanceBy({ log, chance }: ExposureTable, centre: number, spread: number): number {
  // ∫ Φ((centre − y)/spread) dy has the closed form −spread·(z·Φ(z) + φ(z)).
  const antiderivative = (y: number): number => {
    const z = (centre - y) / spread;
    return -spread * (z * areaTabled(z) + density(z));
  };
  let sum = chance[0]!;
  let before = antiderivative(log[0]!);
  for (let k = 0; k < entries; k++) {
    const after = antiderivative(log[k + 1]!);
    sum += ((chance[k + 1]! - chance[k]!) * (after - before)) / (log[k + 1]! - log[k]!);
    before = after;
  }
  return sum < 0 ? 0 : sum > 1 ? 1 : sum;
}
