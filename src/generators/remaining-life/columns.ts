// What is a column of a table? Its name with the unit in it, its type, what it means, and how it is read off a row: one
// definition behind CSV, JSON, JSON Schema and Parquet. Missing is undefined, never zero; what is not finite is missing.

import type { CalendarDay } from '../../domain/units/calendar.js';
import { csvTable, type Cell } from './csv-cells.js';

export type ColumnType = 'text' | 'day' | 'number' | 'whole' | 'yes or no';

export interface DataColumn<Row> extends Traits {
  readonly name: string;
  readonly type: ColumnType;
  /** What it means, as a phrase. */
  readonly about: string;
  /** A day counts from 1970-01-01, see CalendarDay. */
  readonly of: (row: Row) => string | number | boolean | undefined;
}

interface Traits {
  /** Never missing. */
  readonly always?: true;
  /** Days that pass move it, though nobody looked or wrote anything. */
  readonly moves?: true;
}

export function text<Row>(
  name: string,
  about: string,
  of: (row: Row) => string | undefined,
  traits: Traits = {},
): DataColumn<Row> {
  return { name, type: 'text', about, of, ...traits };
}

export function day<Row>(
  name: string,
  about: string,
  of: (row: Row) => CalendarDay | undefined,
  traits: Traits = {},
): DataColumn<Row> {
  return { name, type: 'day', about, of, ...traits };
}

/** @param digits after the point: as many as the value is worth, so that its text moves only when it does */
export function number<Row>(
  name: string,
  about: string,
  digits: number,
  of: (row: Row) => number | undefined,
  traits: Traits = {},
): DataColumn<Row> {
  return { name, type: 'number', about, of: (row) => rounded(of(row), digits), ...traits };
}

export function whole<Row>(
  name: string,
  about: string,
  of: (row: Row) => number | undefined,
  traits: Traits = {},
): DataColumn<Row> {
  return { name, type: 'whole', about, of, ...traits };
}

export function yesNo<Row>(
  name: string,
  about: string,
  of: (row: Row) => boolean | undefined,
  traits: Traits = {},
): DataColumn<Row> {
  return { name, type: 'yes or no', about, of, ...traits };
}

function rounded(value: number | undefined, digits: number): number | undefined {
  return value === undefined || !Number.isFinite(value) ? undefined : Number(value.toFixed(digits));
}

/** A chance from 0 to 1, to a millionth. */
export function chance<Row>(
  name: string,
  about: string,
  of: (row: Row) => number | undefined,
  traits: Traits = {},
): DataColumn<Row> {
  return number(name, `${about} (0 to 1)`, 6, of, traits);
}

/** RFC 4180, see csv-cells.ts. */
export function columnsCsv<Row>(columns: readonly DataColumn<Row>[], rows: readonly Row[]): string {
  return csvTable(
    columns.map(({ name }) => name),
    rows.map((row) => columns.map((column) => cellOf(column, row))),
  );
}

function cellOf<Row>({ type, of }: DataColumn<Row>, row: Row): Cell {
  const value = of(row);
  // A column of days is made by `day`, whose values are days.
  return type === 'day' ? { day: value as CalendarDay | undefined } : value;
}
