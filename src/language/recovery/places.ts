// Where tokens stand: which are the first of their line, in which column, and which characters near them are no token at all.

import type { ILexingError, IToken } from 'chevrotain';

export interface TokenPlaces {
  isFirst(token: number): boolean;
  /** From 1, blanks only counted. */
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
  const sorted = [...errors].sort((a, b) => a.offset - b.offset);
  const told = new Set<ILexingError>();
  const lineEnd = (offset: number): number => {
    const end = /[\r\n]/g;
    end.lastIndex = offset;
    return end.exec(text)?.index ?? text.length;
  };
  const isFirst = (token: number): boolean =>
    token === 0 || tokens[token]?.startLine !== tokens[token - 1]?.startLine;
  const start = (token: number): number => tokens[token]?.startOffset ?? text.length;
  const among = (from: number, to: number): readonly ILexingError[] => {
    if (sorted.length === 0) return [];
    const before = tokens[from - 1];
    const first = isFirst(from)
      ? start(from) - (tokens[from]?.startColumn ?? 1) + 1
      : before
        ? before.startOffset + before.image.length
        : 0;
    const last = tokens[to - 1];
    const end = last ? last.startOffset + last.image.length : first;
    const behind = to < tokens.length && !isFirst(to) ? start(to) : lineEnd(end);
    return sorted.filter(({ offset }) => offset >= first && offset < behind);
  };
  return {
    isFirst,
    column: (token) => tokens[token]?.startColumn ?? 1,
    hasError: (from, to) => among(from, to).length > 0,
    takeErrors(from, to) {
      const found = among(from, to);
      for (const each of found) told.add(each);
      return found[0];
    },
    untold: () => sorted.filter((each) => !told.has(each)),
  };
}
