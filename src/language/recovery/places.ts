// Where tokens stand: their kind and extent, which are the first of their line, in which column, and which characters near them
// are no token at all. Tokens go by number.

import type { ILexingError, IToken } from 'chevrotain';
import { wordType } from '../row-starts.js';
import type { TextSpan } from '../reading-rows.js';

export interface TokenPlaces {
  readonly count: number;
  /** The keyword, or the kind of value in capitals; empty behind the last. */
  type(token: number): string;
  span(token: number): TextSpan;
  /** The last sign of a token, where something is missing behind it. */
  lastSign(token: number): TextSpan;
  isFirst(token: number): boolean;
  /** From 1. */
  column(token: number): number;
  /** Whether characters that are no token stand among or right behind these tokens, on their lines. */
  hasError(from: number, to: number): boolean;
  /** The first of them; all of them count as told. */
  takeErrors(from: number, to: number): ILexingError | undefined;
  /** Those that nobody has told. */
  untold(): readonly ILexingError[];
}

export function placesOf(
  text: string,
  tokens: readonly IToken[],
  errors: readonly ILexingError[],
): TokenPlaces {
  const span = (token: number): TextSpan => {
    const { startOffset: start = 0, image = '' } = tokens[token] ?? {};
    return { start, end: start + image.length };
  };
  const isFirst = (token: number): boolean =>
    token === 0 || tokens[token]?.startLine !== tokens[token - 1]?.startLine;
  return {
    count: tokens.length,
    type: (token) => {
      const one = tokens[token];
      return one === undefined ? '' : wordType(one);
    },
    span,
    lastSign(token) {
      const { end } = span(token);
      return { start: Math.max(0, end - 1), end };
    },
    isFirst,
    column: (token) => tokens[token]?.startColumn ?? 1,
    ...errorsAmong(text, tokens, errors, { span, isFirst }),
  };
}

function errorsAmong(
  text: string,
  tokens: readonly IToken[],
  errors: readonly ILexingError[],
  { span, isFirst }: Pick<TokenPlaces, 'span' | 'isFirst'>,
): Pick<TokenPlaces, 'hasError' | 'takeErrors' | 'untold'> {
  const sorted = [...errors].sort((a, b) => a.offset - b.offset);
  const told = new Set<ILexingError>();
  const among = (from: number, to: number): readonly ILexingError[] => {
    if (sorted.length === 0) return [];
    const { start } = span(from);
    const first = isFirst(from) ? start - (tokens[from]?.startColumn ?? 1) + 1 : span(from - 1).end;
    const behind = to < tokens.length && !isFirst(to) ? span(to).start : lineEnd(text, span(to - 1).end);
    return sorted.slice(firstFrom(sorted, first), firstFrom(sorted, behind));
  };
  return {
    hasError: (from, to) => among(from, to).length > 0,
    takeErrors(from, to) {
      const found = among(from, to);
      for (const each of found) told.add(each);
      return found[0];
    },
    untold: () => sorted.filter((each) => !told.has(each)),
  };
}

function lineEnd(text: string, offset: number): number {
  const end = /[\r\n]/g;
  end.lastIndex = offset;
  return end.exec(text)?.index ?? text.length;
}

/** The first error at or behind an offset. */
function firstFrom(sorted: readonly ILexingError[], offset: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle]?.offset ?? Infinity) < offset) low = middle + 1;
    else high = middle;
  }
  return low;
}
