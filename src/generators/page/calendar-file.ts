// A list of days as an iCalendar file (RFC 5545): the one place that knows the encoder. Whole days, fixed ids and stamps, so that
// importing a file again moves its entries instead of adding others. Work takes up its days; what is only to be remembered leaves them
// free. A reminder rings at eight in the morning, so many days before.

import ical, { ICalAlarmType, ICalEventBusyStatus, ICalEventTransparency } from 'ical-generator';
import { addDays, formatDay, type CalendarDay } from '../../domain/units/calendar.js';

export interface CalendarEntry {
  /** The same whenever the file is made again. */
  readonly id: string;
  readonly from: CalendarDay;
  /** Last day, inclusive. */
  readonly to: CalendarDay;
  readonly summary: string;
  readonly description: string;
  readonly location?: string;
  /** Whether people are taken up by it. */
  readonly busy: boolean;
  /** Days before the first day on which it rings. */
  readonly remind: readonly number[];
}

export interface CalendarFile {
  readonly name: string;
  readonly asOf: CalendarDay;
  readonly entries: readonly CalendarEntry[];
}

const morning = 8 * 3600;

export function calendarFile({ name, asOf, entries }: CalendarFile): string {
  const calendar = ical({
    name,
    prodId: { company: 'Troughline', product: 'Troughline', language: 'EN' },
  });
  for (const entry of entries)
    calendar.createEvent({
      id: `${entry.id}@troughline`.toLowerCase(),
      stamp: dayStart(asOf),
      allDay: true,
      start: dayStart(entry.from),
      end: dayStart(addDays(entry.to, 1)),
      summary: entry.summary,
      description: entry.description,
      ...(entry.location !== undefined && { location: entry.location }),
      transparency: entry.busy ? ICalEventTransparency.OPAQUE : ICalEventTransparency.TRANSPARENT,
      busystatus: entry.busy ? ICalEventBusyStatus.BUSY : ICalEventBusyStatus.FREE,
      alarms: entry.remind.map((days) => ({
        type: ICalAlarmType.display,
        description: entry.summary,
        // Seconds before midnight at the beginning of the first day; below zero is after it.
        ...alarmTime(days * 86_400 - morning),
      })),
    });
  return `${calendar.toString()}\r\n`.replace(/(\r\n)+$/, '\r\n');
}

function alarmTime(before: number): { readonly triggerBefore: number } | { readonly triggerAfter: number } {
  return before >= 0 ? { triggerBefore: before } : { triggerAfter: -before };
}

/** The encoder writes a whole day from a date's UTC parts, wherever it runs. */
function dayStart(day: CalendarDay): Date {
  return new Date(`${formatDay(day)}T00:00:00Z`);
}
