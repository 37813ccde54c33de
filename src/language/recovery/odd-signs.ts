// A sign that is no part of the language, outside quotes: `R1/Pnl 2: edge up 5 mm`, `P4 thickness 3.1 mm below limit!`, `P5: n/a`. What was
// written is offered in quotes: behind the reading where one stands before it, else as a finding at its place.

import { joined } from './joined.js';
import { blocksOfWork, takenApart } from './general.js';
import { readsSoundly } from './kept.js';
import type { LinePattern } from './pattern.js';
import { isName } from './said-place.js';
import { imagesOf, isSmallLength, keyword, type Word } from './word.js';
import type { BrokenLine } from './broken-line.js';
import { tellBroken } from './telling.js';
import { withUnitWords } from './unit-words.js';

/** `text`: the line as it stands, without comment; `behind`: what stands behind the n-th of its words. */
export function withOddSign(
  block: string,
  words: readonly Word[],
  text: string,
  behind: (word: number) => string,
  pattern: LinePattern,
): readonly Word[] | undefined {
  const [point] = words;
  const note = (said: string): Word => ({ type: 'STRING', image: `"${said.trim()}"` });
  if (!blocksOfWork.has(block) || /[{}]/.test(text)) return undefined;
  // `photo photos/hole.png`
  const file = /^photo +([^" ]+\.(?:png|jpe?g|webp))$/i.exec(text)?.[1];
  if (file !== undefined) return [keyword('photo'), note(file)];
  const plain = words.filter(({ type }) => type !== ':');
  if (point && isName(point) && /^[^ ]+ ?:? *(?:thickness +)?n\/[as]\b/i.test(text)) {
    const why = text.replace(/^[^ :]+ ?:? *(?:thickness +)?/, '').replace(/ *"([^"]*)" *$/, ': $1');
    const unseen = [point, keyword('not seen'), note(why)];
    return !why.includes('"') && readsSoundly(unseen, pattern) ? unseen : undefined;
  }
  if (text.includes('"')) return undefined;
  const size = words.findIndex(isSmallLength);
  if (
    block === 'Inspection' &&
    point &&
    isName(point) &&
    size > 0 &&
    plain.indexOf(words[size] ?? point) <= 2
  ) {
    const said = behind(size).replace(/^[\s,;:]+/, '');
    const head = words.slice(0, size + 1).filter(({ type }) => type !== ':');
    const line = [...(withUnitWords(head, pattern) ?? head), note(said)];
    if (said !== '' && readsSoundly(line, pattern)) return line;
  }
  // `flight at 3 m depth 70 mm?`: only the sign is left over.
  const sign = behind(words.length - 1).trim();
  const whole = [...words, note(sign)];
  if (sign !== '' && readsSoundly(whole, pattern)) return whole;
  const { place, severity } = takenApart(joined(words));
  // Of several numbers in a row nobody knows which is the place.
  const isOnePlace = place.length === 2 && /\d *(m|ft)$/.test(place[1]?.image ?? '') && !/\d *\//.test(text);
  const line = [keyword('finding'), ...(isOnePlace ? place : []), ...severity, note(text)];
  return readsSoundly(line, pattern) ? line : [keyword('finding'), note(text)];
}

/** These say nothing beside the words: `P5 = 10.8 mm`, `hatch (upper) stuck`, `panel #5`. What is in doubt stays so: `8 mm?`. */
const soft = /^[='’();#@!*+–—~<>≥≤?-]*$/;

/** The words without such signs; a word that one of them divides is one again: `won’t`. `signs`: what stands behind each word. */
export function withoutSoftSigns(
  words: readonly Word[],
  signs: readonly string[],
): readonly Word[] | undefined {
  if (!signs.every((each) => soft.test(each.replace(/\s/g, '')))) return undefined;
  const put: Word[] = [];
  for (const [at, word] of words.entries()) {
    const before = signs[at - 1] ?? '';
    const last = put.at(-1);
    const isOneWord =
      /^['’]$/.test(before) && /^[a-z]{1,2}$/i.test(word.image) && /[a-z]$/i.test(last?.image ?? '');
    if (last && isOneWord && last.type !== 'QUANTITY')
      put[put.length - 1] = { type: 'ID', image: `${last.image}'${word.image}` };
    else put.push(...signIn(before, last, word), word);
  }
  if ((signs.at(-1) ?? '').includes('?')) put.push(inQuestion);
  return put;
}

const inQuestion: Word = { type: 'ID', image: '?' };

/** Of a number. */
const spoken: Readonly<Record<string, string>> = {
  '~': 'about',
  '>': 'over',
  '≥': 'over',
  '<': 'under',
  '≤': 'under',
};

/** What a sign stands for between two words: `10.2 - 10.4` is a stretch. */
function signIn(sign: string, before: Word | undefined, next: Word): readonly Word[] {
  if (sign.includes('?')) return [inQuestion];
  if (sign.endsWith('@')) return [keyword('at')];
  const isNumber = (word: Word | undefined): boolean => word?.type === 'NUMBER' || word?.type === 'QUANTITY';
  const isDays = before?.type === 'DATE' && next.type === 'DATE';
  if (/^[-–—]$/.test(sign))
    return isDays || (isNumber(before) && isNumber(next)) ? [keyword('to')] : [keyword(',')];
  const bound = Object.hasOwn(spoken, sign) ? spoken[sign] : undefined;
  // A day in doubt stays one: `~2024-09-09`.
  const isCounted = isNumber(next) || next.type === 'DATE';
  if (bound !== undefined) return isCounted ? [{ type: 'ID', image: bound }] : [];
  if (sign === '+') return [{ type: 'ID', image: 'and' }];
  return /^[()]$/.test(sign) && before ? [keyword(',')] : [];
}

/** What is told of a line without its signs; the line itself where it reads so. */
export function toldWithoutSigns(
  line: BrokenLine,
): { readonly message: string; readonly line?: readonly Word[] } | undefined {
  if (readsSoundly(line.words, line.pattern))
    return { message: `Did you mean \`${imagesOf(line.words)}\`?`, line: line.words };
  const { message, repair } = tellBroken(line);
  // How sure it is, is for who measured to say: told without a line.
  const isAbout = line.words.some(({ image }) => image === 'about' || image === inQuestion.image);
  return repair ? { message, line: repair.line } : isAbout ? { message } : undefined;
}
