// Words for what was done, and not only seen: participles of repair and upkeep. Those with one sense have the language's own word.

import type { Service } from '../../domain/model/records.js';
import { plainImage, type Word } from './word.js';

// Spelled out, so that a kind of work that the records gain is missed here at once.
const works: Readonly<Record<NonNullable<Service['work']>, true>> = {
  'oil changed': true,
  'oil topped up': true,
  'seal renewed': true,
  'bearings renewed': true,
  greased: true,
  aligned: true,
  tightened: true,
  renewed: true,
  tried: true,
  'found good': true,
};

const same: Readonly<Record<string, NonNullable<Service['work']>>> = {
  changed: 'renewed',
  replaced: 'renewed',
  exchanged: 'renewed',
  lubricated: 'greased',
  realigned: 'aligned',
  retightened: 'tightened',
  'bolts tightened': 'tightened',
  resealed: 'seal renewed',
};

const others: ReadonlySet<string> = new Set(
  (
    'welded rewelded repaired repair mended mend straightened cleaned adjusted readjusted refitted fitted installed removed ' +
    'freed unblocked patched painted sealed serviced overhauled flushed filled refilled drained reset balanced ground shimmed ' +
    'cleared swapped secured rebolted refixed rebuilt restored fixed rectified renovated bolted cut dressed'
  ).split(' '),
);

/** The language's word for a piece of work. */
export function workOf(word: Word | undefined): string | undefined {
  if (!word) return undefined;
  const image = plainImage(word).toLowerCase();
  if (Object.hasOwn(works, image)) return image;
  return Object.hasOwn(same, image) ? same[image] : undefined;
}

/** Something was done, and not only seen: not that it is still to be. */
export function isDone(words: readonly Word[]): boolean {
  // `liner cut, 200 mm long` was seen, and not done; `cut out` was.
  const isSeen = (word: Word, at: number): boolean =>
    word.image === 'cut' && !/^(?:out|off|to|back|away|free|down|open)$/.test(words[at + 1]?.image ?? '');
  return words.some((word, at) => isWorkWord(word) && !isSeen(word, at)) && !isToDo(words);
}

/** It is still to be done. */
export function isToDo(words: readonly Word[]): boolean {
  return words.some(({ image }) => toDo.has(image.toLowerCase()));
}

const toDo: ReadonlySet<string> = new Set('not be needs need must should wants never'.split(' '));

export function isWorkWord(word: Word): boolean {
  return word.type !== 'STRING' && (workOf(word) !== undefined || others.has(plainImage(word).toLowerCase()));
}
