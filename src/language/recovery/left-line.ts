// A line that is left out of its block, for those who would miss it: what it may have begun with, and which names it holds.

import type { IToken } from 'chevrotain';
import { wordType } from '../row-starts.js';
import type { Lacking } from '../../domain/model/problem.js';
import { lostWith } from './beside-facts.js';
import type { LinePattern } from './pattern.js';
import { likeWords } from './repairs.js';
import { isWord, wordOf } from './word.js';

export interface LeftLine {
  readonly start: number;
  readonly end: number;
  /** The words that the line may have begun with; none where nobody can tell. */
  readonly first: readonly string[];
  readonly names: readonly string[];
  /** It begins with a word that no line of its block can have: it is of another block for certain. */
  readonly isForeign: boolean;
  readonly lacks: Lacking;
  /** The block it stands in, by its rule: `Order` for a step of a job. */
  readonly block: string;
}

/** `meant`: what its likeliest repair begins with. */
export function leftLineOf(
  tokens: readonly IToken[],
  pattern: LinePattern,
  block: string,
  meant: string | undefined,
): LeftLine | undefined {
  const [first, last] = [tokens[0], tokens.at(-1)];
  if (!first || !last) return undefined;
  const known = [...pattern.first].filter(isWord);
  const types = tokens.map(wordType);
  const type = wordType(first);
  const begins = pattern.first.has(type) && type !== 'ID';
  // Words of one's own that only a finding keeps may have been any line whose word they hold: `run 2 scpe` was to be a scope, though
  // `2 scpe` is read as a quantity.
  // A word of the language is no slip of another one.
  const held = tokens.flatMap((each) =>
    isWord(wordType(each)) && pattern.words.has(wordType(each))
      ? known.filter((word) => word === wordType(each))
      : likeWords(each.image.replace(/^[\d.,\s]+/, ''), known),
  );
  const said = meant === 'finding' && held.length > 0 ? held : [meant].filter((each) => each !== undefined);
  const like = begins ? [type] : [...likeWords(first.image, known), ...said];
  // Words in the wrong order: any of them may be the one that the line should have begun with.
  const mayBe = [...new Set(like.length > 0 ? like : types.filter((one) => known.includes(one)))];
  return {
    block,
    start: first.startOffset,
    end: last.startOffset + last.image.length,
    first: mayBe,
    isForeign: like.length === 0 && isWord(type) && !pattern.words.has(type),
    lacks: lostWith(tokens.map(wordOf), mayBe, block),
    names: tokens.flatMap(({ image, tokenType }) => (tokenType.name === 'ID' ? [image] : [])),
  };
}
