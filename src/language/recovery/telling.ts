// What an author is told of a line that cannot be read: the word where it breaks, how such a line goes on, the line that was
// probably meant or, where nothing lies near, what can stand there; last how such a line looks, as hovers show it.

import { capital } from '../../domain/units/wording.js';
import { keywordDocOf } from '../keyword-docs.js';
import { inUsualOrder } from './part-order.js';
import type { BrokenLine } from './broken-line.js';
import { isOffered, isSlipOf, readsSoundly } from './kept.js';
import { changed, follow, isMeant, likeWords, repaired, repairOf, type LineRepair } from './repairs.js';
import { imagesOf, isUnknown, isWord, keyword, plainImage, type Word } from './word.js';
import type { LinePattern } from './pattern.js';
import { partOfWord } from './part-words.js';
import { tradeWord } from './trade-words.js';
import { inALook, saidElsewhere } from './elsewhere.js';
import type { Otherwise } from './otherwise.js';
import { stepInWords } from './step-in-words.js';
import { saidInAnotherRecord, saidOtherwise } from './said-otherwise.js';
import { asFinding, blocksOfWork } from './general.js';
import { joined } from './joined.js';
import { isSpotName } from './said-place.js';
import { asComment, generalLine, type GeneralLine } from './general-line.js';
import { withUnitWords } from './unit-words.js';
import { choices, most, nearTo, sayingsOf } from './choices.js';
import { blockWord, oneOf, quoted, waysInWords, withArticle } from './wording.js';

export interface Told {
  readonly message: string;
  /** The words that are wrong, by number, from and to (exclusive): never none. */
  readonly from: number;
  readonly to: number;
  readonly repair?: LineRepair;
  /** The repair says what was written, and guesses nothing. */
  readonly isSure?: boolean;
}

export function tellBroken(line: BrokenLine): Told {
  const plain = saidOtherwise(line);
  if (plain) return toldOtherwise(plain);
  const { words, reached, block, pattern } = line;
  const near = withUnitWords(words, pattern);
  const filled = near && isOffered(words, near, pattern) ? near : undefined;
  const likely = filled ? changed(words, filled) : repairOf(words, pattern, block);
  const otherwise = likely ? undefined : saidInAnotherRecord(line);
  if (otherwise) return toldOtherwise(otherwise);
  // Who stops short of the end meant to go on: words taken away are no repair.
  const repair = reached >= words.length && likely && likely.line.length < words.length ? undefined : likely;
  const order = repair || reached >= words.length ? undefined : inUsualOrder(words, pattern);
  if (order && readsSoundly(order, pattern)) {
    const message = `The parts of this line stand in another order: \`${imagesOf(order)}\`.`;
    return { ...placed(reached), message, repair: changed(words, order), isSure: true };
  }
  // Work is told in the order of its words, and what is wrong with a part by its own words, not with half of them as a note.
  const isScattered = repair && hasMoreText(repair.line, words);
  const general = !repair || isScattered ? generalLine(line) : undefined;
  return general && (!repair || general.kind !== 'finding' || words[0]?.type === 'serviced')
    ? saidInGeneral(line, general)
    : toldByWord(line, repair);
}

function hasMoreText(line: readonly Word[], written: readonly Word[]): boolean {
  const texts = written.filter(({ type }) => type === 'STRING').map(({ image }) => image);
  return line.some(({ type, image }) => type === 'STRING' && !texts.includes(image));
}

/** What has no line of its own, in the form that can carry anything. */
function saidInGeneral(line: BrokenLine, general: GeneralLine): Told {
  const { words, block, pattern } = line;
  const isOfTheBlock = words[0]?.type !== 'ID' && pattern.first.has(words[0]?.type ?? '');
  const start = isOfTheBlock || block === 'Block' ? '' : `${saysNot(line)} `;
  const offered = `\`${imagesOf(general.line)}\``;
  const how =
    general.kind === 'work' ? `Work done is said with \`serviced\`: ${offered}.` : `Did you mean ${offered}?`;
  const own = general.own ? ` In words of your own it is \`${imagesOf(general.own)}\`.` : '';
  const ending = general.ending
    ? ` It ends nothing that stands open; what it put right it names, \`${imagesOf(general.ending)}\`, say.`
    : general.endsNothing
      ? ' It ends nothing that stands open; what it put right it names behind `closed`, in the words of the look that found it.'
      : '';
  const message = `${start}${how}${own}${ending}${general.kind === 'finding' ? familyOf(line) : ''}`;
  // Where it breaks, as far as it could be followed.
  const at = isOfTheBlock ? Math.min(line.reached, words.length - 1) : 0;
  return { ...placed(at), message, repair: changed(words, general.line) };
}

function toldByWord(line: BrokenLine, repair: LineRepair | undefined): Told {
  const { words, reached } = line;
  const first = wrongFirstWord(line, repair);
  if (first) return first;
  if (reached >= words.length)
    return { ...placed(words.length - 1), message: tooShort(line, repair), ...meant(repair) };
  // `liner DG1 2026-03-14 sagging`: what is seen on a day begins no specification.
  const seen =
    !repair && isSpecified(line) && words.some(({ type }) => type === 'DATE') ? inALook(line) : undefined;
  if (seen !== undefined) return { ...placed(0), message: seen };
  const step = repair || line.reached !== 2 ? undefined : stepInWords(line);
  if (step) return toldOtherwise(step);
  const taken = repair ? undefined : takenName(line);
  if (taken !== undefined) return { ...placed(reached), message: taken };
  const comment = repair ? undefined : asComment(line);
  const message = `${wrongWord(line, repair)}${proposed(repair, words)}${repair ? '' : looks(line)}${noPlace(comment)}`;
  return { ...placed(reached), message, ...meant(repair ?? comment) };
}

const specified: ReadonlySet<string> = new Set(['liner', 'screw', 'plant', 'conveyor', 'job']);

/** What begins like a block that no day belongs to. */
function isSpecified({ block, words, reached }: BrokenLine): boolean {
  return block === 'Block' && reached > 0 && specified.has(words[0]?.type ?? '');
}

/** A line of a look or of work that nothing else answers is kept in its own words. */
function inOwnWords({ words, block, pattern, reached }: BrokenLine): LineRepair | undefined {
  const [first] = words;
  if (!blocksOfWork.has(block) || reached > 1 || words.length < 2 || !first) return undefined;
  // A point or a place that begins a reading is told as one.
  if (isSpotName(first) || words.some(({ type }) => type === '{' || type === '}')) return undefined;
  const finding = asFinding(joined(words));
  return finding && isOffered(words, finding, pattern) ? changed(words, finding) : undefined;
}

function kept(repair: LineRepair | undefined): string {
  return repair && repair.line[0]?.type !== '//'
    ? ` In words of your own it is \`${imagesOf(repair.line)}\`.`
    : noPlace(repair);
}

/** Of a line that the language has no place for, in a block that holds what is built or planned: a comment keeps it. */
function noPlace(comment: LineRepair | undefined): string {
  return comment
    ? ` Where the language has no place for it, a comment keeps it, which nothing reads: \`${imagesOf(comment.line)}\`.`
    : '';
}

function toldOtherwise({ message, at, repair }: Otherwise): Told {
  return { ...placed(at), message, ...meant(repair) };
}

function meant(repair: LineRepair | undefined): Pick<Told, 'repair'> {
  return repair ? { repair } : {};
}

function placed(word: number): Pick<Told, 'from' | 'to'> {
  const from = Math.max(0, word);
  return { from, to: from + 1 };
}

/** A word of the language where only a name can stand. */
function takenName({ words, reached, standing, pattern }: BrokenLine): string | undefined {
  const word = words[reached];
  const next = waysInWords(pattern.ways(standing));
  return word && isWord(word.type) && next.length === 1 && next[0] === 'a name' ? takenWord(word) : undefined;
}

function wrongWord(
  { words, reached, standing, pattern }: BrokenLine,
  repair: LineRepair | undefined,
): string {
  const word = words[reached];
  const before = words[reached - 1];
  const found = quoted(word?.image ?? '');
  const next = familyFirst(waysInWords(pattern.ways(standing)), word);
  const whole = pattern.isWhole(standing);
  if (word && before && word.image === before.image) return `${found} stands here twice.`;
  if (next.length === 0) return `${found} is too much: the line is over with ${quoted(before?.image ?? '')}.`;
  if (repair && next.length > most) return `${found} cannot stand here.`;
  const end = whole ? ', or the line ends' : '';
  return `${found} cannot stand here: after ${quoted(before?.image ?? '')} comes ${choices(next, word)}${end}.`;
}

/** Of many choices those that begin as the word does: after `closed`, of a cover what there is of covers. */
function familyFirst(next: readonly string[], word: Word | undefined): readonly string[] {
  const family = next.filter((each) => word && each.startsWith(`\`${plainImage(word)} `));
  return next.length > most && family.length > 0 ? family : next;
}

function tooShort(line: BrokenLine, repair: LineRepair | undefined): string {
  const { words, standing, pattern } = line;
  const last = words.at(-1);
  return (
    `This line ends too soon: after ${quoted(last?.image ?? '')} comes ${choices(waysInWords(pattern.ways(standing)), undefined)}.` +
    `${proposed(repair, words)}${looks(line)}`
  );
}

/** A word that begins no line of this block, or a name that is none: the word that was meant, or all that can stand there. */
function wrongFirstWord(line: BrokenLine, repair: LineRepair | undefined): Told | undefined {
  const { words, reached, block, pattern } = line;
  const [word] = words;
  if (!word) return undefined;
  const known = [...pattern.first].filter(isWord);
  const image = plainImage(word);
  const trade = tradeWord(block, image, known);
  const near = trade === undefined ? likeWords(image, known) : [trade];
  // `night` is no slip of `flight`.
  const isSlip = (each: string): boolean =>
    each === trade ||
    !isUnknown(word) ||
    words.length < 3 ||
    isSlipOf(image, each.split(' ')[0] ?? each) ||
    isSlipOf(image, each);
  const like = near.find((each) => isMeant(each, word, words[1]) && isSlip(each));
  if (reached > 0) {
    // A name of a point or of a step can be any word; only one that looks like another word is taken for that.
    const isName = word.type === 'ID' && reached === 1 && /^[a-z]{2}/.test(word.image);
    if (!isName || (words[1]?.type === ':' && block === 'Order')) return undefined;
  }
  const start = saysNot(line);
  if (repair) return { ...placed(0), message: `${start}${proposed(repair, words)}`, repair };
  if (like !== undefined && !isWord(word.type) && partOfWord(word) === undefined) {
    const replaced: LineRepair = { line: words, from: 0, to: 1, words: [keyword(like)] };
    return {
      ...placed(0),
      message: `${start} Did you mean \`${like}\`?${looksAs(pattern, like)}`,
      ...(mayBeMended(replaced, line) ? { repair: replaced } : {}),
    };
  }
  const step = stepInWords(line);
  if (step) return toldOtherwise(step);
  const other = saidElsewhere(line);
  const comment = asComment(line) ?? inOwnWords(line);
  const all = waysInWords(pattern.ways(pattern.start)).map((each) => named(each, block));
  const kin = all.length > most ? nearTo(all, word) : [];
  const can = all.length > most ? sayingsOf(block) : undefined;
  const list =
    kin.length > 0
      ? `${oneOf(kin)}, say`
      : can === undefined
        ? oneOf(all)
        : `${can}; \`explain words\` lists every word`;
  return {
    ...placed(0),
    message: `${start} ${other ?? `${block === 'Block' ? 'A block starts with' : 'It can say'} ${list}.`}${kept(comment)}`,
    ...meant(comment),
  };
}

/** A word alone is put right while its line is still being written, or where the line reads then. */
function mayBeMended(repair: LineRepair, { words, pattern, block }: BrokenLine): boolean {
  const line = repaired(words, repair);
  const { reached, standing } = follow(line, pattern);
  const next = line[reached]?.type ?? '';
  // Any name may begin a step, but only with a colon behind it.
  const isName = block === 'Order' && next === 'ID' && line[reached + 1]?.type !== ':';
  const isAnother = pattern.isWhole(standing) && pattern.first.has(next) && !isName;
  return words.length < 3 || isAnother || isOffered(words, line, pattern);
}

function saysNot({ words, block }: BrokenLine): string {
  const where = block === 'Block' ? 'begins no block' : `is not something ${withArticle(block)} says`;
  return `${quoted(words[0]?.image ?? '')} ${where}${block === 'Order' ? ' next' : ''}.`;
}

/** What the language says of the part, word by word: `cover missing`, `cover bent`. */
function familyOf({ words, pattern }: BrokenLine): string {
  const [part] = words;
  const family = [...pattern.first].filter((each) => part && each.startsWith(`${plainImage(part)} `));
  return family.length === 0 ? '' : ` Of it there are ${oneOf(family.map((each) => `\`${each}\``))}.`;
}

function named(each: string, block: string): string {
  if (each !== 'a name') return each;
  return block === 'Order' ? 'the name of the step' : 'the name of a point';
}

function proposed(repair: LineRepair | undefined, words: readonly Word[]): string {
  if (!repair) return '';
  const [only] = repair.words;
  if (only && repair.words.length === 1 && repair.to === repair.from + 1 && words.length > 1)
    return ` Did you mean \`${only.image}\`?`;
  const line = imagesOf(repair.line);
  return line.length > 160 ? '' : ` Did you mean \`${line}\`?`;
}

/** How such a line looks. */
function looks({ words, pattern }: BrokenLine): string {
  const [first] = words;
  if (
    first?.type === 'ID' &&
    words.some(({ type }) => type === 'colour' || type === 'color') &&
    pattern.words.has('colour')
  )
    return ' Such a line reads `P1 colour teal`.';
  return first ? looksAs(pattern, first.type) : '';
}

function looksAs(pattern: LinePattern, word: string): string {
  const example = exampleLine(pattern, word);
  return example === undefined ? '' : ` Such a line reads \`${example}\`.`;
}

/** The line that hovers show for the fact that begins with this word. */
function exampleLine(pattern: LinePattern, word: string): string | undefined {
  const way = pattern.ways(pattern.start).find(({ token }) => token === word);
  if (!way) return undefined;
  if (way.fact === 'Reading')
    return word === 'ID' ? 'P1 thickness 8.4 mm' : 'at 3.2 m clock 7:30 thickness 8.4 mm';
  if (way.fact === 'AsFitted') return 'P1 thickness 12.1 mm';
  const snippet = keywordDocOf(way.rule, word)?.snippet ?? keywordDocOf(way.fact, word)?.snippet;
  return snippet === undefined ? undefined : plainLine(snippet);
}

/** A snippet as somebody would have typed it: its first line. */
export function plainLine(snippet: string): string {
  const plain = snippet
    .replace(/\$\{\d+\|([^,|}]+)[^}]*\}/g, '$1')
    .replace(/\$\{\d+:?([^}]*)\}/g, '$1')
    .replace(/\$\d/g, '');
  return plain.split('\n')[0]?.trim() ?? plain;
}

function takenWord(taken: Word): string {
  const word = plainImage(taken);
  const offered = word.replace(/(?:^|[ -])(.)/g, (_, letter: string) => letter.toUpperCase());
  return `\`${word}\` is a word of the language and cannot be a name; write \`${offered}\` or \`${offered}1\`, say.`;
}

/** Of a brace that is missing, too many, or opens nothing. */
export const braces = {
  unclosed: (blocks: readonly string[], before: string | undefined): string => {
    const inner = blocks.at(-1) ?? '';
    const what = blocks.map((block) => withArticle(block)).join(' in ');
    return before === undefined
      ? `The file ends inside ${withArticle(inner)}: a closing \`}\` is missing.`
      : before === '}'
        ? `${capital(withArticle(inner))} is not closed: a closing \`}\` is missing.`
        : `${capital(what)} is not closed before ${quoted(before)}: a closing \`}\` is missing.`;
  },
  unnamed: 'The word `order` is missing before this `{`: steps of an order follow.',
  unopened: (block: string): string =>
    `The opening \`{\` of the ${blockWord(block)} is missing at the end of this line.`,
  opensNothing: (block: string | undefined): string =>
    block === undefined
      ? 'This `{` opens nothing: a block begins with its word and its name.'
      : `This \`{\` opens nothing: ${withArticle(block)} is open already.`,
  closesNothing: 'This `}` closes nothing: the block before it is closed already.',
  tooSoon: (block: string): string =>
    `This \`}\` closes the ${blockWord(block)} too soon: what follows belongs to it.`,
};
