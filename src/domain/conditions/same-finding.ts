// Of which open findings does a line speak? One of a part at a place goes by part and place: people say a thing in other words each
// time. Several that stand open there are told apart by their words, and so are those of a machine's part without a place: a drive
// has many things that nobody says the place of.

import type { ConditionLine, SeenBeside, SeenPlace } from '../model/records.js';
import { isSameCondition, isSamePlace, partNameOf, saysNoPlace, takenWith } from './kinds.js';

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
  // At one place in a stretch it is another thing, where no word says otherwise.
  return isOfOnePlace(line) ? only.filter(({ last }) => isAlong(last.line) === isAlong(line)) : [];
}

/** Along a stretch of what runs along the machine; a cover, a hatch or a gate is one thing however its place is told. */
function isAlong({ about, to, panel }: ConditionLine): boolean {
  if (to === undefined || panel !== undefined) return false;
  switch (about) {
    case 'liner':
    case 'panel':
    case 'bolts':
    case 'spiral':
    case 'flight':
    case 'trough':
    case 'cable':
    case 'walkway':
    case 'pull cord':
      return true;
    default:
      return false;
  }
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

/** What a record says in words of the part and place of an open condition, and whether by a word that the condition is called by. */
export function saidOf(
  condition: ConditionLine,
  { remarks, conditions }: Pick<SeenBeside, 'remarks' | 'conditions'>,
): readonly { readonly words: string; readonly isNamed: boolean }[] {
  const part = partNameOf(condition);
  if (part === undefined) return [];
  const ofWords = condition.kind === 'finding' ? (condition.words ?? '') : condition.kind;
  const named = wordsOf(`${ofWords} ${condition.aspect ?? ''}`).filter((word) => !part.includes(word));
  const findings = [
    ...remarks.map((each) => ({ place: each, of: each.part, words: each.text })),
    ...conditions.flatMap((each) =>
      // Another finding of a part says nothing of this one: what it says again is told by its words.
      each.kind === 'finding' && each.answer === undefined && condition.kind !== 'finding'
        ? [{ place: each, of: each.about, words: each.words ?? '' }]
        : [],
    ),
  ];
  return findings
    .filter(({ place, of }) => (of === part || isOfTheSame(of, condition)) && couldBeThere(place, condition))
    .map(({ place, words }) => ({
      words,
      isNamed:
        (saysNoPlace(condition) || !saysNoPlace(place)) &&
        wordsOf(words).some((word) => named.some((other) => isSameWord(word, other))),
    }));
}

/** Where words or work may be of a condition: at its place, or where neither says one; of what there is one of, wherever it is said. */
export function couldBeThere(place: SeenPlace, condition: ConditionLine): boolean {
  if (saysNoPlace(condition)) return true;
  if (!saysNoPlace(place)) return isSamePlace(place, condition);
  const part = partNameOf(condition);
  return (part === 'pull cord' || part === 'gate') && isSamePlace({ ...condition, ...place }, condition);
}

/** A panel, its bolts and the liner are one; so are the spiral and its flight. */
function isOfTheSame(part: string | undefined, condition: ConditionLine): boolean {
  switch (takenWith(condition)) {
    case 'liner':
      return part === 'liner' || part === 'panel' || part === 'bolts';
    case 'spiral':
      return part === 'spiral' || part === 'flight';
    default:
      return false;
  }
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
