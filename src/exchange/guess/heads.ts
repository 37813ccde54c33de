// Where do the heads of a sheet stand, and do further columns run across dates or points? The row with the most words of the
// trade is one of them; rows of units or of second words below it and merged words above it belong to it.

import { wordKey } from '../mapping.js';
import type { SheetCell, SheetRow, Table } from '../table.js';
import { isDay, isUnitCell, roleWord, type KnownNames } from './columns.js';

export interface GuessedHeads {
  readonly from: number;
  readonly to: number;
  readonly across?: { readonly what: 'date' | 'point'; readonly row: number };
}

/** Undefined where no row looks like heads. */
export function guessHeads(table: Table, names: KnownNames): GuessedHeads | undefined {
  const rows = table.rows.slice(0, 30);
  const days = rows.map((row) => row.filter((cell) => isDay(cell, table)).length);
  const points = rows.map((row) => row.filter((cell) => cell && names.points.has(wordKey(cell.text))).length);
  const known = rows.map((row) => textsOf(row).filter((text) => roleWord(text) !== undefined).length);
  const row = best(known.map((count, i) => count + (acrossAt(i) ? 2 : 0)));
  if (row === undefined) return undefined;
  let [from, to] = [row, row];
  while (to + 1 < rows.length && belongsBelow(rows[to + 1] ?? [])) to++;
  while (from > 0 && belongsAbove(rows[from - 1] ?? [], from - 1)) from--;
  const across = [...rows.keys()].slice(from, to + 1).find((i) => acrossAt(i));
  if (across === undefined) return { from, to };
  return { from, to, across: { what: (days[across] ?? 0) >= 2 ? 'date' : 'point', row: across } };

  function acrossAt(i: number): boolean {
    return (days[i] ?? 0) >= 2 || (points[i] ?? 0) >= 2;
  }

  /** A row of merged words over groups of columns; one title over all of them is no head. */
  function belongsAbove(above: SheetRow, at: number): boolean {
    const isMerged = above.some((cell) => cell?.mergedWith !== undefined);
    return acrossAt(at) || (isMerged && textsOf(above).length > 1 && all(above, isWord));
  }
}

/** What is written in a row, each text once however wide it is merged. */
function textsOf(row: SheetRow): readonly string[] {
  return [...new Set(row.flatMap((cell) => (cell?.kind === 'text' ? cell.text : [])))];
}

/** Units, or words of heads under merged ones, and no value. */
function belongsBelow(below: SheetRow): boolean {
  return all(below, (cell) => isUnitCell(cell) || (isWord(cell) && roleWord(cell.text) !== undefined));
}

function isWord(cell: SheetCell): boolean {
  return cell.kind === 'text' && !/\d/.test(cell.text);
}

function all(row: SheetRow, is: (cell: SheetCell) => boolean): boolean {
  const cells = row.flatMap((cell) => cell ?? []);
  return cells.length > 0 && cells.every(is);
}

function best(counts: readonly number[]): number | undefined {
  const most = Math.max(0, ...counts);
  return most === 0 ? undefined : counts.indexOf(most);
}
