// The duty that dates rest on, on a given day.

import type { CalendarDay } from '../../../domain/units/calendar.js';
import type { Duty } from '../../../domain/model/duty.js';
import { forwardDuty, type History } from '../../../domain/model/history.js';

/** Undefined where none is declared or observed. */
export function dutyInForce(history: History, day: CalendarDay): Duty | undefined {
  return forwardDuty(history).findLast((duty) => duty.from === undefined || duty.from <= day);
}
