// The pack's lists as a workbook: one sheet a list, heads frozen and repeated in print, figures as figures. The only file that
// knows the encoder; its dates are fixed to the pack's, so that the same pack gives the same bytes.

import type { Cell, CellValue } from 'hucre';
import { writeXlsx } from 'hucre';
import type { WorkPack } from './pack.js';
import { packLists } from './print/lists.js';
import type { List } from './print/lists.js';
import { packTitle } from './print/pack-blocks.js';

export async function workPackXlsx(pack: WorkPack): Promise<Uint8Array> {
  const issued = new Date(`${pack.asOf}T00:00:00Z`);
  return writeXlsx({
    sheets: packLists(pack).map((list) => ({
      name: list.name,
      columns: list.columns.map((column) => ({
        width: column.width,
        ...(column.digits === undefined
          ? {}
          : { numFmt: column.digits === 0 ? '0' : `0.${'0'.repeat(column.digits)}` }),
      })),
      rows: [
        list.columns.map((column) => column.head),
        ...list.rows.map((row) => row.map((cell): CellValue => cell ?? null)),
      ],
      cells: headCells(list),
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

function headCells(list: List): Map<string, Partial<Cell>> {
  return new Map(
    list.columns.map((column, index) => [
      `0,${index}`,
      { value: column.head, style: { font: { bold: true }, alignment: { wrapText: true } } },
    ]),
  );
}
