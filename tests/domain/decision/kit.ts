// An outlook from plain lognormal lives, for stories about decisions: a place reaches its limit at a life that is lognormal in
// exposure, conditioned on not having reached it yet, and running is the same every day.

import erfc from '@stdlib/math-base-special-erfc';
import type { Chances, PanelOutlook, WearOutlook } from '../../../src/domain/decision/wear-outlook.js';
import type { CalendarDay } from '../../../src/domain/units/calendar.js';
import { calendarDay } from '../../kit/estate.js';

export const today = calendarDay('2026-10-31');

export interface Place {
  readonly run?: number;
  readonly panel: number;
  /** Median life to the limit and one standard deviation of its logarithm; exposure today. */
  readonly median: number;
  readonly spread: number;
  readonly now: number;
  readonly seen?: boolean;
}

export const perDay = 16;

export function normal(z: number): number {
  return 0.5 * erfc(-z / Math.SQRT2);
}

/** Chance by an exposure, given that it was not reached at `now`. */
function lognormal({ median, spread, now }: Place): (exposure: number) => number {
  const plain = (x: number): number => (x <= 0 ? 0 : normal(Math.log(x / median) / spread));
  const before = plain(now);
  return (x) => (x <= now ? 0 : (plain(x) - before) / (1 - before));
}

export const limit = 9;
export const through = 12;

export function panel(place: Place): PanelOutlook {
  const { run = 1, panel: number, seen = true, now, median } = place;
  const reachedBy = lognormal(place);
  const at = (day: CalendarDay): number => now + perDay * (day - today);
  return {
    run,
    panel: number,
    from: (number - 1) * 1200,
    to: number * 1200,
    seen,
    place: seen ? `P${number}` : `panel ${number} of run ${run}`,
    at: (number - 0.5) * 1200,
    life: { now, limit, through, reachedBy, median },
    condemnBy: (day) => reachedBy(at(day)),
    contactBy: (day) => reachedBy((at(day) * limit) / through),
  };
}

/** Panels independent of each other. */
export function outlook(places: readonly Place[], dutySpread = 0): WearOutlook {
  const panels = places.map(panel);
  const first = (some: readonly PanelOutlook[]): Chances => ({
    condemnBy: (day) => 1 - some.reduce((left, each) => left * (1 - each.condemnBy(day)), 1),
    contactBy: (day) => 1 - some.reduce((left, each) => left * (1 - each.contactBy(day)), 1),
  });
  const seen = panels.filter((each) => each.seen);
  return {
    asOf: today,
    counted: first(panels),
    seen: seen.length > 0 ? first(seen) : undefined,
    panels,
    rest: (relined) => first(panels.filter((each) => !relined.includes(each))),
    restSeen: (relined) => first(seen.filter((each) => !relined.includes(each))),
    exposureBy: (day) => perDay * (day - today),
    hoursBy: (day) => perDay * (day - today),
    turnedBy: (day) => perDay * (day - today),
    dutySpread,
  };
}
