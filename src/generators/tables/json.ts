// A table as JSON, a row a line, so that a diff shows the rows that changed. Missing is null.

import { formatDay, type CalendarDay } from '../../domain/units/calendar.js';
import type { EstateTable, TableColumn, Value } from './table.js';

export const tablesFormatVersion = 1;

export function tableJson({ name, columns, rows }: EstateTable, asOf: CalendarDay | undefined): string {
  const head = {
    formatVersion: tablesFormatVersion,
    kind: 'table',
    table: name,
    asOf: asOf === undefined ? null : formatDay(asOf),
  };
  const lines = rows.map((row) =>
    JSON.stringify(Object.fromEntries(columns.map((column, i) => [column.name, jsonValue(column, row[i])]))),
  );
  return `${JSON.stringify(head).slice(0, -1)},"rows":[\n${lines.join(',\n')}\n]}\n`;
}

function jsonValue({ type }: TableColumn, value: Value): string | number | boolean | null {
  if (value === undefined) return null;
  // A value of a column of days is a day.
  return type === 'day' ? formatDay(value as CalendarDay) : value;
}
