// Which words begin a row of an inspection, and which go on with the row above? The grammar knows no lines, so four words get a
// token of their own where they begin a row:
//  - `photo` and `by` on a line of their own that stands no further in than the row above: they are of the look, not of that row;
//  - `at` and `from` of a reading (`at 3 m clock 7:30 thickness 8 mm`): it is no place of the condition above.

import type { IToken, TokenType } from 'chevrotain';

/** The tokens of words that begin a row, by the word. */
export type OwnTokens = ReadonlyMap<string, TokenType>;

/** Terminals of the grammar that stand for a word at the beginning of a row. */
const ownTokens: Readonly<Record<string, string>> = { PHOTO: 'photo', BY: 'by', AT: 'at', FROM: 'from' };

export function ownTokensAmong(types: readonly TokenType[]): OwnTokens {
  return new Map(
    types.flatMap((type) => (Object.hasOwn(ownTokens, type.name) ? [[writtenAs(type.name), type]] : [])),
  );
}

export function isOwnToken({ name }: TokenType): boolean {
  return Object.hasOwn(ownTokens, name);
}

/** A token by the word that was written: to a reader of lines the photo of a look is `photo` too. */
export function writtenAs(token: string): string {
  return Object.hasOwn(ownTokens, token) ? (ownTokens[token] ?? token) : token;
}

export function wordType({ tokenType }: IToken): string {
  return writtenAs(tokenType.name);
}

/** Tokens that a row can begin with: of a look, and of any other record. */
export interface RowStarts {
  readonly look: ReadonlySet<string>;
  readonly record: ReadonlySet<string>;
}

/**
 * Marks the words that begin a row, in place. What begins a line without being one that a row can begin with goes on with the row
 * above, as far in as it may stand; a second photo of a row is of the look.
 */
export function markRowStarts(
  tokens: readonly IToken[],
  own: OwnTokens,
  begins: () => RowStarts,
  text: string,
): void {
  if (!tokens.some(({ tokenType }) => own.has(tokenType.name))) return;
  const starts = begins();
  const said = new Set<string>();
  let row = 0;
  for (const [i, token] of tokens.entries()) {
    const word = token.tokenType.name;
    const isEnding = word === 'photo' || (word === 'by' && tokens[i + 1]?.tokenType.name === 'STRING');
    const isAgain = isEnding && said.has(word);
    if (isEnding) said.add(word);
    if (isFirst(tokens, i)) {
      const isOpened = tokens[i - 1]?.tokenType.name === '{';
      const column = columnAt(text, token.startOffset);
      const isRow = starts.look.has(word) || (starts.record.has(word) && column <= row);
      const goesOn = (isEnding || word === 'by') && column > row && !isAgain;
      if (!isOpened && (!isRow || goesOn)) continue;
      row = column;
      said.clear();
      if (isEnding) said.add(word);
      if (places.has(word) ? !isReading(tokens, i) : !isEnding) continue;
    } else if (!isAgain) continue;
    const type = own.get(word);
    if (type === undefined) continue;
    token.tokenType = type;
    token.tokenTypeIdx = type.tokenTypeIdx ?? token.tokenTypeIdx;
  }
}

/** `at 3 m clock 7:30`, or `from 18 m to 19.5 m clock 5:00`, and what was read there. */
function isReading(tokens: readonly IToken[], at: number): boolean {
  const named = (i: number): string => tokens[i]?.tokenType.name ?? '';
  const isStretch = named(at) === 'from';
  const place = at + (isStretch ? 4 : 2);
  if (named(place) !== 'clock') return isStretch && read.has(named(place));
  return read.has(named(place + 2)) || (named(place + 2) === 'to' && read.has(named(place + 4)));
}

const places = new Set(['at', 'from']);

const read = new Set(['thickness', 'colour', 'color', 'second colour showing', 'trough showing', 'not seen']);

function isFirst(tokens: readonly IToken[], i: number): boolean {
  return i === 0 || tokens[i]?.startLine !== tokens[i - 1]?.startLine;
}

/** How far in an offset stands, in characters; a tab counts four. */
export function columnAt(text: string, offset: number): number {
  let column = 0;
  for (let at = offset - 1; at >= 0 && text[at] !== '\n' && text[at] !== '\r'; at--)
    column += text[at] === '\t' ? 4 : 1;
  return column;
}
