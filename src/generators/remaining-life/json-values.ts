// How values stand in the report's data: days in ISO 8601, nine significant digits, missing as null.

import { formatDay, type CalendarDay } from '../../domain/units/calendar.js';

export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

export function day(value: CalendarDay | undefined): string | null {
  return value === undefined ? null : formatDay(value);
}

/** Nine significant digits: more than any gauge, few enough to be the same on every machine. */
export function number(value: number | undefined): number | null {
  return value === undefined || !Number.isFinite(value) ? null : Number(value.toPrecision(9));
}
