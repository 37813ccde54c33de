// Calendar days as whole numbers, so that no time zone and no clock can move a date.

/** Days since 1970-01-01 in the proleptic Gregorian calendar (ISO 8601). */
export type CalendarDay = number & { readonly calendarDay: unique symbol };

const pattern = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Undefined where the text is not an ISO 8601 calendar date that exists. */
export function parseDay(text: string): CalendarDay | undefined {
  const parts = pattern.exec(text);
  if (!parts) return undefined;
  const milliseconds = Date.UTC(Number(parts[1]), Number(parts[2]) - 1, Number(parts[3]));
  const day = Math.round(milliseconds / 86_400_000) as CalendarDay;
  return formatDay(day) === text ? day : undefined;
}

export function formatDay(day: CalendarDay): string {
  return new Date(day * 86_400_000).toISOString().slice(0, 10);
}

export function addDays(day: CalendarDay, days: number): CalendarDay {
  return Math.round(day + days) as CalendarDay;
}

/** 1 Monday … 7 Sunday (ISO 8601). */
export function weekday(day: CalendarDay): number {
  return ((((day + 3) % 7) + 7) % 7) + 1;
}

/** Whether a day lies in a range that includes both ends. */
export function isWithin(day: CalendarDay, from: CalendarDay, to: CalendarDay): boolean {
  return day >= from && day <= to;
}

const months = 'january february march april may june july august september october november december'.split(
  ' ',
);

/** 1 January … 12 December, by a name in any case: the whole of it, its first three letters, or `sept`; undefined for any other word. */
export function monthNamed(word: string): number | undefined {
  const plain = word.toLowerCase();
  const at = months.findIndex((name) => name === plain || name.slice(0, 3) === plain);
  return plain === 'sept' ? 9 : at < 0 ? undefined : at + 1;
}

/** The Monday of a day's week. */
