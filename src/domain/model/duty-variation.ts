// How sure are the hours that nobody has read yet? What a duty brings is uncertain twice over: its long-run mean may be off (the
// level, the same for all time to come), and the weeks are not alike (the wander, which evens out with time). Over Δt days since
// the meter was last read the mean is out by v, v² = level² + wander²·per/Δt. The level is the ± of the duty in force, but never
// less than the yearly means of the meter have differed by; the wander is what the intervals between meter readings show.

import type { CalendarDay } from '../units/calendar.js';
import { totalBetween, type Knot } from './counter.js';
import { hoursByDuty, type Duty } from './duty.js';

export interface DutyVariation {
  /** One standard deviation of the mean duty to come, as a ratio of it. */
  readonly level: { readonly ratio: number; readonly from: 'declared' | 'observed' | 'assumed' };
  /** One standard deviation of the mean over one interval of `per` days, as a ratio; it shrinks with the root of the time. */
  readonly wander: {
    readonly ratio: number;
    /** Days, > 0. */
    readonly per: number;
    readonly from: 'declared' | 'observed' | 'assumed';
  };
}

/** Where neither a duty nor the meter tells: our judgement, shown as assumed. */
export const assumedLevel = 0.15;
export const assumedWander = 0.2;
/** Days between looks where none were made yet: half a year. */
const assumedInterval = 182;

/**
 * @param knots what the meter of the conveyor has shown, in order
 * @param duties declared ones, so that a stated change of duty is no variation; may be empty
 * @param inForce the duty whose ± counts
 */
export function dutyVariation(
  knots: readonly Knot[],
  duties: readonly Duty[],
  inForce: Duty | undefined,
): DutyVariation {
  const stated = inForce?.basis === 'observed' ? undefined : inForce?.spread;
  const said = saidBy(knots, duties);
  const yearly = spreadOfYears(knots, said);
  const between = wanderOf(knots, said);
  const level =
    stated !== undefined && stated >= (yearly ?? 0)
      ? ({ ratio: stated, from: 'declared' } as const)
      : yearly !== undefined
        ? ({ ratio: yearly, from: 'observed' } as const)
        : ({ ratio: assumedLevel, from: 'assumed' } as const);
  const per = between?.per ?? assumedInterval;
  if (between?.ratio !== undefined) return { level, wander: { ratio: between.ratio, per, from: 'observed' } };
  return stated !== undefined
    ? { level, wander: { ratio: stated, per, from: 'declared' } }
    : { level, wander: { ratio: assumedWander, per, from: 'assumed' } };
}

/** Standard deviation of what whole years brought over what the duty said they would; undefined below two whole years. */
function spreadOfYears(knots: readonly Knot[], said: Said): number | undefined {
  const [first, last] = [knots[0], knots.at(-1)];
  if (!first || !last) return undefined;
  const shares: number[] = [];
  for (let end: number = last.day; end - 365 >= first.day; end -= 365) {
    // A whole number of days before a calendar day is one.
    const [from, to] = [(end - 365) as CalendarDay, end as CalendarDay];
    const [before, after] = [totalBetween(knots, from), totalBetween(knots, to)];
    if (before !== undefined && after !== undefined) shares.push((after - before) / said(from, to));
  }
  if (shares.length < 2) return undefined;
  const mean = shares.reduce((a, b) => a + b, 0) / shares.length;
  if (!(mean > 0) || !Number.isFinite(mean)) return undefined;
  return Math.sqrt(shares.reduce((sum, s) => sum + (s - mean) ** 2, 0) / (shares.length - 1)) / mean;
}

/** From three intervals on; their usual length is told from one. Shorter ones count for less, as a walk has it. */
function wanderOf(
  knots: readonly Knot[],
  said: Said,
): { readonly ratio: number | undefined; readonly per: number } | undefined {
  const intervals: { days: number; share: number; weight: number }[] = [];
  knots.forEach((b, i) => {
    const a = knots[i - 1];
    if (!a || b.bridged || b.day <= a.day) return;
    const weight = said(a.day, b.day);
    if (weight > 0) intervals.push({ days: b.day - a.day, share: (b.total - a.total) / weight, weight });
  });
  const lengths = intervals.map(({ days }) => days).sort((a, b) => a - b);
  const per = lengths[lengths.length >> 1];
  if (per === undefined) return undefined;
  const weight = intervals.reduce((sum, one) => sum + one.weight, 0);
  const mean = intervals.reduce((sum, one) => sum + one.weight * one.share, 0) / weight;
  if (intervals.length < 3 || !(mean > 0)) return { ratio: undefined, per };
  const squares = intervals.reduce((sum, { days, share }) => sum + (days / per) * (share / mean - 1) ** 2, 0);
  return { ratio: Math.sqrt(squares / (intervals.length - 1)), per };
}

type Said = (from: CalendarDay, to: CalendarDay) => number;

/** Hours that the declared duty had in mind; days where it does not cover all the records, as only ratios count. */
function saidBy(knots: readonly Knot[], duties: readonly Duty[]): Said {
  const [first, last] = [knots[0], knots.at(-1)];
  const covered = first && last && (hoursByDuty(duties, first.day, last.day) ?? 0) > 0;
  return (from, to) => (covered ? (hoursByDuty(duties, from, to) ?? 0) : to - from);
}
