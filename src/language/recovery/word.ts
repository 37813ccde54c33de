// A token as a pattern takes it, and as it stands in the text; and what can be told of it alone.

import { findUnit } from '../../domain/units/unit-table.js';

export interface Word {
  readonly type: string;
  readonly image: string;
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

export function imagesOf(line: readonly Word[]): string {
  return line
    .map((word) => (word.image.startsWith('"') ? word.image : plainImage(word)))
    .join(' ')
    .replace(/ ([,:])/g, '$1');
}

/** `2 squeaking`: a number before a word that is no unit, which the lexer takes for one. */
export function isFalseUnit(image: string): boolean {
  const unit = /^[^a-zA-Z]*([a-z][a-z-]{3,})$/.exec(image)?.[1];
  return unit !== undefined && findUnit(unit) === undefined;
}

/**
 * What the lexer took together, apart: `2 squeaking`, `1 P4`, `1 in panel 3`, and `8-10.5 m`, which is no negative length but a stretch.
 */
export function withoutFalseUnits(line: readonly Word[]): readonly Word[] {
  return line.flatMap((word, at): readonly Word[] => {
    // `hold down`, `holddowns`
    const pair = `${line[at - 1]?.image ?? ''} ${word.image}`;
    if (/^hold downs?$/i.test(`${word.image} ${line[at + 1]?.image ?? ''}`)) return [keyword('hold-down')];
    if (/^hold downs?$/i.test(pair)) return [];
    if (/^(holddowns?|h-ds?)$/i.test(word.image)) return [keyword('hold-down')];
    if (word.type !== 'QUANTITY') return [word];
    const upper = /^-(\d.*)$/.exec(word.image)?.[1];
    const before = line[at - 1];
    if (upper !== undefined && (before?.type === 'NUMBER' || before?.type === 'QUANTITY'))
      return [keyword('to'), { type: 'QUANTITY', image: upper }];
    const spot = /^(\d+) +([A-Z]{1,2}\d+)$/.exec(word.image);
    if (spot)
      return [
        { type: 'NUMBER', image: spot[1] ?? '' },
        { type: 'ID', image: spot[2] ?? '' },
      ];
    const isPlace = / in$/.test(word.image) && isWord(line[at + 1]?.type ?? '');
    if (!isPlace && !isFalseUnit(word.image)) return [word];
    const [, number = '', unit = ''] = /^([^a-z]*?)\s*([a-z].*)$/.exec(word.image) ?? [];
    return [
      { type: 'NUMBER', image: number },
      { type: 'ID', image: unit },
    ];
  });
}
