// A workbook (.xlsx, ECMA-376) as tables: the only file that knows the library behind it. Values are taken as they are saved;
// nothing is reckoned, no macro is run, no link is followed. What a reader of the sheet would not see (hidden rows, formulas,
// macros) is said.

import {
  dateToSerial,
  HucreError,
  readXlsx,
  type Cell,
  type CellValue,
  type Sheet,
  type Workbook,
} from 'hucre';
import { counted, list } from '../domain/units/wording.js';
import { inspectArchive, type ArchiveLimits, type ArchivePart } from './archive.js';
import {
  cellName,
  columnName,
  mostColumns,
  mostRows,
  type ReadBook,
  type SheetCell,
  type SheetRow,
  type Table,
} from './table.js';
import { digitsOf } from './values/number.js';

export interface WorkbookStated {
  /** Sheets that are read though they are hidden. */
  readonly sheets?: readonly string[] | undefined;
}

export async function readWorkbook(
  bytes: Uint8Array,
  stated: WorkbookStated = {},
  limits?: ArchiveLimits,
): Promise<ReadBook> {
  const archive = await inspectArchive(bytes, limits);
  if (!archive.ok) return archive;
  const other = notAWorkbook(archive.parts);
  if (other !== undefined) return { ok: false, message: other };
  let workbook: Workbook;
  try {
    workbook = await readXlsx(bytes, { maxRows: mostRows + 1 });
  } catch (error) {
    // What the library refuses, and what it stumbles over in a damaged part, is all of the file's doing.
    const reason = error instanceof HucreError || error instanceof Error ? error.message : String(error);
    return { ok: false, message: `does not read as a workbook: ${reason}` };
  }
  return bookOf(workbook, archive.parts, stated);
}

function notAWorkbook(parts: readonly ArchivePart[]): string | undefined {
  const has = (name: string): boolean => parts.some((part) => part.name === name);
  if (has('xl/workbook.xml')) return undefined;
  if (has('xl/workbook.bin')) return 'is a binary workbook (.xlsb); save it as .xlsx or CSV';
  if (has('content.xml') && has('mimetype'))
    return 'is an OpenDocument sheet (.ods); save it as .xlsx or CSV';
  return 'is an archive and no workbook; a workbook ends in .xlsx';
}

function bookOf(workbook: Workbook, parts: readonly ArchivePart[], { sheets }: WorkbookStated): ReadBook {
  const said: string[] = [];
  const tables: Table[] = [];
  if (parts.some(({ name }) => name.endsWith('vbaProject.bin')))
    said.push('its macros are ignored; only values are read');
  const dateSystem = workbook.dateSystem === '1904' ? 1904 : 1900;
  if (dateSystem === 1904) said.push('its dates count from 1904');
  for (const sheet of workbook.sheets) {
    if ((sheet.hidden || sheet.veryHidden) && !sheets?.includes(sheet.name)) {
      said.push(`sheet ${sheet.name} is hidden and passed over (sheets: in the mapping can name it)`);
      continue;
    }
    if (sheet.rows.length > mostRows)
      return {
        ok: false,
        message: `${sheet.name}: holds more than ${mostRows} rows; split it, a plant or a year a file`,
      };
    if (sheet.rows.some((row) => row.length > mostColumns))
      return { ok: false, message: `${sheet.name}: holds rows of more than ${mostColumns} columns` };
    const table = tableOf(sheet, dateSystem, said);
    if (table.rows.length === 0) said.push(`sheet ${sheet.name} is empty`);
    else tables.push(table);
  }
  if (tables.length === 0)
    return { ok: false, message: `holds nothing to read${said.length > 0 ? `: ${said.join('; ')}` : ''}` };
  return { ok: true, book: { tables, said } };
}

function tableOf(sheet: Sheet, dateSystem: 1900 | 1904, said: string[]): Table {
  const details = sheet.cells ?? new Map<string, Cell>();
  const rows = sheet.rows.map((row, r) =>
    row.map((value, c) => cellOf(value, details.get(`${r},${c}`), dateSystem)),
  );
  tellHidden(sheet, rows, said);
  const reckoned = [...details.values()].filter(({ formula }) => formula !== undefined);
  if (reckoned.length > 0) {
    const without = reckoned.filter(({ value }) => value === null).length;
    const taken = reckoned.length - without;
    said.push(
      `${sheet.name}: ${[
        ...(taken > 0 ? [`${counted(taken, 'cell')} with a formula, of which the saved value is taken`] : []),
        ...(without > 0 ? [`${counted(without, 'cell')} with a formula that has no saved value`] : []),
      ].join('; ')}`,
    );
  }
  spread(sheet, rows);
  while (rows.length > 0 && rows.at(-1)?.every((cell) => cell === undefined)) rows.pop();
  return { sheet: sheet.name, rows, dateSystem };
}

function cellOf(value: CellValue, detail: Cell | undefined, dateSystem: 1900 | 1904): SheetCell | undefined {
  if (detail?.type === 'error') return { kind: 'error', text: String(value) };
  if (value === null)
    return detail?.formula === undefined
      ? undefined
      : { kind: 'error', text: 'a formula without a saved value' };
  if (value instanceof Date) return dateCell(dateToSerial(value, dateSystem === 1904), value);
  if (typeof value === 'number') return { kind: 'number', text: digitsOf(value), number: value };
  const text = String(value).trim();
  return text === '' ? undefined : { kind: 'text', text };
}

/** Below a day it is a time, as a clock position becomes when a spreadsheet reads it. */
function dateCell(serial: number, value: Date): SheetCell {
  if (!Number.isFinite(serial)) return { kind: 'error', text: 'a date that is none' };
  const iso = value.toISOString();
  return { kind: 'date', text: serial < 1 ? iso.slice(11, 16) : iso.slice(0, 10), number: serial };
}

function tellHidden(sheet: Sheet, rows: readonly SheetRow[], said: string[]): void {
  const hiddenRows = [...(sheet.rowDefs ?? [])].flatMap(([row, { hidden }]) =>
    hidden && rows[row]?.some((cell) => cell) ? [String(row + 1)] : [],
  );
  const hiddenColumns = (sheet.columns ?? []).flatMap(({ hidden }, column) =>
    hidden && rows.some((row) => row[column]) ? [columnName(column)] : [],
  );
  if (hiddenRows.length > 0)
    said.push(`${sheet.name}: hidden rows are read like all others: ${list(hiddenRows, 'and', 20)}`);
  if (hiddenColumns.length > 0)
    said.push(`${sheet.name}: hidden columns are read like all others: ${list(hiddenColumns, 'and', 20)}`);
}

/** What is merged stands in every cell that it covers, marked as shown there and written elsewhere. */
function spread({ merges = [] }: Sheet, rows: (SheetCell | undefined)[][]): void {
  const width = rows.reduce((most, row) => Math.max(most, row.length), 0);
  let left = 1_000_000;
  for (const { startRow, startCol, endRow, endCol } of merges) {
    const shown = rows[startRow]?.[startCol];
    if (!shown) continue;
    const mergedWith = cellName(startRow, startCol);
    for (let r = startRow; r <= Math.min(endRow, rows.length - 1); r++)
      for (let c = startCol; c <= Math.min(endCol, width - 1) && left > 0; c++) {
        const row = rows[r];
        if (!row || (r === startRow && c === startCol)) continue;
        left--;
        row[c] ??= { ...shown, mergedWith };
      }
  }
}
