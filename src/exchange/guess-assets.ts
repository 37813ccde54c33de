// Is this sheet a list of conveyors? Its heads speak of lengths, inclines and drives, a row a machine. Then a first mapping of it.

import { list } from '../domain/units/wording.js';
import { labelsOf } from './heads.js';
import { plainKey, yamlText, type MappingLine } from './mapping/print.js';
import type { GuessedMapping } from './guess-mapping.js';
import { guessDecimal, guessOrder } from './guess/values.js';
import { readAssetRole } from './mapping/asset-roles.js';
import { columnName, type Book, type Table } from './table.js';
import { hasShortYear } from './values/day.js';

/** Words of heads, tried in this order; a measure needs its unit. */
const words: readonly (readonly [RegExp, string])[] = [
  [/\b(description|title|service|duty description|bezeichnung)\b/, 'title'],
  [/\b(plant|site|works|area|werk)\b/, 'plant'],
  [/\b(inside|trough|internal) diameter\b/, 'inside diameter'],
  [/\b(inside|trough|internal) radius\b/, 'inside radius'],
  [/\bside (height|wall)\b/, 'side height'],
  [/\b(trough )?plate\b/, 'plate'],
  [/\bdrive end\b/, 'drive end'],
  [/\b(length|länge)\b/, 'length'],
  [/\b(incline|angle|slope|neigung)\b/, 'incline'],
  [/\b(power|motor|leistung)\b/, 'power'],
  [/\b(speed|drehzahl)\b/, 'speed'],
  [/\b(commissioned|installed|in service since|inbetriebnahme)\b/, 'commissioned'],
  [/\b(material|product|conveys|medium)\b/, 'conveys'],
  [/\bliner( type)?$/, 'liner'],
  [/\b(spiral|screw type)\b/, 'screw'],
  [/\b(conveyor|tag|name|no|förderer|anlage)\b/, 'name'],
];

/** Undefined where the sheet is no such list. */
export function guessAssets(book: Book, file: string): GuessedMapping | undefined {
  for (const table of book.tables) {
    const row = table.rows.slice(0, 20).findIndex((cells) => {
      const roles = cells.flatMap((cell) => (cell?.kind === 'text' ? (roleOf(cell.text) ?? []) : []));
      return new Set(roles).size >= 3 && (roles.includes('length') || roles.includes('incline'));
    });
    if (row >= 0) return guessed(table, row, book, file);
  }
  return undefined;
}

function roleOf(head: string): string | undefined {
  const tidy = head
    .toLowerCase()
    .replace(/[[(].*$/, '')
    .trim();
  return words.find(([pattern]) => pattern.test(tidy))?.[1];
}

function guessed(table: Table, row: number, book: Book, file: string): GuessedMapping {
  const open: string[] = [];
  const lines: MappingLine[] = [
    { key: 'rows', value: 'conveyors', why: 'the heads speak of machines' },
    { key: 'writes into', value: 'conveyors', why: 'the folder beside this file that takes them' },
    ...(book.separator ? [{ key: 'separator', value: book.separator }] : []),
    ...(book.encoding ? [{ key: 'encoding', value: book.encoding }] : []),
    ...(table.sheet === undefined ? [] : [{ key: 'sheets', value: `[${plainKey(table.sheet)}]`, raw: true }]),
    { key: 'heads', value: `${row + 1}` },
  ];
  const cells = table.rows.slice(row + 1).flatMap((each) => each.flatMap((cell) => cell ?? []));
  for (const [key, guess] of [
    ['dates', guessOrder(cells)],
    ['decimal', guessDecimal(cells)],
  ] as const) {
    if (!guess) continue;
    if ('is' in guess) lines.push({ key, value: guess.is, why: guess.why });
    else {
      lines.push({ key, value: '?', why: `OPEN: ${guess.open}` });
      open.push(`${key}: ${guess.open}`);
    }
  }
  if (cells.some(({ kind, text }) => kind === 'text' && hasShortYear(text)))
    lines.push({ key: 'century', value: '2000', why: 'DOUBTFUL: years have two digits' });
  lines.push({ key: 'columns' });
  const taken = new Set<string>();
  for (const [column, label] of labelsOf(table, { from: row, to: row }).entries()) {
    if (!table.rows.slice(row + 1).some((each) => each[column])) continue;
    const word = roleOf(label.replace(` (${columnName(column)})`, ''));
    const role = word === undefined || taken.has(word) ? 'not read' : word;
    taken.add(role);
    lines.push({ key: label, ...valueOf(role, label, open), indent: true });
  }
  if (!taken.has('name')) open.push('columns: which one names the conveyor?');
  return { text: yamlText(file, lines), open };
}

function valueOf(role: string, label: string, open: string[]): Pick<MappingLine, 'value' | 'why'> {
  if (role === 'not read') return { value: role, why: 'its head is not known, or taken already' };
  const read = readAssetRole(role);
  if (!read || !('dimension' in read)) return { value: role, why: 'by its head' };
  const unit = /[[(]\s*([^\])]+?)\s*[\])]|(?:,|\bin)\s*(\S+)\s*$/.exec(label);
  const whole = `${role} in ${unit?.[1] ?? unit?.[2] ?? '?'}`;
  if (readAssetRole(whole)) return { value: whole, why: 'by its head' };
  open.push(`${label}: in which unit? ${list(['mm', 'm', 'in', 'deg', 'kW', 'rpm'], 'or')}`);
  return { value: `${role} in ?`, why: 'OPEN: its unit is not said' };
}
