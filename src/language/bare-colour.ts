// `P1 colour` with nothing behind it, the row below being the next reading: the parser would take that row's point for the
// name of the layer and stumble one line later. So such a half row is taken out of the tokens and told where it stands.

import type { ILexingError, IToken } from 'chevrotain';
import { wordType } from './row-starts.js';

/** A slip that is over where it stands: nothing after it follows from it, nor it from one before. */
export interface WholeSlip extends ILexingError {
  readonly whole: true;
}

export interface WithoutBareColours {
  readonly tokens: IToken[];
  readonly errors: readonly WholeSlip[];
}

export function withoutBareColours(tokens: IToken[]): WithoutBareColours {
  const errors: WholeSlip[] = [];
  const taken = new Set<IToken>();
  for (const [i, token] of tokens.entries()) {
    if (!isColour(token) || !isBare(tokens, i)) continue;
    for (const each of tokens.slice(rowStart(tokens, i), i + 1)) taken.add(each);
    errors.push({
      offset: token.startOffset,
      line: token.startLine,
      column: token.startColumn,
      length: token.image.length,
      whole: true,
      message: `\`${token.image}\` names no layer here: write the one that shows behind it, such as \`${token.image} teal\`.`,
    });
  }
  return { tokens: taken.size === 0 ? tokens : tokens.filter((token) => !taken.has(token)), errors };
}

function isColour({ tokenType }: IToken): boolean {
  return tokenType.name === 'colour' || tokenType.name === 'color';
}

/** At the end of the text it is a word that is still being typed. */
function isBare(tokens: readonly IToken[], i: number): boolean {
  const [colour, next, after] = [tokens[i], tokens[i + 1], tokens[i + 2]];
  if (!colour || !next || next.startLine === colour.startLine) return false;
  // `second colour`: which one is said before it.
  if (which.has(tokens[i - 1]?.image ?? '')) return false;
  return next.tokenType.name !== 'ID' || (after !== undefined && readings.has(after.tokenType.name));
}

const which: ReadonlySet<string> = new Set(['second', '2nd', 'other', 'lower', 'under', 'bottom', 'next']);

const readings = new Set(['thickness', 'colour', 'color', 'trough showing', 'not seen']);

/** Where the row begins: at the name of its point, or at `at 3 m clock 6:00`. */
function rowStart(tokens: readonly IToken[], i: number): number {
  if (tokens[i - 1]?.tokenType.name === 'ID') return i - 1;
  const at = tokens[i - 4];
  const isPlace = tokens[i - 2]?.tokenType.name === 'clock' && at !== undefined && wordType(at) === 'at';
  return isPlace ? i - 4 : i;
}
