// Which day do rules of time count from? The day that was asked for, else the newest record's; nothing reads a clock.

import { newestDay } from '../../domain/model/newest.js';
import { formatDay, type CalendarDay } from '../../domain/units/calendar.js';
import type { RuleInput } from '../rule.js';

export function todayOf({ estate, asOf }: RuleInput): CalendarDay | undefined {
  return asOf ?? newestDay(estate);
}

/** `the records reach to 2026-09-14`, or `it is 2027-03-01` where the day was given. */
export function todayWords({ asOf }: RuleInput, day: CalendarDay): string {
  return asOf === undefined ? `the records reach to ${formatDay(day)}` : `it is ${formatDay(day)}`;
}
