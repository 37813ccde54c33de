// A reading with a word of doubt, wherever in its line: `P4 thickness 8 mm doubtful`, `P5 left side 5 mm, probably`, `at 6 m clock 5:00 8 mm?`.
// As a plain reading it would count as the gauge does, so its ± is asked for; the doubt stays in the note.

import type { BrokenLine } from './broken-line.js';
import { vague } from './fillers.js';
import { noteOf } from './general.js';
import { joined } from './joined.js';
import { readsSoundly } from './kept.js';
import type { Otherwise } from './otherwise.js';
import { repairOf } from './repairs.js';
import { withUnitWords } from './unit-words.js';
import { inSmall, imagesOf, keyword, plainImage, textsIn, type Word } from './word.js';

const doubts: ReadonlySet<string> = new Set([
  ...vague,
  ...(
    'doubtful doubt uncertain unsure probably perhaps maybe possibly roughly estimated estimate est guess guessed questionable suspect ' +
    'unreliable unclear ?'
  ).split(' '),
]);
/** Around a word of doubt: `not sure`, `in doubt`, `by feel`, `if the gauge was right`. */
const phrases = /\b(?:not (?:sure|certain)|in doubt|by feel|at a guess|i think|rough guess|rough)$/;

function isDoubt(words: readonly Word[], at: number): boolean {
  const said = inSmall(words.slice(Math.max(0, at - 2), at + 1));
  // `rough surface` is what was read.
  const isLast =
    words[at + 1] === undefined || words[at + 1]?.type === 'STRING' || words[at + 1]?.type === ',';
  return doubts.has(words[at]?.image.toLowerCase() ?? '') || (phrases.test(said) && isLast);
}

const joining: ReadonlySet<string> = new Set([
  'not',
  'in',
  'by',
  'at',
  'a',
  'i',
  'rough',
  ',',
  'very',
  'a bit',
  'but',
  'is',
  'was',
]);

export function inDoubt(line: BrokenLine): Otherwise | undefined {
  const { block, words: written, pattern } = line;
  if (block !== 'Inspection') return undefined;
  const words = joined(written).filter(({ type }) => type !== 'STRING');
  const doubt = words.flatMap((word, at) => (word.type === 'ID' && isDoubt(words, at) ? [at] : []));
  const [first] = doubt;
  if (first === undefined || words.some(({ type }) => type === '±')) return undefined;
  let from = first;
  while (joining.has(plainImage(words[from - 1] ?? keyword('')).toLowerCase())) from--;
  const taken = new Set(
    [...doubt, ...words.keys()].filter((at) => doubt.includes(at) || (at >= from && at < first)),
  );
  const rest = words.filter((_, at) => !taken.has(at));
  const plain = readsSoundly(rest, pattern)
    ? rest
    : (withUnitWords(rest, pattern) ?? repairOf(rest, pattern, block)?.line ?? rest);
  const size = plain.findIndex(({ type }, at) => type === 'QUANTITY' && plain[at - 1]?.type === 'thickness');
  if (size < 0 || !/\d *(mm|in)$/.test(plain[size]?.image ?? '') || !readsSoundly(plain, pattern))
    return undefined;
  const said = words.filter((word, at) => taken.has(at) && word.type !== ',');
  const note = noteOf(
    said,
    [...textsIn(plain), ...textsIn(written)].filter((text, i, all) => all.indexOf(text) === i),
  );
  const half: Word = { type: 'QUANTITY', image: '0.5 mm' };
  const offered = [
    ...plain.slice(0, size + 1),
    keyword('±'),
    half,
    ...(note ? [note] : []),
    ...plain.slice(size + 1).filter(({ type }) => type !== 'STRING'),
  ];
  if (!readsSoundly(offered, pattern)) return undefined;
  return {
    at: Math.min(first, written.length - 1),
    message:
      `A reading in doubt counts as the gauge does unless it says how sure it is: \`${imagesOf(offered)}\`, ` +
      'if it is right to half a millimetre.',
  };
}
