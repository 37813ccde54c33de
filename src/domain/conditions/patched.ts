// What does a patch lie over? The whole spot, not as near as two tellings of one place may be: steel beside it is as bare as before.

import type { ConditionLine, Patch } from '../model/records.js';
import type { CalendarDay } from '../units/calendar.js';
import { hoursApart, middleClock } from '../units/clock.js';

/** Chainages in mm; a clock position where one is known. */
export function liesOver(
  { from, to, sector }: Patch,
  spot: { readonly from: number; readonly to: number; readonly clock?: number | undefined },
): boolean {
  if (spot.from < from.value || spot.to > to.value) return false;
  if (sector === undefined || spot.clock === undefined) return true;
  const [low, high] = [sector.from.hours, sector.to.hours];
  const middle = middleClock(low, high);
  return hoursApart(spot.clock, middle) <= hoursApart(low, middle);
}

/** The first patch from a day on over the whole of a leak or a crack of the trough: welded over, it is a leak no more. */
export function patchOver(
  patches: readonly Patch[],
  { kind, at, to, clock }: ConditionLine,
  day: CalendarDay,
): Patch | undefined {
  if (kind !== 'trough leaking' && kind !== 'trough cracked') return undefined;
  if (at === undefined) return undefined;
  const spot = { from: at.value, to: (to ?? at).value, clock: clock?.hours };
  return patches
    .filter((patch) => patch.date.day >= day && liesOver(patch, spot))
    .reduce<Patch | undefined>(
      (first, each) => (first && first.date.day <= each.date.day ? first : each),
      undefined,
    );
}
