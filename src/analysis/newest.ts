// The day of the newest record of an estate: what "now" means where nobody names a day, so that no clock is read.

import type { Estate } from '../domain/model/estate.js';
import type { CalendarDay } from '../domain/units/calendar.js';

export function newestDay(estate: Estate): CalendarDay | undefined {
  let newest: CalendarDay | undefined;
  const records = [estate.inspections, estate.relines, estate.screwChanges, estate.meterChanges];
  for (const list of records)
    for (const { date } of list) if (newest === undefined || date.day > newest) newest = date.day;
  return newest;
}
