// Where could nobody look, and has nobody seen anything since? What an inspection says of a place, of a stretch, or of a condition
// that it could not look for; each is carried until a later look sees something there. Silence is no look.

import { chainageOn } from '../model/unit-of-machine.js';
import type { CalendarDay } from '../units/calendar.js';
import { formatDay } from '../units/calendar.js';
import type { Estate } from '../model/estate.js';
import type { History } from '../model/history.js';
import type { Origin } from '../model/origin.js';
import type { Inspection } from '../model/records.js';
import { followUp } from './follow-up.js';
import { conditionWords, samePlace } from './kinds.js';
import { readsBetween } from './read-between.js';

export interface NotLookedAt {
  /** `material behind liner at 13.00 m`, `12.00 m to 15.00 m`. */
  readonly what: string;
  /** Chainages, mm; undefined where it has no place along the trough. */
  readonly from: number | undefined;
  readonly to: number | undefined;
  readonly day: CalendarDay;
  readonly why: string | undefined;
  readonly origin: Origin;
}

/** In the order of the looks. */
export function notLookedAt(estate: Estate, history: History): readonly NotLookedAt[] {
  const { conveyor, inspections, asOf } = history;
  const kinds = followUp(estate, conveyor, asOf).notLooked.map(({ line, record }) => ({
    what: conditionWords(line),
    from: line.at?.value,
    to: line.at?.value,
    day: record.date.day,
    why: line.note,
    origin: line.origin,
  }));
  const stretches = inspections.flatMap(({ inspection }, i) =>
    inspection.notLooked
      .filter(
        ({ from, to }) =>
          !inspections.slice(i + 1).some((later) => sees(estate, later.inspection, from.value, to.value)),
      )
      .map(({ from, to, note, origin }) => ({
        what: [from, ...(from === to ? [] : [to])]
          .map(({ value }) => chainageOn(conveyor, value))
          .join(' to '),
        from: from.value,
        to: to.value,
        day: inspection.date.day,
        why: note,
        origin,
      })),
  );
  return [...kinds, ...stretches].sort((a, b) => a.day - b.day);
}

/** `material behind liner at 13.00 m could not be looked at on 2026-09-28: covers stayed on`. */
export function notLookedWords({ what, day, why }: NotLookedAt): string {
  return `${what} could not be looked at on ${formatDay(day)}${why === undefined ? '' : `: ${why}`}`;
}

function sees(estate: Estate, look: Inspection, from: number, to: number): boolean {
  const [low, high] = [from - samePlace, to + samePlace];
  return (
    look.conditions.some(
      ({ answer, at }) => answer !== 'not seen' && at && at.value >= low && at.value <= high,
    ) || readsBetween(estate, look, low, high)
  );
}
