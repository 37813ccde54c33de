// A token as a pattern takes it, and as it stands in the text; and what can be told of it alone.

import type { IToken } from 'chevrotain';
import { wordType } from '../row-starts.js';
import { fillers } from './fillers.js';
import { findUnit } from '../../domain/units/unit-table.js';

export interface Word {
  readonly type: string;
  readonly image: string;
}

export function wordOf(token: IToken): Word {
  return { type: wordType(token), image: token.image };
}

/** A word of the language, as it stands in a line. */
export function keyword(word: string): Word {
  return { type: word, image: word };
}

/** A keyword of letters, as a pattern names it. */
export function isWord(token: string): boolean {
  return /^[a-z]/.test(token);
}

/** A word in small letters that the language does not know: most names of points have a capital. */
export function isUnknown(word: Word | undefined): boolean {
  return word?.type === 'ID' && /^[a-z]/.test(word.image);
}

/** `8.4 mm`, `0.33 in`: so much as liners, plates and gaps are measured in. */
export function isSmallLength({ type, image }: Word): boolean {
  return type === 'QUANTITY' && /\d *(?:mm|in)$/.test(image);
}

/** What says how much or when, by the type of its token. */
export function isValue(type: string): boolean {
  return values.has(type);
}

const values: ReadonlySet<string> = new Set(['QUANTITY', 'NUMBER', 'DATE', 'CLOCK']);

/** What the texts of a line say, without their quotes. */
export function textsIn(words: readonly Word[]): readonly string[] {
  return words.flatMap(({ type, image }) => (type === 'STRING' ? [image.slice(1, -1)] : []));
}

/** A phrase of several words with one blank between them. */
export function plainImage({ image }: Word): string {
  return image.replace(/\s+/g, ' ');
}

/** The words of a line in small letters, with one blank between them. */
export function inSmall(words: readonly Word[]): string {
  return words.map((word) => plainImage(word).toLowerCase()).join(' ');
}

export function imagesOf(line: readonly Word[]): string {
  return line
    .map((word) => (word.image.startsWith('"') ? word.image : plainImage(word)))
    .join(' ')
    .replace(/ ([,:])/g, '$1');
}

/** `2 squeaking`: a number before a word that is no unit, which the lexer takes for one. */
export function isFalseUnit(image: string): boolean {
  const unit = /^[^a-zA-Z]*([a-z][a-z-]*)$/.exec(image)?.[1];
  if (unit === undefined || findUnit(unit) !== undefined) return false;
  return unit.length > 3 || fillers.has(unit) || shortWords.has(unit);
}

/** Words of three letters and less that people write behind a number, and no units. */
const shortWords: ReadonlySet<string> = new Set(
  (
    'or nil put not new off out too old but hit men man ok fit set cut top end per due low hot wet dry bad gap bit own due lid pad nut rest add let ' +
    'got ran saw yet one two as if so no we he by up'
  ).split(' '),
);
