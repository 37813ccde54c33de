// How many hours a day does a conveyor run? From its duty records where there are any, else its own declared duty, else its
// plant's; and, beside that, what the meter says it ran over the last year. The spread is one standard deviation as a ratio.

import type { CalendarDay } from '../units/calendar.js';
import type { Conveyor } from './conveyor.js';
import type { Knot } from './counter.js';
import type { Origin } from './origin.js';
import type { DutyChange } from './records.js';
import { spreadRatio } from './spread-ratio.js';
import type { Toleranced } from './stated.js';
import { inTurn, speedFactors } from './turns.js';

export interface Duty {
  /** Running hours a calendar day, 0 … 24. */
  readonly perDay: number;
  /** One standard deviation as a ratio of `perDay`; undefined where none is stated or observed. */
  readonly spread: number | undefined;
  readonly basis: 'duty record' | 'conveyor' | 'plant' | 'observed';
  /** In words, for the page: `118 h/week ± 15 %, duty record of 2025-06-02`. */
  readonly origin?: Origin;
  /** As the author wrote it. */
  readonly text: string;
  /** What the duty record says beside: `second press in service`. */
  readonly note?: string;
  /** First day it holds; undefined for "always". */
  readonly from?: CalendarDay;
  /** Hours at the drive's speed that an hour counts for (turns.ts); 1 where left out. */
  readonly turns?: number;
}

/** Declared duties in order of their first day; the first holds from ever. Empty where nothing is declared. */
export function declaredDuties(conveyor: Conveyor, changes: readonly DutyChange[]): readonly Duty[] {
  const duties: Duty[] = [];
  const own = conveyor.duty ?? conveyor.plant.duty;
  if (own) duties.push({ ...numbersOf(own), basis: conveyor.duty ? 'conveyor' : 'plant' });
  const factors = new Map(speedFactors(conveyor, changes).map(({ change, factor }) => [change, factor]));
  let turns = 1;
  for (const change of inTurn(changes)) {
    turns = factors.get(change) ?? turns;
    const hours = change.duty ? numbersOf(change.duty) : hoursOf(duties.at(-1));
    if (!hours) continue;
    duties.push({
      ...(turns !== 1 && { turns }),
      ...hours,
      basis: 'duty record',
      from: change.from.day,
      ...(change.note !== undefined && { note: change.note }),
    });
  }
  return duties;
}

/** The same duties in hours at the drive's speed, which is what wear by hours follows. */
export function turningDuties(duties: readonly Duty[]): readonly Duty[] {
  return duties.map((duty) =>
    duty.turns === undefined ? duty : { ...duty, perDay: duty.perDay * duty.turns },
  );
}

/** The duty that holds on a day; where the only records start later, undefined. */
export function dutyOn(duties: readonly Duty[], day: CalendarDay): Duty | undefined {
  return duties.findLast((duty) => duty.from === undefined || duty.from <= day);
}

/** Running hours from one day to a later one; undefined where the duty of any day between is not known. `from` > `to` gives 0. */
export function hoursByDuty(duties: readonly Duty[], from: CalendarDay, to: CalendarDay): number | undefined {
  if (to <= from) return 0;
  let hours = 0;
  let day = from;
  while (day < to) {
    const duty = dutyOn(duties, day);
    if (!duty) return undefined;
    const until = nextChange(duties, day, to);
    hours += duty.perDay * (until - day);
    day = until;
  }
  return hours;
}

/** Days until so many running hours have passed, from a day on; undefined where duty is unknown or stops at zero for good. */
export function daysByDuty(duties: readonly Duty[], from: CalendarDay, hours: number): number | undefined {
  let left = hours;
  let day = from;
  for (;;) {
    const duty = dutyOn(duties, day);
    if (!duty) return undefined;
    const next = duties.find((d) => d.from !== undefined && d.from > day)?.from;
    const needed = left <= 0 ? 0 : duty.perDay > 0 ? left / duty.perDay : Infinity;
    if (next === undefined || day + needed <= next)
      return Number.isFinite(needed) ? day - from + needed : undefined;
    left -= duty.perDay * (next - day);
    day = next;
  }
}

/** What the meter shows over the year before a day: mean, and the spread of the intervals between readings about it. */
export function observedDuty(knots: readonly Knot[], until: CalendarDay): Duty | undefined {
  const within = knots.filter((k) => k.day <= until);
  const last = within.at(-1);
  if (!last) return undefined;
  // The first knot at least a year back, so that a year is covered where the records reach that far.
  const start = within.findLast((k) => k.day <= last.day - 365) ?? within[0];
  if (!start || last.day - start.day < 28) return undefined;
  const used = within.slice(within.indexOf(start));
  const perDay = (last.total - start.total) / (last.day - start.day);
  if (!(perDay >= 0 && perDay <= 24)) return undefined;
  return {
    perDay,
    spread: spreadOf(used, perDay),
    basis: 'observed',
    text: `${(perDay * 7).toFixed(0)} h/week`,
    from: start.day,
  };
}

function spreadOf(knots: readonly Knot[], mean: number): number | undefined {
  let days = 0;
  let squares = 0;
  let intervals = 0;
  for (let i = 1; i < knots.length; i++) {
    const a = knots[i - 1];
    const b = knots[i];
    if (!a || !b || b.bridged || b.day <= a.day) continue;
    const length = b.day - a.day;
    squares += length * ((b.total - a.total) / length - mean) ** 2;
    days += length;
    intervals += 1;
  }
  if (intervals < 2 || !(mean > 0)) return undefined;
  return Math.sqrt(((squares / days) * intervals) / (intervals - 1)) / mean;
}

function nextChange(duties: readonly Duty[], day: CalendarDay, to: CalendarDay): CalendarDay {
  const next = duties.find((d) => d.from !== undefined && d.from > day)?.from;
  return next !== undefined && next < to ? next : to;
}

/** Of the duty before, where a record changes the speed alone. */
function hoursOf(duty: Duty | undefined): ReturnType<typeof numbersOf> | undefined {
  const { perDay, spread, text, origin } = duty ?? {};
  return perDay === undefined || text === undefined || !origin ? undefined : { perDay, spread, text, origin };
}

function numbersOf(duty: Toleranced<'duty'>): {
  readonly perDay: number;
  readonly spread: number | undefined;
  readonly text: string;
  readonly origin: Origin;
} {
  const perDay = duty.nominal.value;
  return {
    perDay,
    spread: spreadRatio(duty),
    origin: duty.nominal.origin,
    text: duty.tolerance ? `${duty.nominal.text} ± ${duty.tolerance.text}` : duty.nominal.text,
  };
}
