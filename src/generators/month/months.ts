// What do the reports of all months say, one beside the other? The value behind the index of months: how each month's report,
// as it was saved, saw each conveyor, and how its forecasts did since. Months are told by their reports alone, so a month is
// what was published then and not what today's records would have said.

import { formatDay, type CalendarDay } from '../../domain/units/calendar.js';
import type { ForecastRow } from '../change-summary/change-summary.js';
import type { JudgedReport } from '../remaining-life/remaining-life.js';

/** What a saved report says, as far as the index shows it. */
export interface SavedMonth {
  /** `2026-10`; the name of the month's folder too. */
  readonly month: string;
  readonly asOf: CalendarDay;
  readonly rows: readonly ForecastRow[];
}

export interface MonthRow extends SavedMonth {
  /** Conveyors by what is to be done, the most urgent first; a conveyor that may wait is in none. */
  readonly late: readonly string[];
  readonly plan: readonly string[];
  readonly look: readonly string[];
  /** How its forecasts did by what was read since; undefined for the newest month. */
  readonly judged: JudgedReport | undefined;
}

export interface Months {
  /** Newest first. */
  readonly months: readonly MonthRow[];
  /** Names in the order of attention of the newest month, then those of older months only. */
  readonly conveyors: readonly string[];
}

const lateLevels = ['worn through', 'past the limit', 'no outage in time'];
const lookLevels = ['look now', 'not enough seen'];

/** The folder of a month's set. @param asOf the day that its report counts from */
export function monthOf(asOf: CalendarDay): string {
  return formatDay(asOf).slice(0, 7);
}

/** @param judged reports held against what was read since, in any order */
export function monthsOf(saved: readonly SavedMonth[], judged: readonly JudgedReport[]): Months {
  const months = [...saved]
    .sort((a, b) => b.asOf - a.asOf)
    .map((month): MonthRow => {
      const named = (levels: readonly string[]): readonly string[] =>
        month.rows.filter(({ level }) => levels.includes(level)).map(({ conveyor }) => conveyor);
      return {
        ...month,
        late: named(lateLevels),
        plan: named(['reline to plan']),
        look: named(lookLevels),
        judged: judged.find(({ asOf }) => asOf === month.asOf),
      };
    });
  const conveyors = [...new Set(months.flatMap(({ rows }) => rows.map(({ conveyor }) => conveyor)))];
  return { months, conveyors };
}
