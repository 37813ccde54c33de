// How much wear does an hour at another speed bring? A spiral slides on its liner turn by turn, so where wear goes by hours an hour at
// a recorded speed counts by its turns: at 22 rpm on a drive of 18 rpm for 22/18 of an hour. The meter itself keeps hours. Without a
// speed of the drive to compare with, or where wear goes by tonnes, a recorded speed says nothing of the wear.

import type { CalendarDay } from '../units/calendar.js';
import type { Conveyor } from './conveyor.js';
import type { DutyChange } from './records.js';

/** From a day on an hour counts for so many at the drive's own speed. */
export interface SpeedChange {
  readonly day: CalendarDay;
  /** Running hours on that day, since the start of the records' axis. */
  readonly hours: number;
  /** Recorded speed over the drive's, > 0. */
  readonly factor: number;
}

/** Recorded speed over the drive's by record, in order of days; those that say nothing of the wear are left out. */
export function speedFactors(
  conveyor: Conveyor,
  changes: readonly DutyChange[],
): readonly { readonly change: DutyChange; readonly factor: number }[] {
  const usual = conveyor.drive?.speed?.value;
  if (conveyor.wearBy === 'tonnes' || usual === undefined || !(usual > 0)) return [];
  return inTurn(changes).flatMap((change) =>
    change.speed && change.speed.value > 0 ? [{ change, factor: change.speed.value / usual }] : [],
  );
}

/** First to last; of one day in the order they are written. */
export function inTurn(changes: readonly DutyChange[]): readonly DutyChange[] {
  return [...changes].sort((a, b) => a.from.day - b.from.day || a.origin.start - b.origin.start);
}

/** Hours at the drive's speed that have brought as much wear as so many running hours. */
export function byTurns(changes: readonly SpeedChange[], hours: number): number {
  let sum = hours;
  changes.forEach(({ hours: from, factor }, i) => {
    const until = Math.min(hours, changes[i + 1]?.hours ?? Infinity);
    if (until > from) sum += (factor - 1) * (until - from);
  });
  return sum;
}

/** The other way: running hours after which so many hours by turns have gone. */
export function runningHours(changes: readonly SpeedChange[], turned: number): number {
  const at = changes.findLast(({ hours }) => byTurns(changes, hours) <= turned);
  return at ? at.hours + (turned - byTurns(changes, at.hours)) / at.factor : turned;
}
