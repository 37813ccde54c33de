// What is a sheet, before anybody says what it means? Rows of cells with the value each one holds, whatever file they came from.
// Reading is done by one adapter a format; everything behind this file is the same for all of them.

/** A cell that holds something; an empty one is undefined. */
export interface SheetCell {
  /** A `date` is a number that the sheet shows as a day or a time; an `error` holds no value that could be taken. */
  readonly kind: 'text' | 'number' | 'date' | 'error';
  /** As it reads, blanks at its ends removed; of an error, why it holds no value. */
  readonly text: string;
  /** Of a number, and the serial number behind a date: days, the fraction being the time of day. */
  readonly number?: number;
  /** Shown here because it is merged with the cell of that name, where it is written. */
  readonly mergedWith?: string;
}

export type SheetRow = readonly (SheetCell | undefined)[];

export interface Table {
  /** Name of the sheet; a text file has one sheet without a name. */
  readonly sheet?: string;
  readonly rows: readonly SheetRow[];
  /** From which year the sheet counts its days (ECMA-376 18.17.4.1). */
  readonly dateSystem: 1900 | 1904;
}

export interface Book {
  readonly tables: readonly Table[];
  /** How the file was read, and what was passed over, one sentence each. */
  readonly said: readonly string[];
  /** What a text file turned out to be; kept in the mapping, so that the next run reads it alike. */
  readonly separator?: Separator;
  readonly encoding?: Encoding;
}

export const separators = [';', 'tab', ',', '|'] as const;
export type Separator = (typeof separators)[number];

export const encodings = ['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'] as const;
export type Encoding = (typeof encodings)[number];

export type ReadBook =
  { readonly ok: true; readonly book: Book } | { readonly ok: false; readonly message: string };

/** Five years of weekly readings at a hundred points are 26,000 rows. */
export const mostRows = 200_000;
export const mostColumns = 2_000;

/** `C7`, as spreadsheets name it; both from 0. */
export function cellName(row: number, column: number): string {
  return `${columnName(column)}${row + 1}`;
}

/** `A`, `Z`, `AA`; from 0. */
export function columnName(column: number): string {
  const ahead = Math.floor(column / 26) - 1;
  return (ahead < 0 ? '' : columnName(ahead)) + String.fromCharCode(65 + (column % 26));
}

/** Where something stands, for a message: `sheet Readings, C7`; a text file has only rows and columns. */
export function placeName(table: Table, row: number, column?: number): string {
  const sheet = table.sheet === undefined ? '' : `${table.sheet}, `;
  return sheet + (column === undefined ? `row ${row + 1}` : cellName(row, column));
}
