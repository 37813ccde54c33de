// The heading of a record with its day before its conveyor, or with a word between: `inspection on 2021-11-08 PB2 meter 2230 h {`.

import type { BrokenLine } from './broken-line.js';
import { readsSoundly } from './kept.js';
import type { Otherwise } from './otherwise.js';
import { changed } from './repairs.js';
import type { LinePattern } from './pattern.js';
import { inSeveralLines } from './several-lines.js';
import { imagesOf, keyword, type Word } from './word.js';

export function headingInOrder({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [first, ...all] = words;
  if (block !== 'Block' || !first || first.type === 'ID') return undefined;
  const noted = headingWithText(words, pattern) ?? meterDead(words, pattern);
  if (noted) return noted;
  const head = all.slice(0, 5);
  const day = head.find(({ type }) => type === 'DATE');
  const conveyor = head.find(({ type, image }) => type === 'ID' && /[A-Z0-9]/.test(image));
  if (!day || !conveyor) return undefined;
  const isJoining = ({ image }: Word): boolean => image === 'on' || image === 'of' || image === 'for';
  const rest = all.filter(
    (word) => word !== day && word !== conveyor && !(isJoining(word) && head.includes(word)),
  );
  const line = [first, conveyor, day, ...rest];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: 1,
    message: `A record names its conveyor and then its day: \`${imagesOf(line)}\`.`,
    repair: changed(words, line),
  };
}

/** `inspection DG1 2022-03-15 "some time in March" {`: what is told of a look stands inside. */
function headingWithText(words: readonly Word[], pattern: LinePattern): Otherwise | undefined {
  const texts = words.filter(({ type }) => type === 'STRING');
  const [text] = texts;
  const line = words.filter((word) => word !== text);
  if (!text || texts.length > 1 || line.at(-1)?.type !== '{' || !readsSoundly(line, pattern))
    return undefined;
  const finding = [keyword('finding'), text];
  return {
    at: words.indexOf(text),
    message: `What is told of a record stands inside it: \`${imagesOf(line)}\`, \`${imagesOf(finding)}\`.`,
    repair: inSeveralLines(words, [line, finding]),
  };
}

/** `inspection DG1 2023-03-02 meter dead {`: nobody read it, and why stands inside. */
function meterDead(words: readonly Word[], pattern: LinePattern): Otherwise | undefined {
  const at = words.findIndex(({ type }) => type === 'meter');
  const said = words.slice(at + 1, -1);
  if (at < 3 || words.at(-1)?.type !== '{' || said.length === 0 || !said.every(({ type }) => type === 'ID'))
    return undefined;
  const line = [...words.slice(0, at + 1), keyword('not read'), ...words.slice(-1)];
  const finding = [
    keyword('finding'),
    { type: 'STRING', image: `"${imagesOf([keyword('meter'), ...said])}"` },
  ];
  if (!readsSoundly(line, pattern)) return undefined;
  return {
    at: at + 1,
    message: `Hours that nobody read are left out, or said so: \`${imagesOf(line)}\`, and why inside: \`${imagesOf(finding)}\`.`,
    repair: inSeveralLines(words, [line, finding]),
  };
}
