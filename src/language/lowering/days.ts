// Dates are written as ISO 8601 has them. Other habits (14/03/2026, 14.3.2026, 2026-3-14) are told apart from dates that do
// not exist, and mended only where day and month cannot be confused.

import { parseDay, type CalendarDay } from '../../domain/units/calendar.js';

export type ReadDay =
  | { readonly ok: true; readonly day: CalendarDay }
  | { readonly ok: false; readonly why: 'no such date' }
  | {
      readonly ok: false;
      readonly why: 'form';
      readonly certain?: CalendarDay;
      readonly either?: readonly [CalendarDay, CalendarDay];
    };

export function readDay(text: string): ReadDay {
  if (/^\d{4}-\d{2}-\d{2}$/.test(text)) {
    const day = parseDay(text);
    return day === undefined ? { ok: false, why: 'no such date' } : { ok: true, day };
  }
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text);
  if (iso) return mended(dayOf(iso[1], iso[2], iso[3]), undefined);
  const slashes = /^(\d{1,2})[./](\d{1,2})[./](\d{4})$/.exec(text);
  if (slashes)
    return mended(dayOf(slashes[3], slashes[2], slashes[1]), dayOf(slashes[3], slashes[1], slashes[2]));
  return { ok: false, why: 'form' };
}

function mended(first: CalendarDay | undefined, second: CalendarDay | undefined): ReadDay {
  if (first !== undefined && second !== undefined && first !== second)
    return { ok: false, why: 'form', either: [first, second] };
  const certain = first ?? second;
  return certain === undefined ? { ok: false, why: 'no such date' } : { ok: false, why: 'form', certain };
}

function dayOf(year = '', month = '', day = ''): CalendarDay | undefined {
  return parseDay(`${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`);
}
