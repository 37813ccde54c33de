// Of which open findings does a line speak? One of a part at a place goes by part and place: people say a thing in other words each
// time. Several that stand open there are told apart by their words, and so are those of a machine's part without a place: a drive
// has many things that nobody says the place of.

import type { ConditionLine } from '../model/records.js';
import { isSameCondition } from './kinds.js';

/** As it was last told. */
interface Told {
  readonly last: { readonly line: ConditionLine };
}

/** Of open findings, those that a later line says are still there; empty where it is another one. */
export function repeatedIn<T extends Told>(open: readonly T[], line: ConditionLine): readonly T[] {
  const { words } = line;
  const fits = open.filter(({ last }) => isSameCondition(last.line, line));
  const equal = fits.filter(({ last }) => last.line.words === words);
  if (equal.length > 0) return equal;
  if (!hasPart(line)) return [];
  const only = fits.length === 1 ? fits : [];
  if (words === undefined) return only;
  // A place alone has many things: a limit switch and an isolation at one gate.
  if (line.about === undefined) return [];
  const near = nearest(fits, words);
  if (near.length > 0) return near.slice(-1);
  return isOfOnePlace(line) ? only : [];
}

/**
 * Of open findings, those that a line or work answers: by its words where they are of some, else all of that part and place. Of what
 * nobody could look at the words are the reason.
 */
export function answeredIn<T extends Told>(
  open: readonly T[],
  line: ConditionLine,
  said = line.words,
): readonly T[] {
  const fits = open.filter(({ last }) => isSameCondition(last.line, line));
  const equal = fits.filter(({ last }) => last.line.words === said);
  if (equal.length > 0) return equal;
  if (!hasPart(line)) return [];
  const isReason = line.answer === 'not seen';
  const near = said === undefined || isReason || fits.length < 2 ? [] : nearest(fits, said);
  return near.length > 0 ? near : fits;
}

function hasPart({ about, at, point }: ConditionLine): boolean {
  return [about, at, point].some((each) => each !== undefined);
}

/** A bearing, a gearbox, a motor and a coupling are where they are; all else has a place where one is written. */
function isOfOnePlace({ about, at }: ConditionLine): boolean {
  if (at !== undefined) return true;
  switch (about) {
    case 'tail bearing':
    case 'thrust bearing':
    case 'gearbox':
    case 'motor':
    case 'coupling':
      return true;
    default:
      return false;
  }
}

/** Those that share the most words with a text, where any shares one. */
function nearest<T extends Told>(all: readonly T[], text: string): readonly T[] {
  const said = wordsOf(text);
  const shared = all.map(({ last }) => {
    const own = wordsOf(last.line.words ?? '');
    return said.filter((word) => own.some((other) => isSameWord(word, other))).length;
  });
  const most = Math.max(0, ...shared);
  return most === 0 ? [] : all.filter((_, i) => shared[i] === most);
}

/** What says nothing of what is wrong, or only that it is as it was. */
const light: ReadonlySet<string> = new Set(
  (
    'the and for with from not has had was were are all but its this that than then again still now new old left right side ' +
    'near over under before after since same more less worse better only very done put made one two three'
  ).split(' '),
);

function wordsOf(text: string): readonly string[] {
  return [...new Set(text.toLowerCase().match(/\p{L}{3,}/gu) ?? [])].filter((word) => !light.has(word));
}

/** `leak`, `leaks` and `leaking` are one. */
function isSameWord(a: string, b: string): boolean {
  const [short, long] = a.length <= b.length ? [a, b] : [b, a];
  return short === long || (short.length >= 4 && long.startsWith(short));
}
