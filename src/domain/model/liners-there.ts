// Which liner lay at a spot when a reading was made? Needed only to know what a colour means, so it goes by dates and, on the
// day of a reline, by the meter; exposure is worked out elsewhere (history.ts).

import type { Conveyor } from './conveyor.js';
import { firstLinerAt, firstLiners } from './first-liner.js';
import { panelEnds } from './first-panels.js';
import { linersBrought } from './same-again.js';
import { compareMeters } from './meter-read.js';
import type { MeterReading, Reline } from './records.js';
import { intervalOf } from './runs.js';
import type { LinerSpecification } from './specifications.js';
import type { CalendarDay } from '../units/calendar.js';

/**
 * The liner that lay at a chainage (mm) on a day with this meter reading, likeliest first. On the day of a reline both the
 * new and the old one may have been looked at. Without a chainage: every liner that may have lain anywhere in the conveyor.
 */
export type LinersAt = (
  chainage: number | undefined,
  day: CalendarDay,
  meter: MeterReading | 'after all work',
) => readonly LinerSpecification[];

/** `relines` of the conveyor in order of date. */
export function linersOf(conveyor: Conveyor, relines: readonly Reline[]): LinersAt {
  const all = firstLiners(conveyor);
  const firstAt = (chainage: number | undefined): readonly LinerSpecification[] =>
    chainage === undefined || all.length === 1 ? all : [firstLinerAt(conveyor, chainage)];
  if (relines.length === 0) return firstAt;
  const fitted = relines.map((reline) => ({ reline, covers: cover(reline) }));
  return (chainage, day, meter) => {
    const there = fitted.filter(
      ({ reline, covers }) => reline.date.day <= day && (chainage === undefined || covers(chainage)),
    );
    const history = [...firstAt(chainage), ...there.flatMap(({ reline }) => linersBrought(reline, chainage))];
    const last = there.at(-1)?.reline;
    if (chainage === undefined) return history.reverse();
    if (last?.date.day !== day) return history.slice(-1);
    const both = history.slice(-2);
    return meter === 'after all work' || compareMeters(meter, last.meter) > 0 ? both.reverse() : both;
  };
}

function cover(reline: Reline): (chainage: number) => boolean {
  if (reline.scope.length === 0) return () => true;
  const intervals = reline.scope.flatMap((stretch) => intervalOf(reline.conveyor, stretch, panelEnds) ?? []);
  return (chainage) => intervals.some(({ from, to }) => chainage >= from && chainage <= to);
}
