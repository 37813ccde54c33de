// Is a limit behind us, and when was it passed? More likely than not by the model, or seen by a look. The interval never reaches
// beyond the day of the report: what has not come is no part of the past.

import type { CalendarDay } from '../units/calendar.js';
import type { DayQuantiles } from './to-calendar.js';

export interface LimitPassed {
  /** `seen`: a look found it so, and the interval holds for certain. `reckoned`: by the model, with 80 %. */
  readonly by: 'seen' | 'reckoned';
  /** That it has been passed by the day of the report: 0.5 to 1, and 1 where it was seen. */
  readonly chance: number;
  /** Not before: the last look that found it short, else the day of fitting; undefined where neither is known. */
  readonly from: CalendarDay | undefined;
  readonly to: CalendarDay;
}

/** @param chanceBy chance, 0 to 1, that it is reached by the end of a day */
export function passedByModel(
  { q10, q50, q90 }: DayQuantiles,
  chanceBy: (day: CalendarDay) => number,
  asOf: CalendarDay,
): LimitPassed | undefined {
  if (q50 === undefined || q10 === undefined || q50 > asOf) return undefined;
  const chance = chanceBy(asOf);
  return chance < 0.5
    ? undefined
    : { by: 'reckoned', chance, from: q10, to: q90 === undefined || q90 > asOf ? asOf : q90 };
}

/** @param short day of the last look that found it short of the limit @param on day of the look that found it reached */
export function passedBySight(short: CalendarDay | undefined, on: CalendarDay): LimitPassed {
  return { by: 'seen', chance: 1, from: short, to: on };
}
