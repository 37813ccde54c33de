// The line that was probably meant: the fewest small slips of the pen (a letter, a word left out, written twice, too much or
// changed over, another trade's word) after which a line reads to its end. Numbers, names and texts are never made up, and a word
// that nobody knows is never thrown away: where it is too much, it becomes the line's note.

import { conditionKinds } from '../../domain/conditions/kinds.js';
import { findUnit } from '../../domain/units/unit-table.js';
import { nearest } from '../nearest.js';
import { fillers } from './fillers.js';
import { isOffered } from './kept.js';
import { partOfWord } from './part-words.js';
import { isReassuring } from './reassuring.js';
import type { LinePattern, LinePlace } from './pattern.js';
import { isSpotName } from './said-place.js';
import { tradePhrase, tradeWord } from './trade-words.js';
import { imagesOf, isUnknown, isWord, keyword, plainImage, type Word } from './word.js';
import { withNote } from './word-as-note.js';

export interface LineRepair {
  readonly line: readonly Word[];
  /** Words of the line that was written, from and to (exclusive), and what stands in their place. */
  readonly from: number;
  readonly to: number;
  readonly words: readonly Word[];
}

interface Try extends Omit<LineRepair, 'from' | 'to' | 'words'> {
  readonly cost: number;
  /** Words that were taken out and say something. */
  readonly told: readonly string[];
}

/** The likeliest repair of a line of this block, where exactly one is the likeliest. */
export function repairOf(line: readonly Word[], pattern: LinePattern, block: string): LineRepair | undefined {
  if (line.length > longest) return undefined;
  const found = search({ line, cost: 0, told: [] }, pattern, block, 2).filter(
    (one) => keepsSafety(line, one.line, pattern) && isOffered(line, one.line, pattern),
  );
  const best = Math.min(...found.map(({ cost }) => cost));
  const likeliest = new Map(
    found.filter(({ cost }) => cost === best).map((one) => [imagesOf(one.line), one.line]),
  );
  const [only] = likeliest.values();
  return only && likeliest.size === 1 ? changed(line, only) : undefined;
}

/** What keeps people safe: a line that was meant has it still, or the word that it looks like. */
const safety = [
  'cold work',
  'hot work',
  'shielded',
  'wet',
  'fire watch',
  'to be confirmed',
  'attended by',
  'serious',
  'urgent',
  'closed',
  'worn through',
];

function keepsSafety(written: readonly Word[], repaired: readonly Word[], { words }: LinePattern): boolean {
  const here = safety.filter((word) => words.has(word));
  const kept = new Set(repaired.map(plainImage));
  return written.map(plainImage).every((image) => {
    if (kept.has(image)) return true;
    return !here.includes(image) && likeWords(image, here).every((word) => kept.has(word));
  });
}

const longest = 60;
/** Above this a line is a guess: two words left out are nobody's slip of the pen. */
const dearest = 3;

/** How far a line can be followed, and where it stands then. */
export function follow(
  line: readonly Word[],
  pattern: LinePattern,
): { readonly reached: number; readonly standing: LinePlace } {
  let standing = pattern.start;
  for (const [reached, { type }] of line.entries()) {
    const next = pattern.next(standing, type);
    if (next === undefined) return { reached, standing };
    standing = next;
  }
  return { reached: line.length, standing };
}

function search(start: Try, pattern: LinePattern, block: string, slips: number): readonly Try[] {
  const { reached, standing } = follow(start.line, pattern);
  if (reached === start.line.length && pattern.isWhole(standing)) {
    const line = withNote(start.line, start.told);
    // A text that the line cannot do without is no note: nothing is put into it.
    const last = start.line.at(-1);
    const isTaken =
      line !== start.line && last?.type === 'STRING' && !isWholeLine(start.line.slice(0, -1), pattern);
    // A name that says where is no note.
    const isSpot = start.told.some((image) => isSpotName({ type: 'ID', image }));
    const isGood = partOfWord(start.line[0]) !== undefined && start.told.some(isReassuring);
    return !isTaken && !isSpot && !isGood && isWholeLine(line, pattern) ? [{ ...start, line }] : [];
  }
  if (slips === 0 || start.cost >= dearest) return [];
  const places = reached === 0 ? [0] : [reached, reached - 1];
  return places
    .flatMap((at) => changesAt(start, at, pattern, block, at === reached))
    .filter((one) => follow(one.line, pattern).reached >= Math.min(reached, one.line.length))
    .flatMap((one) => search(one, pattern, block, slips - 1));
}

function isWholeLine(line: readonly Word[], pattern: LinePattern): boolean {
  const { reached, standing } = follow(line, pattern);
  return reached === line.length && pattern.isWhole(standing);
}

function changesAt(
  { line, cost, told }: Try,
  at: number,
  pattern: LinePattern,
  block: string,
  isBreak: boolean,
): readonly Try[] {
  const { standing } = follow(line.slice(0, at), pattern);
  const words = [...new Set(pattern.ways(standing).map(({ token }) => token))].filter(
    // Two spellings of one word are one repair.
    (token) => (isWord(token) && token !== 'color') || token === '±',
  );
  const here = line[at];
  const put = (from: number, to: number, put: readonly Word[], price: number): Try => ({
    line: [...line.slice(0, from), ...put, ...line.slice(to)],
    cost: cost + price,
    told,
  });
  // A line that begins with a word nobody knows does not only lack the word beside it.
  const isLost = at <= 1 && isUnknown(line[0]);
  // A word that nobody knows is no name that a word before it makes of it, nor a colour behind a name without a number, and a text behind a line is its note, no picture.
  const lacking = isLost
    ? []
    : words.filter(
        (word) =>
          word !== 'photo' &&
          !(isUnknown(here) && (takesName.has(word) || (word === 'colour' && !mayShow(line[at - 1], here)))),
      );
  const tries = lacking.map((word) => put(at, at, [keyword(word)], 3));
  if (!here) return tries;
  const twice = here.image === line[at - 1]?.image;
  // A value is only taken out where it stands twice.
  if (twice) tries.push(put(at, at + 1, [], 1));
  else if (isText(here) && !(at === 0 && isWord(here.type))) {
    // The word where the line breaks is likelier the one too many than the one before it.
    const without = put(at, at + 1, [], isBreak ? 4 : 5);
    tries.push(saysSomething(here) ? { ...without, told: [...told, here.image] } : without);
  }
  const after = line[at + 1];
  if (after) {
    tries.push(put(at, at + 2, [after, here], 3));
    const phrase = phraseOf(here, after, words);
    if (phrase !== undefined) tries.push(put(at, at + 2, [keyword(phrase)], 2));
    if (after.type === 'NUMBER' && findUnit(here.image) !== undefined)
      tries.push(put(at, at + 2, [{ type: 'QUANTITY', image: `${after.image} ${here.image}` }], 2));
  }
  if (!isText(here)) return tries;
  const image = plainImage(here);
  for (const word of likeWords(image, words))
    if (isMeant(word, here, after)) tries.push(put(at, at + 1, [keyword(word)], 2));
  const trade = tradeWord(block, image, words);
  // A part before a word that is no name is no heading of it.
  const isAbout = partOfWord(here) !== undefined && isUnknown(after);
  if (trade !== undefined && !isAbout) tries.push(put(at, at + 1, [keyword(trade)], 2));
  return tries;
}

/** A name with a number, no row of names, is a point; and what is wrong with a part is no colour. */
function mayShow(point: Word | undefined, colour: Word | undefined): boolean {
  const name = point?.image ?? '';
  const shown = colour?.image ?? '';
  if (noColours.has(shown)) return false;
  return /\d/.test(name) && !/\d-[A-Z]*\d/.test(name) && !states.has(shown) && !isReassuring(shown);
}

/** What a liner may be, and no layer is called. */
export const noColours: ReadonlySet<string> = new Set(
  'dirty wet dry clean same unchanged rough smooth worn hot steel metal bare read measured done seen checked new old'.split(
    ' ',
  ),
);

/** Single words of what is wrong: `torn`, `loose`. */
export const states: ReadonlySet<string> = new Set(conditionKinds.flatMap((kind) => kind.split(' ')));

const takesName: ReadonlySet<string> = new Set([
  'at',
  'with',
  'to',
  'using',
  // `empty hopper`: a thing is no crew, and no step.
  'by',
  'attended by',
  'after',
]);

/** Words of the language that lie near what was written: one slip of the pen in a short word, two in a longer one. */
export function likeWords(image: string, words: readonly string[]): readonly string[] {
  // `prove` for `prove dead`: a phrase goes by its first word where no other begins so.
  // What is worn is not worn through.
  const phrases = words.filter((word) => word.startsWith(`${image} `) && word !== 'worn through');
  if (phrases.length === 1) return phrases;
  // `view down`, `thick`: as far as it was written out.
  const longer = words.filter(
    (word) => image.length > 1 && word !== 'color' && word.startsWith(image) && word !== image,
  );
  if (longer.length === 1 && !longer[0]?.includes(' ')) return longer;
  const near = nearest(image, words, image.length < 4 ? 1 : 2);
  return near.filter((word) => word.length > 1 && word.toLowerCase() !== image).slice(0, 1);
}

/** `cover` before a word that nobody knows is not the one phrase that begins with it: that word is what was meant. */
export function isMeant(like: string, written: Word, next: Word | undefined): boolean {
  return !isUnknown(next) || !like.startsWith(`${plainImage(written)} `);
}

/** Two words that are a phrase of the language but for a letter, or for their order: `pove dead`, `off braces`. */
function phraseOf(
  { image: first }: Word,
  { image: second }: Word,
  words: readonly string[],
): string | undefined {
  if (!/^[a-z]/.test(second)) return undefined;
  if (words.includes(`${second} ${first}`)) return `${second} ${first}`;
  const written = `${first} ${second}`;
  const trade = tradePhrase(written, words);
  if (trade !== undefined) return trade;
  return nearest(written, words, 2).find((word) => word.includes(' ') && word !== written);
}

/** The line as it reads with a repair. */
export function repaired(line: readonly Word[], { from, to, words }: LineRepair): readonly Word[] {
  return [...line.slice(0, from), ...words, ...line.slice(to)];
}

/** The line kept as a comment, which nothing reads. */
export function commentedOut(words: readonly Word[]): LineRepair {
  const slashes: Word = { type: '//', image: '//' };
  return { line: [slashes, ...words], from: 0, to: 0, words: [slashes] };
}

/** The shortest stretch of the line that differs. */
export function changed(line: readonly Word[], repaired: readonly Word[]): LineRepair {
  let from = 0;
  while (from < line.length && same(line[from], repaired[from])) from++;
  let back = 0;
  const most = Math.min(line.length, repaired.length) - from;
  while (back < most && same(line[line.length - 1 - back], repaired[repaired.length - 1 - back])) back++;
  return {
    line: repaired,
    from,
    to: line.length - back,
    words: repaired.slice(from, repaired.length - back),
  };
}

function same(a: Word | undefined, b: Word | undefined): boolean {
  return a?.image === b?.image && a?.type === b?.type;
}

/** A word that is no unit, and none of those that only hold a sentence together. */
function saysSomething({ type, image }: Word): boolean {
  return (
    (type === 'ID' || isWord(type)) && findUnit(image) === undefined && !fillers.has(image.toLowerCase())
  );
}

function isText({ image }: Word): boolean {
  return /^[A-Za-z]/.test(image);
}
