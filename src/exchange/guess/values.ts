// What the cells of a sheet tell of how it is to be read: the order of day and month, the decimal mark, words in the place of
// numbers. Where the cells leave it open the answer is open too, with the cell that shows it.

import type { LinerSpecification } from '../../domain/model/specifications.js';
import { wordKey, type WordMeaning } from '../mapping.js';
import type { SheetCell } from '../table.js';
import { ordersOf, type DayOrder } from '../values/day.js';
import type { Decimal } from '../values/number.js';

export type Guess<T> = { readonly is: T; readonly why: string } | { readonly open: string };

/** Undefined where every date can be read without. */
export function guessOrder(cells: readonly SheetCell[]): Guess<DayOrder> | undefined {
  const texts = cells.filter(({ kind }) => kind === 'text').map(({ text }) => text);
  const told = texts
    .map((text) => ({ text, orders: ordersOf(text) }))
    .filter(({ orders }) => orders.length > 0);
  const [first] = told;
  if (!first) return undefined;
  const fitting = first.orders.filter((order) => told.every(({ orders }) => orders.includes(order)));
  const [order, another] = fitting;
  if (order === undefined) return { open: `no order of day and month fits all dates, such as ${first.text}` };
  if (another !== undefined)
    return { open: `${first.text} can be ${fitting.join(' or ')}, and no other date tells` };
  const shown = told.find(({ orders }) => orders.length === 1) ?? first;
  return { is: order, why: `${shown.text} can be nothing else` };
}

/** Undefined where no number has a mark. */
export function guessDecimal(cells: readonly SheetCell[]): Guess<Decimal> | undefined {
  const numbers = cells.flatMap(({ kind, text }) => {
    const [digits] = kind === 'text' ? (/^[\d.,' \u00a0]*[.,]\d+/.exec(text) ?? []) : [];
    return digits === undefined ? [] : [digits];
  });
  const [first] = numbers;
  if (first === undefined) return undefined;
  const certain = (mark: Decimal): string | undefined => numbers.find((digits) => markOf(digits) === mark);
  const [comma, point] = [certain(','), certain('.')];
  if (comma !== undefined && point !== undefined)
    return { open: `${comma} has a decimal comma and ${point} a decimal point` };
  if (comma !== undefined) return { is: ',', why: `${comma} can be nothing else` };
  if (point !== undefined) return { is: '.', why: `${point} can be nothing else` };
  return { open: `${first} can be a decimal or thousands, and no other number tells` };
}

/** The decimal mark of a number where it can be nothing else. */
function markOf(digits: string): Decimal | undefined {
  const last = /([.,])(\d+)$/.exec(digits);
  const mark = last?.[1];
  if (mark !== ',' && mark !== '.') return undefined;
  const other = mark === ',' ? '.' : ',';
  if (digits.includes(other)) return mark;
  const once = digits.indexOf(mark) === digits.lastIndexOf(mark);
  const couldBeThousands = /^[1-9]\d{0,2}([.,]\d{3})+$/.test(digits);
  if (!once) return other;
  return couldBeThousands ? undefined : mark;
}

const nothing =
  /^(?:[-–—./?*x]+|n\.?\/?a\.?|#n\/a|none|nil|null|nan|not measured|not taken|missing|k\.?\s?a\.?|entfällt)$/i;
const notSeen: readonly (readonly [RegExp, string | undefined])[] = [
  [/buried|(?:covered (?:by|in)|under) material|verschüttet/i, 'buried'],
  [/blocked|verstopft/i, 'blocked'],
  [/no light|dark/i, 'no light'],
  [/no access|not accessible|unreachable|kein zugang/i, 'no access'],
  [/cover on|lid on|cover not off/i, 'cover on'],
  [/not seen|unseen|not visible|nicht sichtbar/i, undefined],
];
const ordinals = [/\b(?:1st|first|top|1\.)/i, /\b(?:2nd|second|2\.)/i, /\b(?:3rd|third|3\.)/i];

/** What a word in the place of a reading says; undefined where nobody but its author knows. */
export function guessMeaning(word: string, liners: readonly LinerSpecification[]): WordMeaning | undefined {
  if (nothing.test(word)) return { is: 'no reading' };
  const seen = notSeen.find(([pattern]) => pattern.test(word));
  if (seen) return { is: 'not seen', ...(seen[1] === undefined ? {} : { reason: seen[1] }) };
  if (/(?:trough|steel|metal|stahl)\b/i.test(word)) return { is: 'trough showing' };
  const names = [...new Set(liners.flatMap(({ layers }) => layers.map(({ name }) => name)))];
  const named = names.filter((name) => ` ${wordKey(word)} `.includes(` ${wordKey(name)} `));
  if (named.length === 1) return { is: 'colour', name: named[0] ?? '' };
  const layer = ordinals.findIndex((pattern) => pattern.test(word));
  return layer >= 0 && /colou?r|layer|farbe|schicht/i.test(word)
    ? { is: 'layer', number: layer + 1 }
    : undefined;
}
