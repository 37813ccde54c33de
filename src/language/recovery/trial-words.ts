// A safeguard that was tried or found as it should be, in the words of whoever did it: `emergency stop at tail tested ok`, `guard ok`,
// `zero-speed sensor works`. What says that it failed, or that nobody tried it, is none of these.

import type { BrokenLine } from './broken-line.js';
import { isSafeguard } from '../../domain/conditions/safeguards.js';
import { fillers } from './fillers.js';
import { blocksOfWork, noteOf, takenApart } from './general.js';
import { joined } from './joined.js';
import type { SaidBy } from './kept.js';
import type { Otherwise } from './otherwise.js';
import { changed } from './repairs.js';
import { isName } from './said-place.js';
import { imagesOf, keyword, plainImage, type Word } from './word.js';

const tried: ReadonlySet<string> = new Set('tried try trial tested test tests proved proven'.split(' '));
/** Pressed or pulled it may have been because it was needed: a trial only where the line says that it did what it should. */
const actuated =
  /\b(?:pulled|pressed|pushed|tripped|actuated|opened)\b.*\b(?:ok|okay|good|works|worked|stops|stopped)\b/;
const good: ReadonlySet<string> = new Set(
  'ok okay good fine works working worked functions functioning functional passed checked sound intact'.split(
    ' ',
  ),
);
const goodPhrase = /\b(?:in (?:good )?order|in place|all right|as it should be|looked at)\b/;
/** Whatever takes it back, or says that it is still to be. */
const against = new RegExp(
  `\\b(?:${[
    'not|no|never|none|without|cannot|fail\\w*|dead|faulty|defect\\w*|broken|bridged|bypassed|slow\\w*|late|stuck|missing|loose|slack',
    'bent|damaged|worn|again|renewed|replaced|repaired|mended|refitted|put|back|tightened|adjusted|needs?|should|must|to be',
    "if|when|before|until|\\w+n[’']t",
  ].join('|')})\\b`,
);

export function safeguardTried({ block, words, heading }: BrokenLine): Otherwise | undefined {
  const isRecord = block === 'Block' && words[0]?.type === 'serviced';
  if (!isRecord && !blocksOfWork.has(block)) return undefined;
  const opens = isRecord ? 3 : words[0]?.type === 'serviced' ? 1 : 0;
  const head = words.slice(0, opens);
  const { part, answer, severity, photo, by, texts, ...said } = takenApart(joined(words.slice(opens)));
  const plain = said.told.map((word) => plainImage(word).toLowerCase());
  const text = plain.join(' ');
  if (part === undefined) return inGeneral(text);
  if (!isSafeguard(part) || answer.length + severity.length > 0) return undefined;
  if (sides.every((side) => words.some(({ type }) => type === side))) return ofEachSide(part, words);
  if (!isRecord && /^(?:was )?not (?:tried|tested)\b/.test(text))
    return notTried(words, part, said, texts, photo, by);
  const isTried = plain.some((word) => tried.has(word)) || actuated.test(text);
  const isGood = plain.some((word) => good.has(word)) || goodPhrase.test(text);
  if ((!isTried && !isGood) || against.test(text)) return undefined;
  const verdict = isTried ? 'tried' : 'found good';
  const { place, told } = placedBareIn(said);
  if (!isTried && told.some(({ type }) => type === 'QUANTITY' || type === 'NUMBER')) return undefined;
  const day = told.find(({ type }) => type === 'DATE');
  const line = (note: Word | undefined): readonly Word[] => [
    ...head,
    keyword(part),
    keyword(verdict),
    ...place,
    ...(note ? [note] : []),
    ...photo,
    ...by,
  ];
  if (day && !isRecord) return onAnotherDay(day, heading, line(undefined).slice(opens));
  const own = told.filter((word) => !['tried', 'of', part].includes(plainImage(word)));
  const isAlone = own.every(({ image }) => says(image) || fillers.has(image.toLowerCase()));
  const note = isAlone && own.length < 2 ? noteOf([], texts) : noteOf(own, texts);
  const repair = line(note);
  return {
    at: opens,
    message:
      `A safeguard that was ${isTried ? 'tried and did what it is there for' : 'looked at and is as it should be'} is said with ` +
      `\`${verdict}\`: \`${imagesOf(repair)}\`. What stands open of it stays so until a line closes it.`,
    repair: changed(words, repair),
    senses: [text, ...plain.filter(says)].map((each): SaidBy => [each, verdict]),
  };
}

/** `drain found good at 0.1 m` of a part that nobody is guarded by: what a look saw, and no work. */
export function partFoundGood({ block, words }: BrokenLine): Otherwise | undefined {
  const [first] = words;
  if (!blocksOfWork.has(block) || first?.type === 'serviced') return undefined;
  const { part, answer, severity, photo, by, texts, ...said } = takenApart(joined(words));
  const verdict = said.told.find(({ type }) => type === 'found good' || type === 'tried');
  if (part === undefined || !verdict || isSafeguard(part) || answer.length + severity.length > 0)
    return undefined;
  const { place, told } = placedBareIn(said);
  const line = [keyword('finding'), keyword(part), ...place, noteOf(told, texts), ...photo, ...by].flatMap(
    (word) => word ?? [],
  );
  return {
    at: 0,
    message: `What was looked at and is as it should be is a note of the look: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
    senses: [[plainImage(verdict).toLowerCase(), 'finding']],
  };
}

const sides = ['left side', 'right side'] as const;

/** `pull cord left side good, right side slack` */
function ofEachSide(part: string, words: readonly Word[]): Otherwise | undefined {
  const plain = words.map((word) => plainImage(word).toLowerCase());
  if (!plain.some((word) => says(word))) return undefined;
  return {
    at: 0,
    message:
      `Each side has a line of its own: \`${part} found good left side\`, \`${part} tried right side\`, ` +
      'or what is wrong there.',
  };
}

/** `emergency stop at tail not tried "no time"`: nothing is known of it, and no page may say that it was. */
function notTried(
  words: readonly Word[],
  part: string,
  said: Spotted,
  texts: readonly string[],
  photo: readonly Word[],
  by: readonly Word[],
): Otherwise {
  const { place, told } = placedBareIn(said);
  const note = noteOf(told, texts);
  const line = [keyword('finding'), keyword(part), ...place, ...photo, ...(note ? [note] : []), ...by];
  return {
    at: 0,
    message: `That nobody tried it is a note of the look: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
  };
}

function says(word: string): boolean {
  return tried.has(word.toLowerCase()) || good.has(word.toLowerCase());
}

interface Spotted {
  readonly place: readonly Word[];
  readonly told: readonly Word[];
}

/** `emergency stop tail tested`, `interlock C3 ok`: an end or a name says where. */
function placedBareIn({ place, told }: Spotted): Spotted {
  const at = told.findIndex((word) => ['tail', 'head', 'drive'].includes(word.image) || isName(word));
  const spot = told[at];
  if (!spot || place.some(({ type }) => type === 'at' || type === 'from')) return { place, told };
  return { place: [keyword('at'), spot, ...place], told: told.filter((_, i) => i !== at) };
}

/** `emergency stop at tail tried 2025-06-01`, in a look of another day. */
function onAnotherDay(day: Word, heading: readonly Word[], line: readonly Word[]): Otherwise {
  const record = [keyword('serviced'), heading[1] ?? keyword('DG1'), day, ...line];
  return {
    at: 0,
    message: `A trial of another day is a line of its own, outside this block: \`${imagesOf(record)}\`.`,
  };
}

/** `all safeguards tested ok`: which there were nobody can tell later. */
function inGeneral(text: string): Otherwise | undefined {
  if (!/\b(?:safeguards|safety devices|safeties|stops and cords|safety switches)\b/.test(text))
    return undefined;
  if (against.test(text) || !text.split(' ').some(says)) return undefined;
  return {
    at: 0,
    message:
      'Each safeguard that was tried has a line of its own, so that report, sheet and pack can say when: `emergency stop tried at tail`, ' +
      '`pull cord tried`, `guard found good at drive`.',
  };
}
