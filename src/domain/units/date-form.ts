// Reads a date as people write it. Only ISO 8601 (2026-03-14) is taken as said; for the other habits the ISO form is
// proposed where it is certain: 14/03/2026 can only be 14 March, but 03/04/2026 is March in one country, April in another.

import { formatDay, parseDay, type CalendarDay } from './calendar.js';

export type ReadDay =
  | { readonly ok: true; readonly day: CalendarDay }
  | { readonly ok: false; readonly problem: 'no such date' }
  /** `corrected` only where one meaning is possible; `readings` where there are two. */
  | { readonly ok: false; readonly problem: 'date form'; readonly corrected?: string; readonly readings?: readonly [string, string] };

/** Day of a date text; never guesses. `2026-02-30` is a date that does not exist, not a date form. */
export function readDay(text: string): ReadDay {
  const trimmed = text.trim();
  const day = parseDay(trimmed);
  if (day !== undefined) return { ok: true, day };
  if (/^\d{4}-\d{2}-\d{2}$/.test(trimmed)) return { ok: false, problem: 'no such date' };

  const yearFirst = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(trimmed) ?? /^(\d{4})(\d{2})(\d{2})$/.exec(trimmed);
  if (yearFirst) return proposal([iso(yearFirst[1], yearFirst[2], yearFirst[3])]);
  const yearLast = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4})$/.exec(trimmed);
  if (yearLast) return proposal([iso(yearLast[3], yearLast[2], yearLast[1]), iso(yearLast[3], yearLast[1], yearLast[2])]);
  return { ok: false, problem: 'date form' };
}

function iso(year = '', month = '', day = ''): string | undefined {
  const text = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  const parsed = parseDay(text);
  return parsed === undefined ? undefined : formatDay(parsed);
}

function proposal(candidates: readonly (string | undefined)[]): ReadDay {
  const possible = [...new Set(candidates)].filter((text) => text !== undefined);
  const [first, second] = possible;
  if (first === undefined) return { ok: false, problem: 'no such date' };
  return { ok: false, problem: 'date form', ...(second === undefined ? { corrected: first } : { readings: [first, second] }) };
}
