// A list of conveyors and its mapping → what each row says of one. Nothing is added to it: what the list does not say is missing.

import type { CalendarDay } from '../domain/units/calendar.js';
import { labelsOf } from './heads.js';
import { wordKey, type Mapping } from './mapping.js';
import type { AssetMeasure, AssetRole, AssetWord } from './mapping/asset-roles.js';
import { placeName, type SheetCell, type SheetRow, type Table } from './table.js';
import type { Passed } from './take-readings.js';
import { readDay } from './values/day.js';
import { readMeasure, type Measure } from './values/measure.js';

export interface SheetAsset {
  readonly where: string;
  /** As the language takes it. */
  readonly name: string;
  readonly words: ReadonlyMap<AssetWord, string>;
  readonly measures: ReadonlyMap<AssetMeasure, Measure>;
  readonly commissioned?: CalendarDay;
}

export type TakenAssets =
  | { readonly ok: true; readonly assets: readonly SheetAsset[]; readonly skipped: readonly Passed[] }
  | { readonly ok: false; readonly message: string };

export function takeAssets(table: Table, mapping: Mapping): TakenAssets {
  const roles = mapping.assets ?? new Map<string, AssetRole>();
  const labels = labelsOf(table, mapping.heads);
  const missing = [...roles.keys()].filter((head) => !labels.includes(head));
  const quoted = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(', ');
  if (missing.length > 0)
    return { ok: false, message: `has no column ${quoted(missing)}; its heads are ${quoted(labels)}` };
  const columns = labels.flatMap((label, column) => {
    const role = roles.get(label);
    return role && role.is !== 'not read' ? [{ column, role }] : [];
  });
  const assets: SheetAsset[] = [];
  const skipped: Passed[] = [];
  for (const [at, row] of table.rows.entries()) {
    if (at <= mapping.heads.to || !row.some((cell) => cell)) continue;
    const made = assetIn(table, at, row, columns, mapping, skipped);
    if (made) assets.push(made);
  }
  return { ok: true, assets, skipped };
}

type RoleColumn = { readonly column: number; readonly role: AssetRole };

function assetIn(
  table: Table,
  at: number,
  row: SheetRow,
  columns: readonly RoleColumn[],
  mapping: Mapping,
  skipped: Passed[],
): SheetAsset | undefined {
  const words = new Map<AssetWord, string>();
  const measures = new Map<AssetMeasure, Measure>();
  let commissioned: CalendarDay | undefined;
  for (const { column, role } of columns) {
    const cell = row[column];
    if (!cell || isNothing(cell, mapping)) continue;
    const pass = (why: string): void =>
      void skipped.push({ where: placeName(table, at, column), why: `${role.is}: ${why}` });
    if ('dimension' in role) {
      const read = readMeasure(cell, {
        dimension: role.dimension,
        unit: role.unit,
        decimal: mapping.decimal,
      });
      if (read.ok) measures.set(role.is, read.measure);
      else pass(read.why);
    } else if (role.is === 'commissioned') {
      const { dates: order, dateNumbers: numbersFrom, century } = mapping;
      const read = readDay(cell, { order, numbersFrom, century, dateSystem: table.dateSystem });
      if (read.ok) commissioned = read.day;
      else pass(read.why);
    } else if (cell.kind === 'error') pass(`holds ${cell.text}`);
    else words.set(role.is, cell.text);
  }
  const said = words.get('name');
  const name = said === undefined ? undefined : (mapping.conveyors.get(wordKey(said)) ?? said);
  const where = placeName(table, at);
  if (name === undefined) skipped.push({ where, why: 'names no conveyor' });
  else if (!/^[A-Za-z_][A-Za-z0-9_]*(-[A-Za-z0-9_]+)*$/.test(name))
    skipped.push({
      where,
      why: `"${name}" cannot be a name: letters, digits, - and _ make one (conveyors: in the mapping gives it)`,
    });
  else return { where, name, words, measures, ...(commissioned === undefined ? {} : { commissioned }) };
  return undefined;
}

function isNothing(cell: SheetCell, { words }: Mapping): boolean {
  const meaning = words.get(wordKey(cell.text))?.is;
  return meaning === 'no reading' || meaning === 'blank';
}
