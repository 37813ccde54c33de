// The forms that can carry anything: what was seen is a finding, what was done is work, each of a part, at a place, in the words that
// were written. They are what is offered where no nearer line keeps all that was said.

import { conditionKinds } from '../../domain/conditions/kinds.js';
import { fillers } from './fillers.js';
import { overAgain, workIn } from './work-words.js';
import type { SaidBy } from './kept.js';
import { imagesOf, keyword, plainImage, textsIn, type Word } from './word.js';
import { partIn, partOfName, partOfWord, wordsNamed } from './part-words.js';
import type { PartName } from '../../domain/model/records.js';
import { isName, oneOf, placeIn, type Take } from './said-place.js';

/** Blocks that take a finding, and work. */
export const blocksOfWork: ReadonlySet<string> = new Set([
  'Inspection',
  'Reline',
  'PanelsMoved',
  'ScrewChange',
]);

/** A word that a condition begins with. */
export function isConditionKind({ type }: Word): boolean {
  return kindWords.has(type);
}
const kindWords: ReadonlySet<string> = new Set(conditionKinds);

/** A line taken apart. */
export interface SaidLine {
  readonly answer: readonly Word[];
  /** As the language has it. */
  readonly part: string | undefined;
  readonly place: readonly Word[];
  readonly severity: readonly Word[];
  readonly photo: readonly Word[];
  readonly by: readonly Word[];
  /** What is left, in the order written. */
  readonly told: readonly Word[];
  readonly texts: readonly string[];
}

/** `cover cracked at 14.4 m serious`: a finding about the cover; undefined where the line says too little to be one. */
export function asFinding(words: readonly Word[]): readonly Word[] | undefined {
  const said = takenApart(words);
  const { answer, part, place, severity, photo, by, told, texts } = said;
  if (told.some(({ type }) => type === '{')) return undefined;
  const note = noteOf(told, texts);
  // Whoever says so is no finding.
  if (note === undefined && answer.length === 0) return undefined;
  return [
    ...answer,
    keyword('finding'),
    ...aboutAt(part, place),
    ...severity,
    ...photo,
    ...(note === undefined ? [] : [note]),
    ...by,
  ];
}

/** A piece of work, behind `serviced`. */
export interface WorkLine {
  readonly line: readonly Word[];
  readonly senses: readonly SaidBy[];
  /** In the language's own word, or by what it ends. */
  readonly isNamed: boolean;
  /** How it would say what it ended. */
  readonly ending?: readonly Word[];
}

/** `gate seal renewed at Gate by "fitter"`: what stands behind `serviced`. Undefined where nothing is left to say. */
export function asWork(words: readonly Word[]): WorkLine | undefined {
  const { answer, part, severity, photo, by, texts, ...rest } = takenApart(words);
  const { place, told } = placedByName(rest);
  if (told.some(({ type }) => type === '{')) return undefined;
  const about = aboutAt(part, place);
  const ending = endOf({ severity, told, texts, by, photo });
  const closing = [keyword('closed'), keyword('finding'), ...about, ...ending];
  // What is said to be over was a finding that stood open.
  if (words[0]?.type === 'closed' && words[1]?.type === 'finding')
    return { line: closing, senses: [], isNamed: true };
  const isAtDrive = about[0]?.type === 'drive at';
  const over = answer.length === 0 ? overAgain(part, told) : undefined;
  if (over)
    return {
      line: [keyword('closed'), keyword(over.kind), ...place, ...ending],
      senses: over.senses,
      isNamed: true,
    };
  // What has no condition of its own was a finding.
  if (answer[0]?.type === 'closed')
    return { line: [...answer, keyword('finding'), ...about, ...ending], senses: [], isNamed: true };
  const done = answer.length === 0 && !isAtDrive ? workIn(part, told) : undefined;
  if (done) {
    const head = [keyword(done.part), keyword(done.work), ...place];
    const left = noteOf([...done.left, ...severity], texts);
    return { line: [...head, ...(left ? [left] : []), ...by, ...photo], senses: done.senses, isNamed: true };
  }
  const plain = noteOf([...answer, ...told, ...severity], texts);
  const line = [...about, ...(plain ? [plain] : []), ...by, ...photo];
  // `serviced finding gate at Gate "ground flush"`: found and put right in one go, for all that this line says.
  const isFinding = words.some(({ type }) => type === 'finding');
  const found: Partial<WorkLine> = isFinding ? { senses: [['finding', 'serviced']], ending: closing } : {};
  return plain && { line, senses: [], isNamed: false, ...found };
}

/** What follows the place: how bad it is, what is left to tell in quotes, who says so and what shows it. */
export function endOf({
  severity,
  told,
  texts,
  by,
  photo,
}: Pick<SaidLine, 'severity' | 'told' | 'texts' | 'by' | 'photo'>): readonly Word[] {
  const note = noteOf(told, texts);
  return [...severity, ...(note ? [note] : []), ...by, ...photo];
}

/** The part and its place: `drive at` is one word of the language. */
function aboutAt(part: string | undefined, place: readonly Word[]): readonly Word[] {
  if (part === 'drive' && place[0]?.type === 'at') return [keyword('drive at'), ...place.slice(1)];
  return part === undefined ? place : [keyword(part), ...place];
}

/** `LowerGate cylinder renewed`: a name that comes first says where. */
function placedByName({ place, told }: Pick<SaidLine, 'place' | 'told'>): Pick<SaidLine, 'place' | 'told'> {
  const [first, ...rest] = told;
  return first && isName(first) && place.length === 0 && rest.length > 0
    ? { place: [keyword('at'), first], told: rest }
    : { place, told };
}

export function takenApart(words: readonly Word[]): SaidLine {
  const taken = new Set<number>();
  const take = (from: number, count: number): readonly Word[] => {
    for (let at = from; at < from + count; at++) taken.add(at);
    return words.slice(from, from + count);
  };
  // `closed gate wiper worn "not closed, still to do"`
  const isClosed = words[0]?.type === 'closed' && !textsIn(words).some((text) => toldOpen.test(text));
  const opens = isClosed || (words[0]?.type === 'not seen' && words.length > 1);
  const answer = opens ? take(0, 1) : [];
  const place = placeIn(words, take);
  const severity = oneOf(words, severities, take);
  const how = severity.length > 0 ? [] : severityOf(words, take);
  const by = afterWord(words, ['by', 'welded by'], take);
  const photo = afterWord(words, ['photo'], take);
  // `rubbing at 16 m on the left side`: what led to the place goes with it.
  for (let at = words.length - 1; at > 0; at--)
    if (
      !taken.has(at) &&
      taken.has(at + 1) &&
      leading.has(words[at]?.image ?? '') &&
      !(words[at]?.image === 'on' && putting.test(words[at - 1]?.image ?? ''))
    )
      taken.add(at);
  const left = words.filter((_, at) => !taken.has(at));
  const { part: named, told: about } = aboutPart(left.filter(({ type }) => type !== 'STRING'));
  const end = place.length === 0 && ofAnEnd.has(named) ? endIn(about) : undefined;
  const told = end?.told ?? about;
  // `panel 8 of run 3 lifted`, `HeadGate leaks`: its place names the part.
  // `panel 3 of run 1 split along bolt row`: beside what it is, and not of what.
  const isPanelOf = words[0]?.type === 'panel' && taken.has(0) && isBeside(about, named);
  const part =
    (isPanelOf ? 'panel' : named) ??
    (words[0]?.type === 'panel' && taken.has(0) ? 'panel' : taken.has(0) ? partOfName(words[0]) : undefined);
  const welded = by[0]?.type === 'welded by' ? [keyword('welded')] : [];
  return {
    answer,
    part,
    place: end ? [keyword('at'), keyword(end.end)] : place,
    severity: [...severity, ...how],
    photo,
    by: by.length === 0 ? [] : [keyword('by'), ...by.slice(1)],
    told: [...told, ...welded],
    texts: textsIn(left),
  };
}

function isBeside(told: readonly Word[], part: PartName | undefined): boolean {
  const at = told.findIndex((word) => part !== undefined && partOfWord(word) === part);
  return (
    at > 0 &&
    /^(?:along|near|beside|by|behind|under|round|around|from|between)$/.test(told[at - 1]?.image ?? '')
  );
}

/** What is said to be closed and is not. */
const toldOpen =
  /\bnot (?:yet )?(?:closed|done|mended|renewed|finished)\b|\bstill (?:to do|to be done|open)\b/i;

/** `put on at 20.4 m` */
const putting =
  /^(?:put|left|screwed|bolted|laid|pushed|welded|glued|back|held|switched|went|came|goes|is|was)$/;

const leading: ReadonlySet<string> = new Set(['on', 'in', 'the', 'at', 'of', 'near', 'from']);

/** Whose guard, stop or sensor it is says where it is. */
const owners: Readonly<Record<string, string>> = {
  drive: 'drive',
  motor: 'drive',
  belt: 'drive',
  chain: 'drive',
  coupling: 'drive',
  gearbox: 'drive',
  tail: 'tail',
  'tail bearing': 'tail',
  head: 'head',
};

const ofAnEnd: ReadonlySet<PartName | undefined> = new Set([
  'guard',
  'emergency stop',
  'zero-speed sensor',
] as const);

/** `drive guard`, `guard of the tail shaft`: the words that say no more than that are none of what is told. */
function endIn(told: readonly Word[]): { readonly end: string; readonly told: readonly Word[] } | undefined {
  const at = told.findIndex(({ image }) => Object.hasOwn(owners, image));
  const owner = told[at]?.image ?? '';
  const end = owners[owner];
  if (end === undefined) return undefined;
  const joins = (i: number): boolean =>
    ['of', 'on', 'over', 'the', 'at', 'from'].includes(told[i]?.image ?? '');
  let from = at;
  while (joins(from - 1)) from--;
  const isBefore = told.slice(at + 1, at + 3).some((word) => ofAnEnd.has(partOfWord(word)));
  // `emergency stop tail does not work`: the end stands right behind its part.
  const isNext = at === 0 && owner === end && told.length > 1;
  if (from === at && !isBefore && !isNext) return undefined;
  const isWhole = owner === end && told[at + 1]?.image !== 'shaft';
  return { end, told: told.filter((_, i) => i < from || i > at || (i === at && !isWhole)) };
}

/** The part that is named, and what is left to be told: its own name no more where that came first. */
function aboutPart(words: readonly Word[]): Pick<SaidLine, 'told'> & { readonly part: PartName | undefined } {
  const known = words[0]?.type === 'finding' ? words.slice(1) : words;
  const at = partIn(known);
  const named = known[at];
  const part = partOfWord(named);
  if (!named || part === undefined || at > 0) return { part, told: known };
  // `gate 2 moves slowly`: which of them it is.
  if (known[1]?.type === 'NUMBER' && part !== 'bolts' && part !== 'panel') return { part, told: known };
  const rest = plainImage(named)
    .slice(wordsNamed(plainImage(named)).length)
    .trim();
  return { part, told: [...(rest === '' ? [] : [keyword(rest)]), ...known.slice(1)] };
}

export const severities: ReadonlySet<string> = new Set(['slight', 'serious', 'urgent']);

/** `leaking slightly` */
function severityOf(words: readonly Word[], take: Take): readonly Word[] {
  const at = words.findIndex(({ type, image }) => type === 'ID' && severities.has(image.replace(/ly$/, '')));
  const word = words[at]?.image.replace(/ly$/, '');
  if (word === undefined) return [];
  take(at, 1);
  return [keyword(word)];
}

/** A word with the text behind it. */
function afterWord(words: readonly Word[], wanted: readonly string[], take: Take): readonly Word[] {
  const at = words.findIndex(({ type }, i) => wanted.includes(type) && words[i + 1]?.type === 'STRING');
  return at < 0 ? [] : take(at, 2);
}

const joining = new Set(['the', 'at', 'of', 'near', 'from', 'and', 'a']);

/** What words tell, and what stands in quotes among them. */
export function noteOfWords(words: readonly Word[]): Word | undefined {
  return noteOf(
    words.filter(({ type }) => type !== 'STRING'),
    textsIn(words),
  );
}

export function noteOf(told: readonly Word[], texts: readonly string[]): Word | undefined {
  const said = [...told];
  // `rubbing on the`: what stood behind it has its own place in the line.
  while (said.length > 1 && (joining.has(said.at(-1)?.image ?? '') || isPunctuation(said.at(-1)?.type ?? '')))
    said.pop();
  while (said.length > 1 && isPunctuation(said[0]?.type ?? '')) said.shift();
  const says = said.some(({ image, type }) => !isPunctuation(type) && !fillers.has(image.toLowerCase()));
  const plain = imagesOf(says ? said : [])
    .replace(/"/g, '')
    .replace(/\s+/g, ' ')
    .trim();
  const text = [plain, texts.join('; ')].filter(Boolean).join(': ');
  return text === '' ? undefined : textWord(text);
}

function isPunctuation(type: string): boolean {
  return type === ',' || type === ':' || type === '.';
}

function textWord(text: string): Word {
  return { type: 'STRING', image: `"${text.replace(/"/g, '')}"` };
}
