// Working hours and calendar time: the shifts of a plant laid over the days of a window, one stretch of work after another.

import type { CalendarDay } from '../units/calendar.js';
import { addDays, weekday } from '../units/calendar.js';
import type { Job } from '../model/job.js';

export interface CalendarMoment {
  readonly day: CalendarDay;
  /** Hours after midnight, 0 ≤ hour < 24, or 24 for the end of the day. */
  readonly hour: number;
}

export interface WorkCalendar {
  /** Working hours from the first to the last day of the window; undefined without a window. */
  readonly available: number | undefined;
  /** Said in words where the plant declares no shift. */
  readonly assumed?: string;
  /** False where no shift falls on any day. */
  readonly works: boolean;
  /** When so many working hours have passed since the first shift; a start goes to the next shift where an end goes to the last. */
  startAt(hours: number): CalendarMoment | undefined;
  finishAt(hours: number): CalendarMoment | undefined;
  /** Shifts that the first so many working hours take. */
  shiftsFor(hours: number): number;
  /** Ends of shifts, as far as so many working hours: hours passed at each and hours until the next; shifts that touch are one. */
  shiftEnds(upTo: number): readonly { readonly at: number; readonly off: number }[];
  /** Hours; 0 where there is no shift. */
  readonly longestShift: number;
}

/** One shift from 7:00 to 15:00 every day; judgement, used where the plant declares none. */
const usualShift = { from: 7, to: 15, days: [] as readonly number[] };
const mostDays = 800;

export function workCalendar(job: Job): WorkCalendar {
  const declared = job.conveyor.plant.shifts.map((shift) => ({
    from: shift.from.hours,
    to: shift.to.hours,
    days: shift.days,
  }));
  const shifts = declared.length > 0 ? declared : [usualShift];
  const assumed =
    declared.length > 0
      ? {}
      : { assumed: 'No shift is declared: 7:00 to 15:00 every day is taken, a judgement.' };
  const first = job.window?.from.day;
  // Without a window, days are counted from a Monday, so that shifts on weekdays come in their usual order.
  const origin = first ?? (4 as CalendarDay);
  const days = job.window ? job.window.to.day - job.window.from.day + 1 : undefined;
  const spans = spansOf(shifts, origin);
  const available =
    days === undefined
      ? undefined
      : spans.reduce((sum, span) => sum + Math.max(0, Math.min(span.to, days * 24) - span.from), 0);

  const at = (hours: number, start: boolean): CalendarMoment | undefined => {
    let left = hours;
    for (const span of spans) {
      const length = span.to - span.from;
      if (start ? left < length - 1e-9 : left <= length + 1e-9)
        return moment(origin, span.from + Math.max(0, left), start);
      left -= length;
    }
    return undefined;
  };
  return {
    available,
    ...assumed,
    works: spans.length > 0,
    startAt: (hours) => (first === undefined ? undefined : at(hours, true)),
    finishAt: (hours) => (first === undefined ? undefined : at(hours, false)),
    longestShift: Math.max(0, ...spans.map((span) => span.to - span.from)),
    shiftEnds: (upTo) => {
      const ends: { at: number; off: number }[] = [];
      let passed = 0;
      for (const [k, span] of spans.entries()) {
        passed += span.to - span.from;
        const next = spans[k + 1];
        if (passed >= upTo || !next) break;
        ends.push({ at: passed, off: next.from - span.to });
      }
      return ends;
    },
    shiftsFor: (hours) => {
      let left = hours;
      let count = 0;
      for (const span of spans) {
        if (left <= 1e-9) break;
        left -= span.to - span.from;
        count++;
      }
      return count;
    },
  };
}

function moment(origin: CalendarDay, hours: number, start: boolean): CalendarMoment {
  const minutes = Math.round(hours * 60);
  const day = Math.floor(minutes / 1440);
  const hour = (minutes - day * 1440) / 60;
  if (!start && hour === 0 && day > 0) return { day: addDays(origin, day - 1), hour: 24 };
  return { day: addDays(origin, day), hour };
}

/** Hours from midnight of the first day; shifts that touch or overlap are one span. */
function spansOf(
  shifts: readonly { readonly from: number; readonly to: number; readonly days: readonly number[] }[],
  origin: CalendarDay,
): { from: number; to: number }[] {
  const all: { from: number; to: number }[] = [];
  for (let d = 0; d < mostDays; d++) {
    for (const shift of shifts) {
      if (shift.days.length > 0 && !shift.days.includes(weekday(addDays(origin, d)))) continue;
      const length = shift.to > shift.from ? shift.to - shift.from : shift.to + 24 - shift.from;
      all.push({ from: d * 24 + shift.from, to: d * 24 + shift.from + length });
    }
  }
  all.sort((a, b) => a.from - b.from);
  const merged: { from: number; to: number }[] = [];
  for (const span of all) {
    const last = merged.at(-1);
    if (last && span.from <= last.to) last.to = Math.max(last.to, span.to);
    else merged.push({ ...span });
  }
  return merged;
}
