// Which record is the newest, and so which day is it? Nothing in the project reads a clock: where nobody names a day, today is
// the day of the newest record.

import { compareMeters } from './meter-read.js';
import { addDays, type CalendarDay } from '../units/calendar.js';
import type { Conveyor } from './conveyor.js';
import type { Estate } from './estate.js';
import type { Origin } from './origin.js';
import type { DatedRecord } from './records.js';

export interface DatedAlone {
  readonly day: CalendarDay;
  readonly origin: Origin;
}

/** Three years without any record, and then at most two: taken for a slip of the year; our judgement. */
const longSilence = 1096;
const mostAfter = 2;

/** Records dated years after all others, the newest of the others with them; undefined where there are none. */
export function datedFarAfter(
  estate: Estate,
): { readonly before: DatedAlone; readonly records: readonly DatedAlone[] } | undefined {
  const all = byDay(estate);
  for (let i = Math.max(1, all.length - mostAfter); i < all.length; i++) {
    const [before, after] = [all[i - 1], all[i]];
    if (before && after && after.day > addDays(before.day, longSilence))
      return { before, records: all.slice(i) };
  }
  return undefined;
}

/**
 * Day of the newest record but duty, which may be a plan; undefined for an estate without records. One dated years after all others
 * is no day to count from: with it every look would be overdue and every outage past.
 */
export function newestDay(estate: Estate): CalendarDay | undefined {
  return datedFarAfter(estate)?.before.day ?? byDay(estate).at(-1)?.day;
}

/** All but duty, which may be a plan, by day. */
function byDay(estate: Estate): readonly DatedAlone[] {
  const known = dated.get(estate);
  if (known) return known;
  const found = [
    estate.inspections,
    estate.corrections,
    estate.amendments,
    estate.relines,
    estate.panelsMoved,
    estate.screwChanges,
    estate.meterChanges,
    estate.patches,
    estate.services,
  ]
    .flat()
    .map(({ date }) => ({ day: date.day, origin: date.origin }))
    .sort((a, b) => a.day - b.day);
  dated.set(estate, found);
  return found;
}

const dated = new WeakMap<Estate, readonly DatedAlone[]>();

/** The day as it was asked for, else that of the newest record, else the last commissioning; undefined where there is none of them. */
export function presentDay(estate: Estate, asOf?: CalendarDay): CalendarDay | undefined {
  const commissioned = estate.conveyors.flatMap((conveyor) => conveyor.commissioned?.date.day ?? []);
  return asOf ?? newestDay(estate) ?? latest(commissioned);
}

/** The newest of some conveyors' records, or of all; of two of one day that with the higher meter. */
export function newestRecord(
  { inspections, relines, screwChanges }: Pick<Estate, 'inspections' | 'relines' | 'screwChanges'>,
  of?: readonly Conveyor[],
): DatedRecord | undefined {
  let newest: DatedRecord | undefined;
  for (const record of [inspections, relines, screwChanges].flat()) {
    if (of && !of.includes(record.conveyor)) continue;
    if (!newest || compare(record, newest) > 0) newest = record;
  }
  return newest;
}

function compare(a: DatedRecord, b: DatedRecord): number {
  return a.date.day - b.date.day || compareMeters(a.meter, b.meter);
}

function latest(days: readonly CalendarDay[]): CalendarDay | undefined {
  return days.reduce<CalendarDay | undefined>((a, b) => (a === undefined || b > a ? b : a), undefined);
}
