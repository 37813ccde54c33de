// What the lines inside a block can begin with, by the word that begins the block: of a screw change `screw`, `by`, `finding`.

import { TroughlineGrammar } from './generated/grammar.js';
import { isWord } from './recovery/word.js';
import { patternsOf } from './recovery/pattern.js';

/** None for a word that begins no block with lines of its own. */
export function linesInside(word: string): readonly string[] {
  const patterns = patternsOf(TroughlineGrammar());
  const headings = patterns.inside(undefined);
  const block = headings.ways(headings.start).find(({ token }) => token === word)?.fact;
  if (block === undefined || !patterns.hasLines(block)) return [];
  const { first } = patterns.inside(block);
  return [...(first.has('ID') ? ['the name of a point'] : []), ...[...first].filter(isWord)];
}
