// The line that is offered where no nearer one keeps all that was said: a finding, work on a day, or a comment, as the block has it.

import { joined } from './joined.js';
import { aspectsOf, conditionKinds } from '../../domain/conditions/kinds.js';
import type { ConditionKind } from '../../domain/model/records.js';
import type { BrokenLine } from './broken-line.js';
import { isStep } from './elsewhere.js';
import { asCondition } from './condition-line.js';
import { isDone } from './done-words.js';
import {
  asFinding,
  asWork,
  blocksOfWork,
  endOf,
  isConditionKind,
  noteOf,
  severities,
  takenApart,
  type SaidLine,
  type WorkLine,
} from './general.js';
import { overAgain, workIn } from './work-words.js';
import { isOffered, readsSoundly, type SaidBy } from './kept.js';
import { partIn, partOfName, partOfWord } from './part-words.js';
import { isReassuring } from './reassuring.js';
import { commentedOut, likeWords, noColours, type LineRepair } from './repairs.js';
import type { LinePattern } from './pattern.js';
import { isName } from './said-place.js';
import { isUnknown, isValue, isWord, keyword, plainImage, type Word } from './word.js';

export interface GeneralLine {
  readonly kind: 'condition' | 'finding' | 'work';
  readonly line: readonly Word[];
  /** Of a condition that was written in another word of the trade: the finding in that word. */
  readonly own?: readonly Word[];
  /** Words that were written, each with the language's word that says it. */
  readonly senses?: readonly SaidBy[];
  /** Of work in words of one's own: how it would say what it ended. */
  readonly ending?: readonly Word[];
  /** It is work in words of one's own, which ends nothing by itself. */
  readonly endsNothing?: boolean;
}

/** Undefined where the line is of another kind: a reading with a slip, the beginning of a block. */
export function generalLine(line: BrokenLine): GeneralLine | undefined {
  const { block, pattern } = line;
  // Who stops short of the end meant to go on.
  const isAlone = line.words.length === 1 && isReassuring(line.words[0]?.image ?? '');
  const words = withoutPartTwice(joined(line.words));
  // `run 2 knocking`: what was read to its end says more than a number.
  const isCutShort = line.reached >= line.words.length && words.length <= line.words.length;
  if (isCutShort && !isAlone) return undefined;
  const found =
    block === 'Block'
      ? workOnADay(words, line.inside('Inspection'), pattern)
      : isSaying({ ...line, words })
        ? seenOrDone(words, line)
        : undefined;
  return found && isOffered(words, found.line, pattern, found.senses) ? found : undefined;
}

/** `serviced DG1 2025-02-10 interlock closed interlock bypassed at H1`: what it ends names its part. */
function withoutPartTwice(words: readonly Word[]): readonly Word[] {
  const closed = words.findIndex(({ type }) => type === 'closed');
  const part = partOfWord(words[closed - 1]);
  const isTwice = part !== undefined && partOfWord(words[closed + 1]) === part;
  return isTwice ? words.filter((_, at) => at !== closed - 1) : words;
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
  // `at G1 gate hard to move`
  if (first.type === 'at' && words.slice(2).some((word) => partOfWord(word) !== undefined)) return true;
  if ((first.type === 'at' || first.type === 'from') && isToldOfAPlace(words, line)) return true;
  if (!second) return isWord(first.type) && first.image.includes(' ') && partOfWord(first) !== undefined;
  if (['serviced', 'finding', 'closed'].includes(first.type)) return true;
  const { part, told } = takenApart(words);
  if (first.type !== 'not seen' && workIn(part, told)) return true;
  if (first.type === 'not seen') return partOfWord(second) !== undefined;
  if (isName(first))
    return (
      reached <= 1 &&
      !isReading(second) &&
      (saysWhatIsWrong(words.slice(1), line) || saysNoReading(words.slice(1), pattern) || isForeign(second))
    );
  // A line that could be followed further says something that the language has.
  if (reached > 2 && !words.some(({ type }) => type === 'STRING' || severities.has(type)))
    return partOfWord(first) !== undefined || isConditionKind(first);
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

/** `at 5.2 m patch holds`, `at 2.2 m thickness thin`: words and no value, which no slip of a reading is. */
function isToldOfAPlace(words: readonly Word[], { block }: BrokenLine): boolean {
  const behind = words.slice(words[2]?.type === 'to' ? 4 : 2);
  const isValued = behind.some(({ type }) => isValue(type) || type === 'clock' || type === '{');
  const told = behind.filter(({ type, image }) => type === 'ID' && /^[a-z]{2,}/.test(image));
  return block === 'Inspection' && !isValued && told.length > 0 && behind.length > 1;
}

/** `H2S 12 ppm at inlet`: a unit of nothing that a point can say. */
function isForeign({ type, image }: Word): boolean {
  return type === 'QUANTITY' && /^\d[\d.,]* ?(?:ppm|bar|mbar|lel|vol|dB|Hz|kPa)$/i.test(image);
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

/** `P3 crack 40 mm`: a word that is no slip of what a point can say. */
function saysNoReading(words: readonly Word[], pattern: LinePattern): boolean {
  const [first, ...more] = words;
  if (first && (isReassuring(first.image) || noColours.has(first.image))) return true;
  if (first?.type !== 'ID' || !/^[a-z]{3,}/.test(first.image) || more.length === 0) return false;
  return (
    likeWords(
      first.image,
      [...pattern.words].filter((word) => readings.has(word)),
    ).length === 0
  );
}

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
  const said = takenApart(words);
  const named = asCondition(said, pattern);
  const condition = named && isOffered(words, named, pattern) ? named : undefined;
  // Of a condition that was put right, that it is over.
  if (condition?.[0]?.type === 'closed' && !isSaid) return { kind: 'condition', line: condition };
  // What is still said to be wrong is not over: `taped up, tape off`.
  const over = isSaid || isAnswer || condition ? undefined : asOver(said);
  if (over && isOffered(words, over.line, pattern, over.senses)) return over;
  const done = isAnswer ? undefined : workIn(said.part, said.told);
  // `new hold-down loose`: what is seen of it.
  const isSeen = condition !== undefined && saysWhat(condition);
  // How bad it is, is said of what was seen.
  const isBad = said.severity.length > 0;
  const isWork = done ? !(done.isNew && isSeen) : isDone(words) && !condition && !isBad;
  if (isSaid || (!isAnswer && isWork)) {
    const own = isSaid ? closedGap(takenApart(words.slice(1)), pattern) : undefined;
    if (own) return { kind: 'work', line: [keyword('serviced'), ...own.line], senses: own.senses };
    const work = asWork(isSaid ? words.slice(1) : words);
    if (work) return workLine([keyword('serviced')], work);
  }
  const finding = asFinding(words);
  if (condition) {
    const own =
      finding && !isInItsWords(condition, words) && isOffered(words, finding, pattern) ? finding : undefined;
    return { kind: 'condition', line: condition, ...(own ? { own } : {}) };
  }
  return finding && { kind: 'finding', line: finding };
}

/** Not of a part of the drive alone: what is wrong with it. */
function saysWhat([kind, aspect]: readonly Word[]): boolean {
  const aspects: readonly string[] = aspectsOf((kind?.type ?? '') as ConditionKind);
  return aspects.length === 0 || aspects.includes(aspect?.type ?? '');
}

/** `guard put back`: what was wrong is over. */
function asOver({ part, place, told, texts, severity, photo }: SaidLine): GeneralLine | undefined {
  const over = overAgain(part, told);
  if (!over) return undefined;
  const note = noteOf(told, texts);
  const line = [
    keyword('closed'),
    keyword(over.kind),
    ...place,
    ...severity,
    ...photo,
    ...(note ? [note] : []),
  ];
  return { kind: 'condition', line, senses: over.senses };
}

function workLine(head: readonly Word[], { line, senses, isNamed, ending: known }: WorkLine): GeneralLine {
  const ending = isNamed ? undefined : (known ?? endingOf(line));
  return {
    kind: 'work',
    line: [...head, ...line],
    senses,
    ...(ending ? { ending: [...head, ...ending] } : {}),
    endsNothing: !isNamed && partOfWord(line[0]) !== undefined,
  };
}

/**
 * `closed cover loose "screwed down"`: work in words of one's own ends what it names. Which that was is told only where what was done
 * is done against one thing; what stands open there nobody knows here.
 */
function endingOf([about, ...rest]: readonly Word[]): readonly Word[] | undefined {
  const part = partOfWord(about);
  const said = rest.map(({ image }) => image.toLowerCase()).join(' ');
  const against = mending.filter(([done]) => done.test(said)).map(([, ending]) => ending);
  const kinds = conditionKinds.filter(
    (each) =>
      part !== undefined &&
      (partOfWord(keyword(each)) === part || (part === 'trough' && each === 'product blocked')),
  );
  const [kind, ...others] = kinds.filter((each) => against.some((ending) => ending.test(each)));
  if (kind === undefined || others.length > 0) return undefined;
  const aspect = aspectsOf(kind)[0];
  return [keyword('closed'), keyword(kind), ...(aspect === undefined ? [] : [keyword(aspect)]), ...rest];
}

/** What was done, and how the condition ends that it is done against. */
const mending: readonly (readonly [done: RegExp, ending: RegExp])[] = [
  [/weld|brazed/, / cracked$/],
  [/tighten|torqued|screwed down|nipped/, / (?:loose|slack)$/],
  [/straighten|bent back|pressed straight/, / (?:bent|dented)$/],
  [/freed|loosened|made to move/, / stuck$/],
  [/put back|refitted|replaced where it was/, / missing$/],
  [/unblocked|rodded|dug out|cleared/, /^product blocked$/],
  [/sealed|gasket|packing/, / leaking$/],
];

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
function workOnADay(
  words: readonly Word[],
  look: LinePattern,
  pattern: LinePattern,
): GeneralLine | undefined {
  const day = words.findIndex(({ type }) => type === 'DATE');
  // Day and conveyor stand side by side, whichever is first.
  const at = isName(words[day - 1]) ? day - 1 : isName(words[day + 1]) ? day + 1 : -1;
  const conveyor = words[at];
  const from = Math.min(day, at);
  if (day < 0 || !conveyor || from > 6 || words.some(({ type }) => type === '{')) return undefined;
  const isSaid = words[0]?.type === 'serviced';
  const rest = [...words.slice(isSaid ? 1 : 0, from), ...words.slice(from + 2)];
  const date = words[day];
  const asItIs = isSaid && date ? [keyword('serviced'), conveyor, date, ...rest] : [];
  if (rest.some(({ type }) => type === 'closed') && readsSoundly(asItIs, pattern))
    return { kind: 'work', line: asItIs };
  const said = takenApart(rest);
  if (!isSaid && !isDone(rest) && !workIn(said.part, said.told) && !overAgain(said.part, said.told))
    return undefined;
  const over = closedGap(said, look);
  if (date && over)
    return { kind: 'work', line: [keyword('serviced'), conveyor, date, ...over.line], senses: over.senses };
  const work = asWork(rest);
  return work && date && workLine([keyword('serviced'), conveyor, date], work);
}

const declaring: ReadonlySet<string> = new Set(['Plant', 'Liner', 'Screw', 'Conveyor', 'Job', 'Order']);

/** `joint closed at 6 m`, `joint tightened at 17.4 m`: of a joint the one thing that can be wrong is over. */
function closedGap(
  said: SaidLine,
  look: LinePattern,
): { readonly line: readonly Word[]; readonly senses: readonly SaidBy[] } | undefined {
  const { part, told, place } = said;
  const at = told.findIndex(({ image }) => image === 'joint' || image === 'joints');
  const done = told.findIndex(({ image }) =>
    /^(?:closed|tightened|tight|closed up|drawn together|pulled together)$/.test(image),
  );
  if (part !== undefined || at < 0 || done < 0 || place.length === 0) return undefined;
  const more = told.filter((_, i) => i !== at);
  const isPlain = more.length === 1 && more[0]?.image === 'closed';
  const line = [
    keyword('closed'),
    keyword('joint open'),
    ...place,
    ...endOf({ ...said, told: isPlain ? [] : more }),
  ];
  return readsSoundly(line, look) ? { line, senses: [['joints', 'joint open']] } : undefined;
}

/** A line of a block that holds what is built or planned, and has no word for what it says or a closed choice of what it is about. */
export function asComment(line: BrokenLine): LineRepair | undefined {
  const { words, block, reached, blocksSaying, inside } = line;
  if (!declaring.has(block) || reached > 1 || isStep(line)) return undefined;
  if (words.some(({ type }) => type === '{' || type === '}')) return undefined;
  // What reads in another block is to be moved there; a word nobody knows is no name that would make it read.
  const others = isUnknown(words[1]) ? [] : blocksSaying(words[0]?.type ?? '');
  if (others.some((each) => each !== block && readsSoundly(words, inside(each)))) return undefined;
  if (words.some(({ type }) => type === ':' || type === ',')) return undefined;
  // A word nobody knows and little behind it is a slip, and no thing that stands there.
  const isLong = words.length > 2 && (isUnknown(words[0]) || isOpening(words[0]));
  // Beside the few facts of a job stands whatever else is to be done.
  const isToDo = block === 'Job' && words.length > 1;
  if (reached === 0 && !isLong && !isToDo && !words.some((word) => partOfWord(word) !== undefined))
    return undefined;
  if (reached === 1 && !choosing.has(words[0]?.type ?? '')) return undefined;
  return commentedOut(words);
}

/** `inlet Chute at 0.8 m from above`: an opening that no line of the conveyor can say so. */
function isOpening(word: Word | undefined): boolean {
  return word !== undefined && ['inlet', 'discharge', 'slide gate'].includes(word.type);
}

/** Behind these stands one of a few words, and no name. */
const choosing: ReadonlySet<string> = new Set(['cost', 'unit time', 'lead time', 'expedited lead time']);
