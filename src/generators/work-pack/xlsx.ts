// The pack's lists as a workbook: one sheet a list, heads frozen and repeated in print, figures as figures. The only file that
// knows the encoder; its dates are fixed to the pack's, so that the same pack gives the same bytes.

import type { Cell, CellValue } from 'hucre';
import { writeXlsx } from 'hucre';
import type { WorkPack } from './pack.js';
import { packLists } from './print/lists.js';
import type { List, ListColumn } from './print/lists.js';
import { packTitle } from './print/pack-blocks.js';

export async function workPackXlsx(pack: WorkPack): Promise<Uint8Array> {
  const issued = new Date(`${pack.asOf}T00:00:00Z`);
  return writeXlsx({
    sheets: packLists(pack).map((list) => ({
      name: list.name,
      columns: list.columns.map((column) => ({
        width: column.width,
        ...formatOf(column),
      })),
      rows: [
        list.columns.map((column) => column.head),
        ...list.rows.map((row) => row.map((cell, index) => valueOf(cell, list.columns[index]))),
        ...(hasTotals(list)
          ? [list.columns.map((_, index): CellValue => (index === 0 ? 'Total' : null))]
          : []),
      ],
      cells: new Map([...headCells(list), ...timeCells(list), ...totalCells(list)]),
      freezePane: { rows: 1 },
      pageSetup: {
        orientation: 'landscape' as const,
        fitToPage: true,
        fitToWidth: 1,
        fitToHeight: 0,
        printTitlesRow: '$1:$1',
      },
      headerFooter: {
        oddFooter: `&L${pack.number.replace(/&/g, '&&')} advice only, not a permit&RPage &P of &N`,
      },
    })),
    properties: { title: packTitle(pack), creator: 'Troughline', created: issued, modified: issued },
  });
}

function formatOf({ digits, time }: ListColumn): { readonly numFmt?: string } {
  if (time) return { numFmt: timeFormats[time] };
  if (digits === undefined) return {};
  return { numFmt: digits === 0 ? '0' : `0.${'0'.repeat(digits)}` };
}

const timeFormats = { day: 'yyyy-mm-dd', minute: 'yyyy-mm-dd hh:mm' } as const;

/** A day or minute as a date of the workbook, which knows no time zones; what is no date stays as it is written. */
function valueOf(cell: string | number | undefined, column: ListColumn | undefined): CellValue {
  if (cell === undefined) return null;
  return (column?.time && typeof cell === 'string' ? momentOf(cell) : undefined) ?? cell;
}

function momentOf(text: string): Date | undefined {
  const parts = /^(\d{4}-\d{2}-\d{2})(?: (\d{2}:\d{2}))?$/.exec(text);
  return parts ? new Date(`${parts[1] ?? ''}T${parts[2] ?? '00:00'}:00Z`) : undefined;
}

function timeCells(list: List): readonly (readonly [string, Partial<Cell>])[] {
  return list.rows.flatMap((row, r) =>
    list.columns.flatMap((column, c) => {
      const value = valueOf(row[c], column);
      return column.time && value instanceof Date
        ? [[`${r + 1},${c}`, { value, style: { numFmt: timeFormats[column.time] } }] as const]
        : [];
    }),
  );
}

/** Only where there is something to add up. */
function hasTotals(list: List): boolean {
  return list.rows.length > 1 && list.columns.some(({ total }) => total);
}

/** Sums that a workbook reckons anew when a figure is changed, each with what it comes to now. */
function totalCells(list: List): readonly (readonly [string, Partial<Cell>])[] {
  if (!hasTotals(list)) return [];
  const row = list.rows.length + 1;
  const bold = { font: { bold: true } };
  const sums = list.columns.flatMap((column, index) => {
    if (!column.total) return [];
    const letter = String.fromCharCode(65 + index);
    const sum = list.rows.reduce(
      (all, cells) => all + (typeof cells[index] === 'number' ? cells[index] : 0),
      0,
    );
    return [
      [
        `${row},${index}`,
        {
          formula: `SUM(${letter}2:${letter}${row})`,
          formulaResult: Math.round(sum * 1e6) / 1e6,
          style: { ...bold, ...formatOf(column) },
        },
      ] as const,
    ];
  });
  return [[`${row},0`, { value: 'Total', style: bold }], ...sums];
}

function headCells(list: List): Map<string, Partial<Cell>> {
  return new Map(
    list.columns.map((column, index) => [
      `0,${index}`,
      { value: column.head, style: { font: { bold: true }, alignment: { wrapText: true } } },
    ]),
  );
}
