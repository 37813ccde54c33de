// What the lines inside a block can begin with, by the word that begins the block: of a screw change `screw`, `by`, `finding`.

import { createTroughlineServices } from './module.js';
import { isWord } from './recovery/word.js';
import { patternsOf, type LinePatterns } from './recovery/pattern.js';

let made: LinePatterns | undefined;

/** None for a word that begins no block with lines of its own. */
export function linesInside(word: string): readonly string[] {
  made ??= patternsOf(createTroughlineServices().troughline.Grammar);
  const headings = made.inside(undefined);
  const block = headings.ways(headings.start).find(({ token }) => token === word)?.fact;
  if (block === undefined || !made.hasLines(block)) return [];
  const { first } = made.inside(block);
  return [...(first.has('ID') ? ['the name of a point'] : []), ...[...first].filter(isWord)];
}
