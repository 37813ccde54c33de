// Records in words, for messages: `inspection of 2025-03-10`.

import type { DatedRecord, Inspection, Reline, ScrewChange } from '../../domain/model/records.js';
import { formatDay } from '../../domain/units/calendar.js';

export function dayOf(record: DatedRecord): string {
  return formatDay(record.date.day);
}

export function named(
  what: 'inspection' | 'reline' | 'screw change',
  record: Inspection | Reline | ScrewChange,
): string {
  return `${what} of ${dayOf(record)}`;
}
