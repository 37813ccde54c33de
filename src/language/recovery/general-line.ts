// The line that is offered where no nearer one keeps all that was said: a finding, work on a day, or a comment, as the block has it.

import { joined } from './joined.js';
import { conditionKinds } from '../../domain/conditions/kinds.js';
import type { BrokenLine } from './broken-line.js';
import { asCondition } from './condition-line.js';
import { isDone } from './done-words.js';
import { asFinding, asWork, blocksOfWork, severities, takenApart } from './general.js';
import { isOffered, readsSoundly } from './kept.js';
import { partIn, partOfName, partOfWord } from './part-words.js';
import { isReassuring } from './reassuring.js';
import type { LineRepair } from './repairs.js';
import { isName } from './said-place.js';
import { isUnknown, isValue, isWord, keyword, plainImage, type Word } from './word.js';

export interface GeneralLine {
  readonly kind: 'condition' | 'finding' | 'work';
  readonly line: readonly Word[];
  /** Of a condition that was written in another word of the trade: the finding in that word. */
  readonly own?: readonly Word[];
}

/** Undefined where the line is of another kind: a reading with a slip, the beginning of a block. */
export function generalLine(line: BrokenLine): GeneralLine | undefined {
  const { block, pattern } = line;
  // Who stops short of the end meant to go on.
  const isAlone = line.words.length === 1 && isReassuring(line.words[0]?.image ?? '');
  if (line.reached >= line.words.length && !isAlone) return undefined;
  const words = joined(line.words);
  const found =
    block === 'Block'
      ? workOnADay(words)
      : isSaying({ ...line, words })
        ? seenOrDone(words, line)
        : undefined;
  return found && isOffered(words, found.line, pattern) ? found : undefined;
}

/** About a part of the machine, or plain words about a thing that no line of the block begins with. */
function isSaying(line: BrokenLine): boolean {
  const { words, block, reached, blocksSaying, pattern } = line;
  const isOfNoBlock = (word: string): boolean => blocksSaying(word).length === 0 && !pattern.words.has(word);
  const [first, second, ...more] = words;
  if (!first || !blocksOfWork.has(block)) return false;
  // `3 bolts gone`, `14.2 m panel torn`
  if (isValue(first.type) && second) return reached === 0 && partIn(words) > 0;
  if (!second && (isReassuring(first.image) || tools.has(first.type))) return true;
  if (!second) return isWord(first.type) && first.image.includes(' ') && partOfWord(first) !== undefined;
  if (['serviced', 'finding', 'closed'].includes(first.type)) return true;
  if (first.type === 'not seen') return partOfWord(second) !== undefined;
  if (isName(first)) return reached <= 1 && !isReading(second) && saysWhatIsWrong(words.slice(1), line);
  // A line that could be followed further says something that the language has.
  if (reached > 2 && !words.some(({ type }) => type === 'STRING' || severities.has(type)))
    return partOfWord(first) !== undefined || isKind(first);
  if (partOfWord(first) !== undefined) return true;
  if (isNoWord(first)) return false;
  if (tools.has(first.type)) return true;
  if (isWord(first.type))
    return reached === 0 && (words.some((word) => partOfWord(word) !== undefined) || isOfNoBlock(first.type));
  const isPlain = ({ type, image }: Word): boolean => type === 'ID' && /^[a-z][a-z-]/.test(image);
  if (!isPlain(first) || reached > 1) return false;
  const isSomewhere = words.some(({ type }) => type === 'at' || type === 'from' || type === 'STRING');
  return isSomewhere || isPlain(second) || (more.length > 0 && isWord(second.type));
}

function isKind({ type }: Word): boolean {
  return conditionKinds.some((kind) => kind === type);
}

/** What a point can say. */
function isReading(word: Word): boolean {
  return readings.has(word.type) || isNoWord(word);
}

const readings: ReadonlySet<string> = new Set([
  'thickness',
  'colour',
  'color',
  'second colour showing',
  'not seen',
  ',',
]);

/** Behind a name that says where: a part, or what is wrong with something in the language's own words. */
function saysWhatIsWrong(words: readonly Word[], { pattern, words: [name] }: BrokenLine): boolean {
  const states = new Set(
    [...pattern.first].flatMap((each) => (each.includes(' ') ? each.split(' ').slice(1) : [])),
  );
  return (
    partOfName(name) !== undefined ||
    words.some((word) => partOfWord(word) !== undefined || severities.has(word.type)) ||
    states.has(words[0]?.image ?? '')
  );
}

/** No word: a value, a text or a brace. */
function isNoWord({ type }: Word): boolean {
  return isValue(type) || ['STRING', '{', '}'].includes(type);
}

/** Words of other blocks that begin a line about a thing seen. */
const tools: ReadonlySet<string> = new Set([
  'lifting point',
  'joint',
  'colour',
  'noise',
  'gauge',
  'gap',
  'blocked',
  'oil leak',
  'oil low',
  'oil dirty',
  'seal leaking',
  'flooded',
]);

function seenOrDone(words: readonly Word[], { pattern }: BrokenLine): GeneralLine | undefined {
  const isSaid = words[0]?.type === 'serviced';
  const isAnswer = words[0]?.type === 'closed' || words[0]?.type === 'not seen';
  const named = asCondition(takenApart(words), pattern);
  const condition = named && isOffered(words, named, pattern) ? named : undefined;
  // Of a condition that was put right, that it is over.
  if (condition?.[0]?.type === 'closed' && !isSaid) return { kind: 'condition', line: condition };
  if (isSaid || (!isAnswer && isDone(words))) {
    const work = asWork(isSaid ? words.slice(1) : words);
    if (work) return { kind: 'work', line: [keyword('serviced'), ...work] };
  }
  const finding = asFinding(words);
  if (condition) {
    const own =
      finding && !isInItsWords(condition, words) && isOffered(words, finding, pattern) ? finding : undefined;
    return { kind: 'condition', line: condition, ...(own ? { own } : {}) };
  }
  return finding && { kind: 'finding', line: finding };
}

/** Nothing is said in it that was not written in that word. */
function isInItsWords(line: readonly Word[], written: readonly Word[]): boolean {
  const stem = (word: string): string => word.replace(/s$/, '');
  const before = new Set(written.flatMap((word) => plainImage(word).split(' ').map(stem)));
  return line.every(
    ({ type, image }) =>
      !isWord(type) ||
      type === 'at' ||
      type === 'temperature' ||
      plainImage({ type, image })
        .split(' ')
        .every((each) => before.has(each)),
  );
}

/** `repair KS1 2024-07-17 spiral weld at 18 m`: a record of its own, of a conveyor and a day. */
function workOnADay(words: readonly Word[]): GeneralLine | undefined {
  const day = words.findIndex(({ type }) => type === 'DATE');
  const conveyor = words[day - 1];
  if (day < 1 || day > 3 || conveyor?.type !== 'ID' || words.some(({ type }) => type === '{'))
    return undefined;
  const isSaid = words[0]?.type === 'serviced';
  const rest = [...(isSaid ? [] : words.slice(0, day - 1)), ...words.slice(day + 1)];
  if (!isSaid && !isDone(rest)) return undefined;
  const date = words[day];
  const work = asWork(rest);
  return work && date && { kind: 'work', line: [keyword('serviced'), conveyor, date, ...work] };
}

const declaring: ReadonlySet<string> = new Set(['Plant', 'Liner', 'Screw', 'Conveyor', 'Job', 'Order']);

/** A line of a block that holds what is built or planned, and has no word for what it says or a closed choice of what it is about. */
export function asComment({
  words,
  block,
  reached,
  blocksSaying,
  inside,
}: BrokenLine): LineRepair | undefined {
  if (!declaring.has(block) || reached > 1) return undefined;
  if (words.some(({ type }) => type === '{' || type === '}')) return undefined;
  // What reads in another block is to be moved there; a word nobody knows is no name that would make it read.
  const others = isUnknown(words[1]) ? [] : blocksSaying(words[0]?.type ?? '');
  if (others.some((each) => each !== block && readsSoundly(words, inside(each)))) return undefined;
  if (words.some(({ type }) => type === ':' || type === ',')) return undefined;
  if (reached === 0 && !words.some((word) => partOfWord(word) !== undefined)) return undefined;
  if (reached === 1 && !choosing.has(words[0]?.type ?? '')) return undefined;
  const slashes: Word = { type: '//', image: '//' };
  return { line: [slashes, ...words], from: 0, to: 0, words: [slashes] };
}

/** Behind these stands one of a few words, and no name. */
const choosing: ReadonlySet<string> = new Set(['cost', 'unit time', 'lead time', 'expedited lead time']);
