// A table as a value: its columns with their types and meaning, and its rows as plain values. Every form is printed from it.

import type { DataColumn, ColumnType } from '../remaining-life/columns.js';

/** A day counts from 1970-01-01 (CalendarDay); missing is undefined. */
export type Value = string | number | boolean | undefined;

export interface TableColumn {
  readonly name: string;
  readonly type: ColumnType;
  readonly about: string;
  /** Never missing. */
  readonly always?: true;
  /** Days that pass move it, though nobody looked or wrote anything. */
  readonly moves?: true;
}

export interface EstateTable {
  readonly name: TableName;
  /** What a row is. */
  readonly about: string;
  readonly columns: readonly TableColumn[];
  /** Values in the order of the columns. */
  readonly rows: readonly (readonly Value[])[];
}

export const tableNames = [
  'conveyors',
  'points',
  'readings',
  'decisions',
  'outages',
  'orders',
  'findings',
  'jobs',
  'steps',
] as const;
export type TableName = (typeof tableNames)[number];

/** A table before it has rows. */
export interface Kind<Row> {
  readonly name: TableName;
  /** What a row is. */
  readonly about: string;
  readonly columns: readonly DataColumn<Row>[];
}

export function tableOf<Row>({ name, about, columns }: Kind<Row>, rows: readonly Row[]): EstateTable {
  return { name, about, columns, rows: rows.map((row) => columns.map(({ of }) => of(row))) };
}

/** The same table with some of its columns, in their order. */
export function withColumns(table: EstateTable, wanted: (column: TableColumn) => boolean): EstateTable {
  const kept = table.columns.flatMap((column, i) => (wanted(column) ? [i] : []));
  return {
    ...table,
    columns: kept.flatMap((i) => table.columns[i] ?? []),
    rows: table.rows.map((row) => kept.map((i) => row[i])),
  };
}
