// On which day is an accepted risk passed? One day for the pages: that of the decision, by what was seen, the limit or steel,
// whichever comes first. Where no decision could be worked out, the model's own for the limit.

import type { CalendarDay } from '../../../domain/units/calendar.js';
import type { ConveyorLife } from './conveyor-life.js';

/** Undefined: not within forty years. */
export function riskDayOf({
  decision,
  model,
}: Pick<ConveyorLife, 'decision' | 'model'>): CalendarDay | undefined {
  return decision ? (decision.passedSeen ?? decision.passed?.day) : model?.riskDay;
}
