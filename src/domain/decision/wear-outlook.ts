// What decisions know of the wear of one conveyor: by day, the chance that the condemn limit and the steel are reached, of the
// conveyor as a whole and of each panel. Panels that nobody has seen are counted in, with what the others lend; what was seen
// is kept apart. The outlook is made by whoever has the forecasts; nothing here fits anything.

import type { LinerSpecification } from '../model/specifications.js';
import type { CalendarDay } from '../units/calendar.js';

/** Chance, 0 to 1, that it has happened by the end of a day; never falls with the day. */
export type ChanceBy = (day: CalendarDay) => number;

export interface Chances {
  readonly condemnBy: ChanceBy;
  /** Steel touched by the screw. */
  readonly contactBy: ChanceBy;
}

export interface PanelOutlook extends Chances {
  /** Run and panel from the tail, from 1. */
  readonly run: number;
  readonly panel: number;
  /** Chainages, mm. */
  readonly from: number;
  readonly to: number;
  readonly seen: boolean;
  /** What lies there; left out where nobody asks. */
  readonly liner?: LinerSpecification | undefined;
  /** The place that governs it, or `panel 3 of run 1` where nobody has looked. */
  readonly place: string;
  /** Chainage of that place, mm; the middle of the panel where nobody has looked. */
  readonly at: number;
  readonly life: PlaceLife;
  /** The place of this panel that would come to lie under the screw if it were turned; undefined where nobody has looked there. */
  readonly otherSide?: PlaceLife | undefined;
}

/** Life of one place in exposure since fitting, given all records so far. */
export interface PlaceLife {
  /** Exposure today, h or t. */
  readonly now: number;
  /** mm of wear at the condemn limit and at the steel. */
  readonly limit: number;
  readonly through: number;
  /** Chance that the limit is reached by an exposure since fitting. */
  readonly reachedBy: (exposure: number) => number;
  /** Half of such places reach the limit by this exposure. */
  readonly median: number;
}

export interface WearOutlook {
  readonly asOf: CalendarDay;
  /** First day of the records: chances of days from it on are asked for. `asOf` where left out. */
  readonly since?: CalendarDay;
  /** Unseen panels counted in: what is decided on. */
  readonly counted: Chances;
  /** Of what was seen on the present liner only; undefined where nothing was. */
  readonly seen: Chances | undefined;
  readonly panels: readonly PanelOutlook[];
  /** The chances of what is left when these panels are new. */
  rest(relined: readonly PanelOutlook[]): Chances;
  /** The same of what was seen alone. */
  restSeen(relined: readonly PanelOutlook[]): Chances;
  /** Mean exposure from the day of the report until a day, h or t. */
  exposureBy(day: CalendarDay): number;
  /** Running hours from the day of the report until a day, as a meter counts them. */
  hoursBy(day: CalendarDay): number;
  /** The same in hours at the drive's speed, which is what wear of liner and screw by hours follows. */
  turnedBy(day: CalendarDay): number;
  /** One standard deviation of the coming duty as a ratio. */
  readonly dutySpread: number;
}

/** The first day on which a chance passes a level, by halving; undefined where it does not before `until`. */
export function dayPassed(
  chance: ChanceBy,
  level: number,
  from: CalendarDay,
  until: CalendarDay,
): CalendarDay | undefined {
  if (chance(from) > level) return from;
  if (!(chance(until) > level)) return undefined;
  let low: number = from;
  let high: number = until;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (chance(middle as CalendarDay) > level)
      high = middle; // whole numbers between calendar days are calendar days
    else low = middle;
  }
  return high as CalendarDay;
}
