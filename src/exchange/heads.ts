// Which column is which? Heads of several rows, merged or not, become one label a column: what stands in the rows, from the top
// down, each said once. A label that two columns share, or that is empty, is told apart by the letter of its column.

import type { Mapping } from './mapping.js';
import { columnName, type SheetRow, type Table } from './table.js';

/** A row of the heads that says a date or a point over each of some columns; there it is no part of the label. */
export interface RowAcross {
  readonly row: number;
  readonly columns: ReadonlySet<number>;
}

/** One label a column. */
export function labelsOf(
  table: Table,
  { from, to }: Mapping['heads'],
  across?: RowAcross,
): readonly string[] {
  const bare = Array.from({ length: widthOf(table) }, (_, column) => {
    const apart = across?.columns.has(column) ? across.row : undefined;
    return labelIn(
      table.rows.slice(from, to + 1).filter((_, i) => from + i !== apart),
      column,
    );
  });
  return bare.map((label, column) => {
    if (label === '') return `column ${columnName(column)}`;
    const twins = bare.filter((other) => other === label).length;
    return twins === 1 ? label : `${label} (${columnName(column)})`;
  });
}

/** A label without the letter that tells it from its twins. */
export function withoutLetter(label: string): string {
  return label.replace(/ \([A-Z]+\)$/, '');
}

export function widthOf(table: Table): number {
  return table.rows.reduce((width, row) => Math.max(width, row.length), 0);
}

function labelIn(rows: readonly SheetRow[], column: number): string {
  const words = rows.flatMap((row) => row[column]?.text.replace(/\s+/g, ' ') ?? []);
  return [...new Set(words)].join(' / ');
}
