// What does a patch lie over? The whole spot, not as near as two tellings of one place may be: steel beside it is as bare as before.
// And was the patch read, or what lies under it? A shift measures, then welds: what was read on the day of the patch (or in
// the reline it was welded for) is what it was welded over, unless it is as thick as the patch, or its words say that it is the patch.

import type { ConditionLine, Patch, PlateReading } from '../model/records.js';
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

/** mm by which a patch just welded in may read off its thickness (judgement: mill tolerance of thin plate and a gauge together). */
const asThick = 0.4;

const ofThePatch =
  /\b(on|of|over|through) (the |this |new )*(patch|weld|repair)|\bafter (the |it was )?(patch|weld|repair)|\bnew(ly)? (patch|plate|weld)/i;
const ofTheOld = /\b(before|old|under|beside|next to)\b/i;

/** `since`: the first day on which it may have been read; what stands in a reline was read at some hour of its stop. */
export function isOfPatch(
  patch: Patch,
  read: { readonly since: CalendarDay; readonly day: CalendarDay },
  { thickness, error, note }: PlateReading,
): boolean {
  if (read.day < patch.date.day) return false;
  if (read.since > patch.date.day) return true;
  if (note !== undefined && ofTheOld.test(note)) return false;
  if (note !== undefined && ofThePatch.test(note)) return true;
  return Math.abs(thickness.value - patch.thickness.value) <= Math.max(asThick, 2 * (error?.value ?? 0));
}
