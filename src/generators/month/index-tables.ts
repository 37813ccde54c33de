// The words of the index of months, once for page and Markdown: what each month asked for, how the date of each conveyor moved
// from month to month, and what became of the forecasts.

import { percent } from '../../domain/decision/option-setting.js';
import { formatDay } from '../../domain/units/calendar.js';
import { counted } from '../../domain/units/wording.js';
import type { JudgedReport } from '../remaining-life/remaining-life.js';
import type { MonthRow, Months } from './months.js';

export interface IndexTable {
  readonly title: string;
  /** What to know before reading it. */
  readonly note: string;
  readonly head: readonly string[];
  readonly rows: readonly IndexTableRow[];
}

export interface IndexTableRow {
  /** Folder that the first cell leads to; undefined where it leads nowhere. */
  readonly folder: string | undefined;
  readonly cells: readonly string[];
}

/** So many months stand side by side; all of them stand one below the other. */
const sideBySide = 12;

export function indexTables(months: Months): readonly IndexTable[] {
  return [actions(months), dates(months), trackRecord(months)];
}

function actions({ months }: Months): IndexTable {
  const names = (list: readonly string[]): string => (list.length === 0 ? '–' : list.join(', '));
  return {
    title: 'What each month asked for',
    note: 'As it was published; newest first. Each month leads to its set.',
    head: ['Month', 'Counted from', 'No planned outage is early enough', 'Reline at an outage', 'Look'],
    rows: months.map(({ month, asOf, late, plan, look }) => ({
      folder: month,
      cells: [month, formatDay(asOf), names(late), names(plan), names(look)],
    })),
  };
}

function dates({ months, conveyors }: Months): IndexTable {
  const shown = months.slice(0, sideBySide);
  return {
    title: 'When the first panel was expected at its condemn limit',
    note:
      'The middle of the forecast of each month; the month’s report has its interval and the count of readings behind it. ' +
      'A dash: that month gave no date; passed: it lay behind the day of the report.',
    head: ['Conveyor', ...shown.map(({ month }) => month)],
    rows: conveyors.map((name) => ({
      folder: undefined,
      cells: [
        name,
        ...shown.map(({ rows }) => {
          const row = rows.find(({ conveyor }) => conveyor === name);
          if (row?.passed !== undefined) return 'passed';
          const middle = row?.limit?.q50;
          return middle === undefined ? '–' : formatDay(middle);
        }),
      ],
    })),
  };
}

function trackRecord({ months }: Months): IndexTable {
  return {
    title: 'What became of the forecasts',
    note: 'Thicknesses read since against the wear that was published, pooled over the points; a miss is told beyond what chance allows.',
    head: ['Month', 'Points read since', 'Wear since', 'Limits reached since'],
    rows: months.flatMap((month): readonly IndexTableRow[] =>
      month.judged ? [{ folder: undefined, cells: judgedCells(month, month.judged) }] : [],
    ),
  };
}

function judgedCells({ month }: MonthRow, judged: JudgedReport): readonly string[] {
  const { together, conveyors, reached } = judged;
  const pooled = together ?? conveyors[0]?.pooled;
  const told = conveyors.filter((conveyor) => conveyor.told).map(({ name }) => name);
  const wear = !pooled
    ? 'nothing to judge by'
    : told.length > 0
      ? `more than foretold at ${told.join(', ')}`
      : judged.told
        ? 'more than foretold over all conveyors'
        : `no miss found; below ${percent(pooled.hidden)} would have stayed hidden`;
  return [
    month,
    pooled ? counted(pooled.points, 'point') : 'none',
    wear,
    reached.of === 0
      ? 'none'
      : `${reached.of}: ${reached.early} before the 10 % quantile, ${reached.late} after the 90 % one`,
  ];
}
