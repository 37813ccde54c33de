// Which looks do the records ask for that nobody has made, and when is each due? In hours they count by the meter, in days and
// weeks by the calendar. A look answers what older records ask for: any by a named day, and so long after a record one that came in
// the second half of that time, because who comes the day after to fill oil has not made the look after the first hundred hours.

import type { CalendarDay } from '../units/calendar.js';
import { addDays, formatDay } from '../units/calendar.js';
import { recordsOf, recordWord } from './dated-records.js';
import { momentOf, momentOn, type History } from './history.js';
import type { AskedLook, DatedRecord } from './records.js';

export interface LookDue {
  readonly asked: AskedLook;
  readonly record: DatedRecord;
  /** Undefined where no duty says when so many hours will have run. */
  readonly day: CalendarDay | undefined;
}

/** Nothing is reckoned further ahead: a machine that hardly runs. */
const furthest = 3653;

/** Not yet made, the earliest due first. */
export function looksDue(history: History): readonly LookDue[] {
  const { inspections } = history;
  return recordsOf(history)
    .flatMap((record) =>
      record.asked.map((asked) => ({ asked, record, day: dueDay(history, record, asked) })),
    )
    .filter(({ asked, record, day }) => {
      const from = record.date.day;
      const enough = asked.by || day === undefined ? from + 1 : from + (day - from) / 2;
      return !inspections.some(({ inspection: { date } }) => date.day > from && date.day >= enough);
    })
    .sort((a, b) => (a.day ?? Infinity) - (b.day ?? Infinity));
}

/** By meter or calendar, or as the day was named. */
function dueDay(history: History, record: DatedRecord, { by, after }: AskedLook): CalendarDay | undefined {
  if (by) return by.day;
  const from = record.date.day;
  if (!after) return undefined;
  if (isOfTheCalendar(after.text)) return addDays(from, Math.round(after.value / 24));
  const start = momentOf(history, record).hours;
  if (start === undefined) return undefined;
  const hasRun = (days: number): boolean =>
    (momentOn(history, addDays(from, days)).hours ?? -Infinity) >= start + after.value;
  if (!hasRun(furthest)) return undefined;
  let [less, enough] = [0, furthest];
  while (enough - less > 1) {
    const middle = Math.floor((less + enough) / 2);
    if (hasRun(middle)) enough = middle;
    else less = middle;
  }
  return addDays(from, enough);
}

function isOfTheCalendar(text: string): boolean {
  return /(?:d|days?|weeks?)$/.test(text.trim());
}

/** `a look is asked for by 2026-01-10 (reline of 2025-10-13, after 100 h: running in)`. */
export function lookDueWords({ asked, record, day }: LookDue): string {
  const { after, note, asker } = asked;
  const of = [
    `${recordWord(record)} of ${formatDay(record.date.day)}`,
    ...(after ? [`after ${after.text}`] : []),
    ...(asker === undefined ? [] : [`asked by ${asker}`]),
  ].join(', ');
  const when = day === undefined ? ', and no duty says when that is' : ` by ${formatDay(day)}`;
  return `a look is asked for${when} (${of}${note === undefined ? '' : `: ${note}`})`;
}
