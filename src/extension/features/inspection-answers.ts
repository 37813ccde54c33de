// Can what was typed be the date and the meter of a new inspection? Plain, so that it can be tried without an editor.

import type { ConveyorSubject } from '../../protocol/messages.js';

type Newest = ConveyorSubject['newest'];

/** Undefined where the date exists and is written as 2026-03-14. */
export function wrongDate(text: string): 'form' | 'no such date' | undefined {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return 'form';
  // A day that does not exist is counted on into the next month, and comes back as another date.
  const read = new Date(`${text}T00:00:00Z`);
  return Number.isNaN(read.getTime()) || read.toISOString().slice(0, 10) !== text
    ? 'no such date'
    : undefined;
}

/** A meter that has not been changed does not run back: after the newest record it shows that record's hours or more. */
export function wrongMeter(text: string, date: string, newest: Newest): 'form' | 'runs back' | undefined {
  if (!/^\d+(\.\d+)?(\s*h)?$/.test(text)) return 'form';
  if (newest?.hours === undefined || date < newest.date) return undefined;
  return Number.parseFloat(text) < newest.hours ? 'runs back' : undefined;
}
