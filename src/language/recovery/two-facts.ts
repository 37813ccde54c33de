// One line that says two facts, of which neither is the note of the other: `bolts at P4 tightened, 1 missing`, `scope panel 4 of run 1 and
// panel 1 of run 3`. Both are offered, each in its own line.

import type { BrokenLine } from './broken-line.js';
import { asCondition } from './condition-line.js';
import { noteOfWords, asWork, blocksOfWork, takenApart } from './general.js';
import { joined } from './joined.js';
import { readsSoundly, type SaidBy } from './kept.js';
import { inSeveralLines, shownTogether } from './several-lines.js';
import type { LineSaying, Otherwise } from './otherwise.js';
import { partIn } from './part-words.js';
import { isName } from './said-place.js';
import { keyword, type Word } from './word.js';

export const twofoldLines: readonly LineSaying[] = [scopeOfSeveralRuns, linerAndMore, doneAndLeft];

const joins = ({ type, image }: Word): boolean => type === ',' || image === 'and' || image === '&';

/** Panels of several runs are named run by run. */
function scopeOfSeveralRuns({ block, words: written, pattern }: BrokenLine): Otherwise | undefined {
  if (block !== 'Reline') return undefined;
  const words = joined(written);
  const own = words[0]?.type === 'scope' ? words.slice(1) : words;
  const groups: Word[][] = [[]];
  for (const [at, word] of own.entries()) {
    const begins = ['panel', 'panels', 'run'].includes(own[at + 1]?.type ?? '');
    if (joins(word) && begins) groups.push([]);
    else groups.at(-1)?.push(word);
  }
  const lines = groups.map((group) => [keyword('scope'), ...group]);
  if (lines.length < 2 || !lines.every((line) => readsSoundly(line, pattern))) return undefined;
  return {
    at: 0,
    message: `Of each run its panels are a line: ${shownTogether(lines)}.`,
    repair: inSeveralLines(written, lines),
  };
}

/** Which liner went in, and what else is known of it: with the whole line as a note the old one would count as fitted again. */
function linerAndMore({ block, words, pattern }: BrokenLine): Otherwise | undefined {
  const [first, name, ...more] = words;
  if (block !== 'Reline' || first?.type !== 'liner' || !name || !isName(name) || more.length === 0)
    return undefined;
  // The same name twice is one too many.
  if (more[0]?.image === name.image) return undefined;
  const line = [first, name];
  const note = noteOfWords(more);
  if (!note || !readsSoundly(line, pattern)) return undefined;
  const finding = [keyword('finding'), keyword('liner'), note];
  return {
    at: 2,
    message: `Which liner went in, and what else there is to say of it, are a line each: ${shownTogether([line, finding])}.`,
    repair: inSeveralLines(words, [line, finding]),
  };
}

const amounts = /^(?:missing|lost|gone|loose|broken|left|out|short)$/;

/** What was done to some of them, and how many are still wrong. */
function doneAndLeft({ block, words: written, pattern }: BrokenLine): Otherwise | undefined {
  if (!blocksOfWork.has(block)) return undefined;
  const words = joined(written);
  const cut = words.findIndex(({ type, image }) => type === ',' || image === 'but' || image === 'and');
  const [before, behind] = [words.slice(0, cut), words.slice(cut + 1)];
  const part = before[partIn(before)];
  if (cut < 2 || !part || before.some(({ image }) => amounts.test(image))) return undefined;
  const counts =
    behind.some(({ type }) => type === 'NUMBER') && behind.some(({ image }) => amounts.test(image));
  const work = asWork(before);
  if (!counts || !work?.isNamed) return undefined;
  const { place } = takenApart(before);
  const seen = asCondition(takenApart([part, ...behind, ...place]), pattern);
  const done = [keyword('serviced'), ...work.line];
  if (!seen || seen[0]?.type === 'closed' || !readsSoundly(seen, pattern) || !readsSoundly(done, pattern))
    return undefined;
  return {
    at: cut,
    message: `What was done and what is still wrong are a line each: ${shownTogether([done, seen])}.`,
    repair: inSeveralLines(written, [done, seen]),
    senses: [
      ...work.senses,
      ...behind.flatMap(({ image }): SaidBy[] => (amounts.test(image) ? [[image, seen[0]?.type ?? '']] : [])),
    ],
  };
}
