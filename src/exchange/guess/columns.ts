// What the columns of a sheet probably mean: by what stands in them where that is certain (dates, names of the estate), else by
// the words of their heads. Each guess comes with its reason, because a person is to judge it.

import type { Role } from '../mapping.js';
import { wordKey } from '../mapping.js';
import { columnName, type SheetCell, type SheetRow, type Table } from '../table.js';
import { dayOrders, readDay } from '../values/day.js';
import { unitOf } from '../values/measure.js';

export interface GuessedColumn {
  readonly column: number;
  readonly label: string;
  readonly role: Role;
  readonly why: string;
  /** What a person has to answer before readings are taken. */
  readonly open?: string;
}

/** Names of the estate, as `wordKey` has them. */
export interface KnownNames {
  readonly conveyors: ReadonlySet<string>;
  readonly points: ReadonlySet<string>;
}

/** Heads in the words of the trade, English and German, tried in this order. */
const words: readonly (readonly [RegExp, Role['is']])[] = [
  [/\b(remark|remarks|note|notes|comment|comments|bemerkung|notiz)\b/, 'note'],
  [/\b(conveyor|screw|machine|equipment|line|förderer|schnecke|anlage)\b/, 'conveyor'],
  [
    /\b(running hours|operating hours|hour meter|hours|meter reading|meter|betriebsstunden|zähler)\b/,
    'meter',
  ],
  [/\b(tonnes|tons|tonnage|tonnen)\b/, 'tonnes'],
  [/\b(by|inspector|inspected by|initials|who|prüfer)\b/, 'by'],
  [/\b(colou?r|layer|farbe|schicht)\b/, 'colour'],
  [/\b(clock|o'?clock|position|angle|uhr)\b/, 'clock'],
  [/\b(chainage|distance|from tail|station|kette|abstand)\b/, 'chainage'],
  [/\b(thickness|wall|remaining|reading|value|measured|dicke|wanddicke|wert|rest)\b/, 'thickness'],
  [/\b(date|day|inspected|datum|time|zeit)\b/, 'date'],
  [/\b(unit|units|einheit)\b/, 'unit'],
  [/\b(point|location|spot|id|no|nr|messpunkt|messstelle|punkt|stelle)\b/, 'point'],
];

const dimensions = { thickness: 'length', chainage: 'length', meter: 'duration', tonnes: 'mass' } as const;

export function roleWord(label: string): Role['is'] | undefined {
  const tidy = withoutUnit(label).toLowerCase();
  return words.find(([pattern]) => pattern.test(tidy))?.[1];
}

/** `Thickness [mm]`, `Wall, mm`, `Depth (in)`, `Wall / mm`, `Wall in mm`. */
const unitIn = /(?:[[(]\s*([^\])]+?)\s*[\])]|(?:,|\/|\bin)\s*([^\s,/]+))\s*$/;

function withoutUnit(label: string): string {
  return label.replace(unitIn, ' ');
}

export function unitOfHead(label: string, role: keyof typeof dimensions): string | undefined {
  const parts = unitIn.exec(label);
  const spelled =
    parts?.[1] ?? parts?.[2] ?? (role === 'meter' && /\bhours\b|stunden/i.test(label) ? 'h' : '');
  return unitOf(spelled, dimensions[role]);
}

export function isUnitCell(cell: SheetCell): boolean {
  const bare = cell.text.replace(/^[[(]\s*|\s*[\])]$/g, '');
  return Object.values(dimensions).some((dimension) => unitOf(bare, dimension) !== undefined);
}

/** A day in whatever order. */
export function isDay(cell: SheetCell | undefined, table: Table): boolean {
  if (!cell) return false;
  return dayOrders.some(
    (order) =>
      readDay(cell, { order, century: 2000, numbersFrom: undefined, dateSystem: table.dateSystem }).ok,
  );
}

export function guessColumn(
  table: Table,
  data: readonly SheetRow[],
  column: number,
  label: string,
  names: KnownNames,
  hasUnits: boolean,
): GuessedColumn {
  const head = label.replace(` (${columnName(column)})`, '');
  const cells = data.flatMap((row) => row[column] ?? []);
  const made = (role: Role, why: string, open?: string): GuessedColumn => ({
    column,
    label,
    role,
    why,
    ...(open === undefined ? {} : { open }),
  });
  const share = (is: (cell: SheetCell) => boolean): number =>
    cells.length === 0 ? 0 : cells.filter(is).length / cells.length;
  if (share((cell) => names.conveyors.has(wordKey(cell.text))) > 0.5)
    return made({ is: 'conveyor' }, 'most of its cells are conveyors of the estate');
  if (share((cell) => cell.kind === 'text' && names.points.has(wordKey(cell.text))) > 0.5)
    return made({ is: 'point' }, 'most of its cells are inspection points of the estate');
  const word = roleWord(head);
  if (word !== 'clock' && share((cell) => isDay(cell, table)) > 0.5)
    return made({ is: 'date' }, 'most of its cells are dates');
  if (word === undefined) return made({ is: 'not read' }, 'neither its head nor its cells are known');
  const why = 'by its head';
  switch (word) {
    case 'thickness':
    case 'chainage':
    case 'meter':
    case 'tonnes': {
      const unit = unitOfHead(head, word);
      if (unit !== undefined) return made({ is: word, unit }, why);
      const own = share((cell) => cell.kind === 'text' && /\d\s*[a-z"”]+\.?$/i.test(cell.text)) > 0.5;
      if (own || (word === 'thickness' && hasUnits))
        return made({ is: word }, `${why}; the unit stands ${own ? 'in the cells' : 'in a column'}`);
      return made({ is: word }, why, `${word} in ?`);
    }
    case 'clock': {
      if (/deg|°|angle/i.test(head))
        return made({ is: 'clock', form: 'degrees from 12' }, why, 'clock in degrees from ?');
      return made({ is: 'clock', form: 'time' }, why);
    }
    case 'error':
      return made({ is: 'not read' }, why);
    case 'plant':
    case 'gauge':
    case 'date':
    case 'conveyor':
    case 'point':
    case 'colour':
    case 'unit':
    case 'by':
    case 'note':
    case 'not read':
      return made({ is: word }, why);
  }
}
