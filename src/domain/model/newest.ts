// Which record is the newest, and so which day is it? Nothing in the project reads a clock: where nobody names a day, today is
// the day of the newest record.

import { compareMeters } from './meter-read.js';
import type { CalendarDay } from '../units/calendar.js';
import type { Conveyor } from './conveyor.js';
import type { Estate } from './estate.js';
import type { DatedRecord } from './records.js';

/** Day of the newest record but duty, which may be a plan; undefined for an estate without records. */
export function newestDay(estate: Estate): CalendarDay | undefined {
  const {
    inspections,
    corrections,
    amendments,
    relines,
    panelsMoved,
    screwChanges,
    meterChanges,
    patches,
    services,
  } = estate;
  return latest(
    [
      inspections,
      corrections,
      amendments,
      relines,
      panelsMoved,
      screwChanges,
      meterChanges,
      patches,
      services,
    ]
      .flat()
      .map(({ date }) => date.day),
  );
}

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
