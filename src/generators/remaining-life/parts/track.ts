// How good were the forecasts? The past is forecast again from what was known then, and what came out is held against it: the wear
// of each conveyor up to its last look, and the sets that reached their limit.

import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { CalendarDay } from '../../../domain/units/calendar.js';
import type { PooledMiss } from '../../../domain/wear/pooled-miss.js';
import {
  trackRecord,
  type FinishedSets,
  type Horizon,
  type TrackRecord,
} from '../../../domain/wear/track-record.js';
import type { FittedWear } from './forecasts.js';

export interface Track {
  readonly measure: 'h' | 't';
  readonly cuts: readonly CalendarDay[];
  readonly looks: readonly TrackedLook[];
  readonly together: TrackRecord['together'];
  readonly finished: FinishedSets;
}

export interface TrackedLook {
  readonly conveyor: Conveyor;
  readonly horizon: Horizon;
  readonly cut: CalendarDay;
  readonly day: CalendarDay;
  readonly pooled: PooledMiss;
  readonly told: boolean;
}

/** Each costs a fit; older forecasts say little about the present ones. */
const mostFits = 4;

/** Only where at least one look or one finished set can be judged; a measure without any is left out. */
export function trackOf({ input, result }: FittedWear): Track | undefined {
  const { members, readings, units, pools, options, measure } = input;
  const conveyors = [...new Set(members.map((m) => m.conveyor))];
  const record = trackRecord({
    readings,
    columns: units,
    pools,
    options,
    present: result.kind === 'fitted' ? result : undefined,
    conveyor: members.map((m) => (m.place ? conveyors.indexOf(m.conveyor) : -1)),
    limit: members.map((m, unit) => (units.fitted[unit] ?? NaN) - m.set.liner.condemn.value),
    // Thousands of units judge a forecast well enough at one cut.
    mostFits: units.count > 2000 ? 1 : mostFits,
  });
  const looks = record.looks.flatMap(({ conveyor, cut, day, ...look }): readonly TrackedLook[] => {
    const of = conveyors[conveyor];
    // Days in the columns came from calendar days.
    return of ? [{ ...look, conveyor: of, cut: cut as CalendarDay, day: day as CalendarDay }] : [];
  });
  return looks.length === 0 && record.finished.of === 0
    ? undefined
    : {
        measure,
        cuts: record.cuts as readonly CalendarDay[],
        looks,
        together: record.together,
        finished: record.finished,
      };
}
