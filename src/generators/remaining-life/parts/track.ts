// How good were the forecasts? The past is forecast again from the records known at cuts half a year apart, and the readings
// that came after are held against the intervals.

import type { CalendarDay } from '../../../domain/units/calendar.js';
import { trackRecord, type TrackRecord } from '../../../domain/wear/track-record.js';
import type { WearInput } from './wear-input.js';

export interface Track {
  readonly measure: 'h' | 't';
  readonly cuts: readonly CalendarDay[];
  readonly record: TrackRecord;
}

const halfYear = 183;
/** A year and a half back: older forecasts say little about the present ones, and each cut costs a fit. */
const mostCuts = 3;

/** Only where at least one later reading can be judged; a measure without any is left out. */
export function trackOf(input: WearInput, asOf: CalendarDay): Track | undefined {
  // Thousands of units judge a forecast well enough at one cut.
  const most = input.units.count > 2000 ? 1 : mostCuts;
  const first = input.readings.day.length === 0 ? Infinity : minimum(input.readings.day);
  const cuts: CalendarDay[] = [];
  // A whole number of days before a calendar day is one.
  for (let k = 1; k <= most; k++)
    if (asOf - k * halfYear >= first) cuts.unshift((asOf - k * halfYear) as CalendarDay);
  if (cuts.length === 0) return undefined;
  const record = trackRecord(input.readings, input.units, input.pools, input.options, cuts);
  return record.judged.length === 0 ? undefined : { measure: input.measure, cuts, record };
}

function minimum(values: ArrayLike<number>): number {
  let least = Infinity;
  for (let i = 0; i < values.length; i++) least = Math.min(least, values[i] ?? Infinity);
  return least;
}
