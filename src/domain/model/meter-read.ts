// The hour meter as a record has it, which may be not at all: what it says, and which of two records of one day came first by it.

import type { MeterReading } from './records.js';

/** h; NaN where nobody read it, so that it is the same as, above and below nothing. */
export function hoursRead({ hours }: MeterReading): number {
  return hours?.value ?? NaN;
}

/** As it was written, `8120 h`, or that nobody read it. */
export function meterWords({ hours }: MeterReading): string {
  return hours?.text ?? 'not read';
}

/** Of two records of one day; 0 where one of them does not tell. */
export function compareMeters(a: MeterReading, b: MeterReading): number {
  return a.hours && b.hours ? a.hours.value - b.hours.value : 0;
}
