// A sign that is no part of the language, outside quotes: `R1/Pnl 2: edge up 5 mm`, `P4 thickness 3.1 mm below limit!`, `P5: n/a`. What was
// written is offered in quotes: behind the reading where one stands before it, else as a finding at its place.

import { joined } from './joined.js';
import { blocksOfWork, takenApart } from './general.js';
import { readsSoundly } from './kept.js';
import type { LinePattern } from './pattern.js';
import { isName } from './said-place.js';
import { keyword, type Word } from './word.js';
import { withUnitWords } from './unit-words.js';

/** `text`: the line as it stands, without comment; `behind`: what stands behind the n-th of its words. */
export function withOddSign(
  block: string,
  words: readonly Word[],
  text: string,
  behind: (word: number) => string,
  pattern: LinePattern,
): readonly Word[] | undefined {
  if (!blocksOfWork.has(block) || /["{}]/.test(text)) return undefined;
  const note = (said: string): Word => ({ type: 'STRING', image: `"${said.trim()}"` });
  const [point] = words;
  const plain = words.filter(({ type }) => type !== ':');
  if (point && isName(point) && /^[^ ]+ ?:? *n\/[as]\b/i.test(text)) {
    const unseen = [point, keyword('not seen'), note(text.replace(/^[^ :]+ ?:? */, ''))];
    return readsSoundly(unseen, pattern) ? unseen : undefined;
  }
  const size = words.findIndex(({ type, image }) => type === 'QUANTITY' && /\d *(mm|in)$/.test(image));
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
  const hasSeverity = block === 'Inspection' ? severity : [];
  // Of several numbers in a row nobody knows which is the place.
  const isOnePlace = place.length === 2 && /\d *(m|ft)$/.test(place[1]?.image ?? '') && !/\d *\//.test(text);
  const line = [keyword('finding'), ...(isOnePlace ? place : []), ...hasSeverity, note(text)];
  return readsSoundly(line, pattern) ? line : [keyword('finding'), note(text)];
}
