// How sure are the running hours of a record? Read off the meter they are as the meter says; read with doubt, as was written; not
// read, they lie on the straight line between the readings around them, from which the weeks in between stray as a bridge does:
// most in the middle, not at all at its ends. Beyond the last reading they are what the duty brings, with all its doubt.

import { dutyOn } from './duty.js';
import { dutyVariation } from './duty-variation.js';
import type { LinerSet } from './liner-sets.js';
import { forwardDuty, momentOf, type History } from './history.js';
import type { DatedRecord } from './records.js';

/** One standard deviation, h, ≥ 0; undefined where the hours themselves are not known. */
export function hoursErrorOf(history: History, record: DatedRecord): number | undefined {
  const { meter, date } = record;
  const { hours } = momentOf(history, record);
  if (hours === undefined) return undefined;
  const { knots } = history.hours;
  if (knots.some(({ reading }) => reading.record === record)) return meter.error?.value ?? 0;
  const before = knots.findLast(({ day }) => day <= date.day);
  const last = knots.at(-1);
  if (!before || !last) return undefined;
  const since = date.day - before.day;
  if (since === 0) return 0;
  const { level, wander } = dutyVariation(knots, history.duties, dutyOn(forwardDuty(history), last.day));
  const after = knots.find(({ day }) => day > date.day);
  if (after) {
    const between = after.day - before.day;
    const perDay = (after.total - before.total) / between;
    return perDay * wander.ratio * Math.sqrt((wander.per * since * (after.day - date.day)) / between);
  }
  return (hours - before.total) * Math.hypot(level.ratio, wander.ratio * Math.sqrt(wander.per / since));
}

/** Of the hours from a liner's fitting to a look; what was there first began with the machine. */
export function exposureErrorOf(history: History, { reline }: LinerSet, look: DatedRecord): number {
  const fitted = reline && (reline.startLook ?? reline.moved ?? reline);
  return Math.hypot(
    hoursErrorOf(history, look) ?? 0,
    fitted === undefined ? 0 : (hoursErrorOf(history, fitted) ?? 0),
  );
}
