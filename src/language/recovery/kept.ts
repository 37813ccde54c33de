// Is a line worth offering? Only one that reads as it stands, and in which everything is still there that was said: every number with
// its unit, every name, every text, and every word that means something, as a word, in a note, or as the language's own word for it.
// Whatever proposes a line, this is asked before anybody sees it.

import { joined } from './joined.js';
import { aspectsOf, measureOf } from '../../domain/conditions/kinds.js';
import { parseQuantity } from '../../domain/units/parse.js';
import type { ConditionKind, PartName } from '../../domain/model/records.js';
import { nearest } from '../nearest.js';
import { isWorkWord, workOf } from './done-words.js';
import { isReassuring } from './reassuring.js';
import { fillers, vague } from './fillers.js';
import type { LinePattern } from './pattern.js';
import { isPartName, partIn, partOfWord } from './part-words.js';
import { isColour } from './colours.js';
import { isSaidBy } from './senses.js';
import { isSameSense } from './trade-words.js';
import { isFalseUnit, isUnknown, isValue, isWord, plainImage, textsIn, type Word } from './word.js';

/** A word that was written, and the language's word that says it. */
export type SaidBy = readonly [written: string, put: string];

export function isOffered(
  written: readonly Word[],
  line: readonly Word[],
  pattern: LinePattern,
  senses: readonly SaidBy[] = [],
): boolean {
  return (
    readsSoundly(line, pattern) &&
    !isNameless(written, line) &&
    keepsAll(written, line, senses) &&
    isOfSamePart(written, line, senses) &&
    addsNothing(written, line, senses)
  );
}

/** `motor "hot"`: a part of the drive with a text alone names nothing that could be answered; a finding does. */
function isNameless(written: readonly Word[], line: readonly Word[]): boolean {
  const [part, ...rest] = line;
  const isOfDrive = aspectsOf((part?.type ?? '') as ConditionKind).length > 0;
  const isBare = rest.every(
    ({ type }) => type === 'STRING' || ['slight', 'serious', 'urgent'].includes(type),
  );
  const before = textsIn(written);
  return isOfDrive && isBare && rest.length > 0 && textsIn(line).some((text) => !before.includes(text));
}

/** Words that state a fact by themselves: a line that has one more than was written says what nobody said. */
const claims: ReadonlySet<string> = new Set([
  'worn through',
  'closed',
  'not seen',
  'trough showing',
  'second colour showing',
  'slight',
  'serious',
  'urgent',
  'does not count',
  'turned end for end',
  'flooded',
  'tried',
  'found good',
  // Nobody stands by, and nothing waits, because a word was left over.
  'attended by',
  'using',
  'after',
]);

/** Why nobody could look. */
const reasons: ReadonlySet<string> = new Set(['blocked', 'buried', 'no light', 'no access', 'cover on']);

function addsNothing(written: readonly Word[], line: readonly Word[], senses: readonly SaidBy[]): boolean {
  const before = new Set(written.map(plainImage));
  const isSaid = (put: string): boolean =>
    before.has(put) ||
    senses.some(([, each]) => each === put) ||
    put.split(' ').every((each) => before.has(each)) ||
    written.some((word) => singles(word).some((each) => standsFor(put, each, word))) ||
    (put === 'not seen' && written.some((word) => reasons.has(word.type))) ||
    ((put === 'closed' || put === 'not seen') &&
      // That work was done says by itself of no finding that it is over.
      written.some((word) => isReassuring(word.image) || (isWorkWord(word) && word.type !== 'serviced')));
  // A word in small letters is the name of a point only where it was written as one.
  const [first] = line;
  const isPut = (word: Word, at: number): boolean =>
    line[at - 1]?.type === 'at' && isUnknown(word) && !written.some(({ type }) => type === 'at');
  if (line.some(isPut)) return false;
  if (isUnknown(first) && (first?.image !== written[0]?.image || isColour(first))) return false;
  return line.every(
    ({ type }) =>
      (!claims.has(type) || isSaid(type)) && (!keepsPeopleSafe.has(type) || isWritten(type, written)),
  );
}

/** What keeps people safe is never made of its last word alone: a `test run` is no gas test. */
const keepsPeopleSafe: ReadonlySet<string> = new Set(['gas test', 'prove dead', 'gate shut', 'fire watch']);

function isWritten(put: string, written: readonly Word[]): boolean {
  const all = written.flatMap(singles);
  const [first = ''] = put.split(' ');
  return all.some((word) => word === first || isSlipOf(word, first));
}

/** What the line is about comes first in what was written: `cover bolts loose` is of the cover, and not of the bolts. */
function isOfSamePart(written: readonly Word[], line: readonly Word[], senses: readonly SaidBy[]): boolean {
  const isTold = (word: Word): boolean => senses.some(([known]) => known === plainImage(word).toLowerCase());
  const own = joined(written).filter((word) => !isTold(word));
  const first = partOfWord(own[partIn(own)]);
  const named = line.flatMap((word) => partOfWord(word) ?? []);
  return first === undefined || named.length === 0 || named.some((each) => isSamePart(first, each));
}

/** The liner is what its panels are, and the flight what winds along the spiral. */
function isSamePart(written: PartName | undefined, put: PartName | undefined): boolean {
  return (
    written === put || (written === 'liner' && put === 'panel') || (written === 'flight' && put === 'spiral')
  );
}

/** To its end, each value where one of its kind is wanted. */
export function readsSoundly(line: readonly Word[], pattern: LinePattern): boolean {
  let standing = pattern.start;
  let kind: ConditionKind | undefined;
  let before = '';
  for (const { type, image } of line) {
    const next = pattern.next(standing, type);
    if (next === undefined) return false;
    const ways = pattern.ways(standing).filter(({ token }) => token === type);
    if (type === 'QUANTITY' && isFalseUnit(image)) return false;
    // `8.6-9.0 mm` is no value with its error.
    if (before === '±' && image.startsWith('-')) return false;
    const isMeasure = type === 'QUANTITY' || type === 'NUMBER';
    const sized = isMeasure && !valued.has(before) ? kind : undefined;
    if (sized !== undefined && !isMeasureOf(sized, type, image)) return false;
    // A measure without its unit is refused next.
    const isBare = type === 'NUMBER' && ways.every(({ rule }) => rule === 'Quantity');
    if (isBare && sized === undefined && !plainNumbers.has(before)) return false;
    // `motor trips at 16 A` says no place, and no liner is 3480 mm thick.
    if (type === 'QUANTITY' && before === 'at' && !parseQuantity(image, 'length').ok) return false;
    if (type === 'QUANTITY' && before === 'clock' && /%|m$|t$|A$/.test(image)) return false;
    if (type === 'QUANTITY' && before === 'thickness' && !isLengthUpTo(image, thickest)) return false;
    if (isMeasure && before === 'temperature' && !parseQuantity(image, 'temperature').ok) return false;
    before = type;
    if (ways.some(({ rule }) => rule === 'ConditionKind'))
      kind = plainImage({ type, image }) as ConditionKind;
    standing = next;
  }
  return pattern.isWhole(standing);
}

/** Behind these stands a number alone. */
const plainNumbers: ReadonlySet<string> = new Set(['fill', 'resistance factor', 'risk', 'threshold']);

function isLengthUpTo(image: string, most: number): boolean {
  const read = parseQuantity(image, 'length');
  return !read.ok || read.quantity.value <= most;
}

/** No liner and no plate is thicker, mm (judgement). */
const thickest = 150;

/** Behind these stands a value of their own, and not how much there is of a condition. */
const valued: ReadonlySet<string> = new Set([
  ...[
    'at',
    'from',
    'to',
    'clock',
    'temperature',
    'closed on',
    'panel',
    'of run',
    'and',
    'above',
    'below',
    'read on',
  ],
  ...['±', ',', 'thickness', 'every', 'depth'],
]);

/** Bolts are counted, a joint is measured, and of a hatch there is neither. */
function isMeasureOf(kind: ConditionKind, type: string, image: string): boolean {
  switch (measureOf(kind)) {
    case 'count':
      return type === 'NUMBER';
    case 'length': {
      // `panel torn 14.2 m` is where it is.
      const size = parseQuantity(image, 'length');
      return size.ok && size.quantity.value > 0 && size.quantity.value <= longestTear;
    }
    case 'none':
      return false;
  }
}

/** No tear, crack or gap is longer, mm (judgement: two panels). */
const longestTear = 2500;

/** `two bolts`: counted all the same. */
export const numbers: Readonly<Partial<Record<string, string>>> = {
  one: '1',
  two: '2',
  three: '3',
  four: '4',
  five: '5',
  six: '6',
  seven: '7',
  eight: '8',
};

/** Everything that was written is in the line, as a word, in a text, or in the language's own word for it. */
export function keepsAll(
  original: readonly Word[],
  line: readonly Word[],
  senses: readonly SaidBy[],
): boolean {
  const written = joined(original);
  const parts = line.map(partOfWord).filter((part) => part !== undefined);
  const texts = textsIn(line).map(tight);
  const all = line.flatMap(({ type, image }) => (type === 'STRING' ? [] : [tight(image)])).join(' ');
  const said = new Set(line.flatMap(singles).map(stem));
  const before = new Set(written.map(plainImage));
  const words = line.flatMap((word) => (isWord(word.type) ? [plainImage(word)] : []));
  const fresh = words.filter((word) => !before.has(word));
  const isSaidHere = (word: string): boolean =>
    senses.some(([known, put]) => known === word && (words.includes(put) || said.has(put)));
  return written.every((word, index) => {
    const image = tight(word.image);
    if (
      vague.has(image.toLowerCase()) &&
      written[index + 1]?.type === 'QUANTITY' &&
      !said.has(stem(image.toLowerCase()))
    )
      return false;
    if (isSaidHere(image.toLowerCase())) return true;
    if (word.type === 'STRING') return texts.some((text) => text.includes(tight(word.image.slice(1, -1))));
    if (isValue(word.type)) return isAmong(image, all) || texts.some((text) => isAmong(image, text));
    // By another name it is the same part.
    if (isPartName(word) && parts.some((part) => isSamePart(partOfWord(word), part))) return true;
    const count = numbers[image.toLowerCase()];
    if (count !== undefined && isAmong(count, all)) return true;
    return singles(word).every(
      (each) => said.has(stem(each)) || fillers.has(each) || fresh.some((put) => standsFor(put, each, word)),
    );
  });
}

function isAmong(value: string, text: string): boolean {
  return ` ${text.replace(/[:;,]( |$)/g, ' $1')} `.replace(/ +/g, ' ').includes(` ${value} `);
}

/** A slip of the pen of it, or the language's word for it. A word of the language, or of a part, is no slip of another one. */
function standsFor(put: string, word: string, written: Word): boolean {
  if (
    isSaidBy(word, put) ||
    isSameSense(word, put) ||
    isSameSense(plainImage(written), put) ||
    workOf(written) === put
  )
    return true;
  // A sensor that tripped was not tried.
  if (isWord(written.type) || partOfWord(written) !== undefined || put === 'tried') return false;
  return [...put.split(' '), put].some((each) => isSlipOf(word, each));
}

/** One letter off, or two where the first one is right: `torn` is no slip of `worn`, nor `pitted` of `lifted`. */
export function isSlipOf(word: string, meant: string): boolean {
  if (word.length > 1 && meant.startsWith(word)) return true;
  const isAlikeAtFirst = word.startsWith(meant.charAt(0));
  if (nearest(word, [meant], 1).length > 0)
    return isAlikeAtFirst || word.length > 4 || word.length !== meant.length;
  return isAlikeAtFirst && word.length > 3 && nearest(word, [meant], 2).length > 0;
}

function singles(word: Word): readonly string[] {
  const text = word.type === 'STRING' ? word.image.slice(1, -1) : word.image;
  return text
    .toLowerCase()
    .split(/[^\p{L}\d'-]+/u)
    .filter((each) => /\p{L}/u.test(each));
}

/** One of a thing and several are the same word. */
function stem(word: string): string {
  return word.replace(/(?<=[^s])s$/, '');
}

function tight(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}
