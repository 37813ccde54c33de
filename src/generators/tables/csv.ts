// A table as comma-separated values: RFC 4180 with CRLF, days in ISO 8601, missing an empty cell; see csv-cells.ts.

import type { CalendarDay } from '../../domain/units/calendar.js';
import { csvTable } from '../remaining-life/csv-cells.js';
import type { EstateTable } from './table.js';

export function tableCsv({ columns, rows }: EstateTable): string {
  return csvTable(
    columns.map(({ name }) => name),
    rows.map((row) =>
      row.map((value, i) =>
        // A value of a column of days is a day.
        columns[i]?.type === 'day' ? { day: value as CalendarDay | undefined } : value,
      ),
    ),
  );
}
