// The day that a cell means. ISO 8601 and days with the month in words mean one day; numbers with dots, slashes or hyphens mean
// two as soon as both could be a month, so the order is stated in the mapping and never guessed. Serial numbers count from the
// year their sheet says (ECMA-376 18.17.4.1; the 29 February 1900 that never was is kept there, so days count from 1899-12-30).

import { addDays, monthNamed, parseDay, type CalendarDay } from '../../domain/units/calendar.js';
import type { SheetCell } from '../table.js';

export const dayOrders = ['day-month-year', 'month-day-year', 'year-month-day'] as const;
export type DayOrder = (typeof dayOrders)[number];

export interface DayStated {
  readonly order: DayOrder | undefined;
  /** Numbers without the form of a date count days from here. */
  readonly numbersFrom: 1900 | 1904 | undefined;
  /** Added to years of two digits: 1900 or 2000. */
  readonly century: number | undefined;
  readonly dateSystem: 1900 | 1904;
}

export type DayRead =
  { readonly ok: true; readonly day: CalendarDay } | { readonly ok: false; readonly why: string };

export function readDay(cell: SheetCell, stated: DayStated): DayRead {
  if (cell.kind === 'error') return { ok: false, why: `holds ${cell.text}` };
  if (cell.kind === 'date') return fromSerial(cell.number ?? NaN, stated.dateSystem, cell.text);
  const serial =
    cell.kind === 'number'
      ? cell.number
      : /^\d{5}(?:[.,]\d+)?$/.test(cell.text)
        ? Number(cell.text.replace(',', '.'))
        : undefined;
  if (serial !== undefined) {
    if (stated.numbersFrom === undefined)
      return {
        ok: false,
        why: `${cell.text} is a number and no date (date numbers: 1900 reads it as a count of days)`,
      };
    return fromSerial(serial, stated.numbersFrom, cell.text);
  }
  return fromText(cell.text, stated);
}

const firstDays = { 1900: parseDay('1899-12-30'), 1904: parseDay('1904-01-01') } as const;

function fromSerial(serial: number, system: 1900 | 1904, text: string): DayRead {
  const first = firstDays[system];
  // 1904 to 2200: a smaller number is a time of day, or a count of something else.
  if (first === undefined || !(serial >= (system === 1900 ? 1462 : 1) && serial < 110_000))
    return { ok: false, why: `${text} is not a day` };
  return { ok: true, day: addDays(first, Math.floor(serial + 1e-9)) };
}

/** Behind a day a time may stand; it says nothing about wear. */
const time = String.raw`(?:[ T,]+\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d+)?)?(?: ?[ap]\.?m\.?)?(?:Z|[+-]\d{2}:?\d{2})?)?`;
const iso = new RegExp(String.raw`^(\d{4})-(\d{1,2})-(\d{1,2})${time}$`, 'i');
const numbers = new RegExp(String.raw`^(\d{1,4})([./-])\s?(\d{1,2})\2\s?(\d{1,4})${time}$`, 'i');
const dayFirst = new RegExp(
  String.raw`^(?:[a-z]+,? )?(\d{1,2})(?:st|nd|rd|th)?[ .-]+([a-z]+)[ .,-]+(\d{4}|\d{2})${time}$`,
  'i',
);
const monthFirst = new RegExp(
  String.raw`^([a-z]+)[ .-]+(\d{1,2})(?:st|nd|rd|th)?[ ,.-]+(\d{4}|\d{2})${time}$`,
  'i',
);

function fromText(text: string, { order, century }: DayStated): DayRead {
  const exact = iso.exec(text);
  if (exact) return dayOf(text, exact[1], exact[2], exact[3], century);
  const spelled = dayFirst.exec(text);
  if (spelled) return dayOf(text, spelled[3], monthNumber(spelled[2]), spelled[1], century);
  const american = monthFirst.exec(text);
  if (american) return dayOf(text, american[3], monthNumber(american[1]), american[2], century);
  const parts = numbers.exec(text);
  if (!parts) return { ok: false, why: `${text} is not a date` };
  const [, one, , two, three] = parts;
  if (order === undefined)
    return { ok: false, why: `${text}: the mapping does not say in which order day and month stand (dates)` };
  if ((one?.length === 4) !== (order === 'year-month-day'))
    return { ok: false, why: `${text} does not stand in the order ${order}` };
  switch (order) {
    case 'day-month-year':
      return dayOf(text, three, two, one, century);
    case 'month-day-year':
      return dayOf(text, three, one, two, century);
    case 'year-month-day':
      return dayOf(text, one, two, three, century);
  }
}

/** Whether a text is a date that needs an order, and which orders give a day. */
export function ordersOf(text: string): readonly DayOrder[] {
  if (iso.test(text) || !numbers.test(text)) return [];
  return dayOrders.filter(
    (order) =>
      readDay({ kind: 'text', text }, { order, century: 2000, numbersFrom: undefined, dateSystem: 1900 }).ok,
  );
}

export function hasShortYear(text: string): boolean {
  const year = numbers.exec(text)?.[4] ?? dayFirst.exec(text)?.[3] ?? monthFirst.exec(text)?.[3];
  return year?.length === 2 && numbers.exec(text)?.[1]?.length !== 4;
}

/** Of no month 0, which no day has. */
function monthNumber(word = ''): string {
  return String(monthNamed(word) ?? 0);
}

function dayOf(
  text: string,
  year: string | undefined,
  month: string | undefined,
  day: string | undefined,
  century: number | undefined,
): DayRead {
  const two = (part = ''): string => part.padStart(2, '0');
  if (year?.length === 2 && century === undefined)
    return { ok: false, why: `${text}: the mapping does not say which century is meant (century: 2000)` };
  const full = year?.length === 2 ? String((century ?? 0) + Number(year)) : (year ?? '');
  const found = parseDay(`${full}-${two(month)}-${two(day)}`);
  return found === undefined
    ? { ok: false, why: `${text} is not a day of the calendar` }
    : { ok: true, day: found };
}
