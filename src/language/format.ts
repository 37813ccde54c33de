// How a text is laid out: one fact a line, two spaces a level, so that a change of one fact is a one-line diff.
//  - `{` stands at the end of its line and `}` on a line of its own, also where a short block was written on one line.
//  - A fact broken over several lines becomes one line; nothing is aligned in columns, because a longer value would then
//    move its neighbours.
//  - Comments stay where they stand: on a line of their own at the level of what follows, or behind a fact after one space.
//    A fact interrupted by a line comment goes on four spaces further in.
//  - Blank lines are the author's: several become one, and none stays at the start of the file, after `{` or before `}`.
//  - Quantities stay as spelled, with one space before the unit (none before " and °). Line ends stay CRLF where they were.
//  - Text that does not parse keeps its own line breaks and only gets levels and single spaces; a line with something
//    unreadable in it only gets its level. Nothing but white space is ever changed: it is checked before it is handed out.

import { cut, piecesOf, type Cut, type TextPiece } from './formatting/pieces.js';

export interface FormatEdit {
  readonly start: number;
  /** Exclusive. */
  readonly end: number;
  readonly text: string;
}

/** The whole text laid out. Formatting twice changes nothing more. */
export function formatText(text: string): string {
  return apply(text, formattingEdits(text));
}

/** The changes of white space that lay out the text, or those that touch a range of it (offsets), in order, never overlapping. */
export function formattingEdits(
  text: string,
  range: { readonly start: number; readonly end: number } = { start: 0, end: text.length },
): readonly FormatEdit[] {
  const parts = cut(text);
  const edits =
    [parts, carefully(parts)]
      .map((each) => edit(each, text))
      .find((tried) => sameContent(text, apply(text, tried))) ?? [];
  return edits.filter((each) => each.end >= range.start && each.start <= range.end);
}

/** The text's own line breaks, levels and nothing else, for the rare text whose tokens would otherwise run together. */
function carefully({ pieces }: Cut): Cut & { readonly careful: true } {
  return { pieces, factStarts: undefined, careful: true };
}

function edit(
  { pieces, factStarts, careful = false }: Cut & { readonly careful?: boolean },
  text: string,
): readonly FormatEdit[] {
  const eol = /\r\n|\n|\r/.exec(text)?.[0] === '\r\n' ? '\r\n' : '\n';
  const edits: FormatEdit[] = [];
  const put = (start: number, end: number, white: string): void => {
    if (text.slice(start, end) !== white) edits.push({ start, end, text: white });
  };
  const textStart = text.startsWith('\uFEFF') ? 1 : 0;
  const never = commentOpen(pieces);
  const raw = rawLines(pieces, text);
  let level = 0;
  let lineHasToken = false;

  for (const [i, piece] of pieces.entries()) {
    if (never !== undefined && piece.start > never) break;
    const before = pieces[i - 1];
    const from = before?.end ?? textStart;
    const white = text.slice(from, piece.start);
    const lines = white.split(/\r\n|\n|\r/).length - 1;
    if (piece.text === '}') level = Math.max(0, level - 1);
    const goesOn = factStarts !== undefined && isInsideFact(pieces, i, factStarts);
    const indent = ' '.repeat(2 * level + (goesOn ? 4 : 0));

    if (!before) {
      put(from, piece.start, indent);
    } else if (breaksLine(before, piece, lines, lineHasToken, factStarts)) {
      const blank = lines > 1 && !goesOn && before.text !== '{' && piece.text !== '}';
      put(from, piece.start, (blank ? eol + eol : eol) + indent);
      lineHasToken = false;
    } else if (!careful && !raw.has(piece.start)) {
      put(from, piece.start, blanksBetween(before, piece, white));
    }

    if (!isComment(piece)) lineHasToken = true;
    if (piece.kind === 'token' && !careful && !raw.has(piece.start)) edits.push(...within(piece));
    if (piece.kind === 'block comment') edits.push(...commentLines(piece, indent, eol));
    if (piece.text === '{') level++;
  }
  const last = pieces.at(-1);
  if (never === undefined) put(last?.end ?? textStart, text.length, last ? eol : '');
  return edits;
}

/** Where facts are known, they break lines, with braces and comments; where nothing is known, the author does. */
function breaksLine(
  before: TextPiece,
  piece: TextPiece,
  lines: number,
  lineHasToken: boolean,
  factStarts: ReadonlySet<number> | undefined,
): boolean {
  if (before.kind === 'line comment') return true;
  if (factStarts === undefined || isComment(piece)) return lines > 0;
  if (piece.text === '}') return true;
  if (!factStarts.has(piece.start)) return false;
  // A comment that leads a line may share it with its fact; one that trails a fact may not share it with the next.
  return before.kind !== 'block comment' || lines > 0 || lineHasToken;
}

/** In the middle of a fact: what comes next, comments aside, is neither the start of a fact nor a closing brace. */
function isInsideFact(pieces: readonly TextPiece[], i: number, factStarts: ReadonlySet<number>): boolean {
  let next = i;
  while (pieces[next] && isComment(pieces[next]!)) next++; // `next` is checked just before
  const token = pieces[next];
  return token !== undefined && token.text !== '}' && !factStarts.has(token.start);
}

function blanksBetween(before: TextPiece, piece: TextPiece, white: string): string {
  if (piece.kind === 'line comment') return ' ';
  if (before.kind !== 'token' || piece.kind !== 'token') return white === '' ? '' : ' ';
  if ([',', ':', '.'].includes(piece.text) || before.text === '.') return '';
  return ' ';
}

/** `1 3/8 in` in its parts: the whole number and the blanks behind it, where there is one; number, blanks, unit. */
const quantity =
  /^(?:(\d+)([ \t]+)(?=\d+\/\d))?(\d+\/\d+|[+-]?\d+(?:[.,]\d+)*(?:[eE][+-]?\d+)?)([ \t]*)(.*)$/;

/** Blanks inside a token: between number and unit, and between the words of a keyword. */
function within(piece: TextPiece): readonly FormatEdit[] {
  if (piece.type === 'STRING') return [];
  if (piece.type === 'QUANTITY') {
    const [, whole = '', gap = '', number = '', white = '', unit = ''] = quantity.exec(piece.text) ?? [];
    const wanted = unit === '"' || unit === '°' ? '' : ' ';
    const afterWhole = piece.start + whole.length;
    const afterNumber = afterWhole + gap.length + number.length;
    return [
      ...(gap === '' || gap === ' ' ? [] : [{ start: afterWhole, end: afterWhole + gap.length, text: ' ' }]),
      ...(unit === '' || white === wanted
        ? []
        : [{ start: afterNumber, end: afterNumber + white.length, text: wanted }]),
    ];
  }
  return [...piece.text.matchAll(/[ \t]+/g)].flatMap((match) => {
    const start = piece.start + match.index;
    return match[0] === ' ' ? [] : [{ start, end: start + match[0].length, text: ' ' }];
  });
}

/** Lines of a block comment that begin with * follow it when its level changes; others keep the shape the author drew. */
function commentLines(piece: TextPiece, indent: string, eol: string): readonly FormatEdit[] {
  return [...piece.text.matchAll(/[ \t]*(\r\n|\n|\r)([ \t]*)(\*?)/g)].flatMap((match) => {
    const start = piece.start + match.index;
    const end = start + match[0].length - (match[3] ?? '').length;
    const text = match[3] === '*' ? `${eol}${indent} ` : `${eol}${match[2] ?? ''}`;
    return match[0].slice(0, end - start) === text ? [] : [{ start, end, text }];
  });
}

/** First pieces' offsets of lines that hold something unreadable: inside them nothing is moved. */
function rawLines(pieces: readonly TextPiece[], text: string): ReadonlySet<number> {
  const raw = new Set<number>();
  const isNewLine = (i: number): boolean =>
    /[\r\n]/.test(text.slice(pieces[i - 1]?.end ?? 0, pieces[i]?.start));
  let lineStart = 0;
  for (let i = 0; i <= pieces.length; i++) {
    if (i < pieces.length && !isNewLine(i)) continue;
    const line = pieces.slice(lineStart, i);
    if (line.some((piece) => piece.kind === 'unreadable')) for (const piece of line) raw.add(piece.start);
    lineStart = i;
  }
  return raw;
}

/** A block comment that is never closed: from there on everything stays as it is. */
function commentOpen(pieces: readonly TextPiece[]): number | undefined {
  return pieces.find((piece) => piece.kind === 'unreadable' && piece.text.includes('/*'))?.start;
}

function isComment(piece: TextPiece): boolean {
  return piece.kind === 'line comment' || piece.kind === 'block comment';
}

function apply(text: string, edits: readonly FormatEdit[]): string {
  let at = 0;
  let out = '';
  for (const { start, end, text: white } of edits) {
    out += text.slice(at, start) + white;
    at = end;
  }
  return out + text.slice(at);
}

function sameContent(one: string, other: string): boolean {
  const [a, b] = [piecesOf(one), piecesOf(other)];
  return (
    a.length === b.length &&
    a.every((piece, i) => piece.type === b[i]?.type && bare(piece) === bare(b[i] ?? piece))
  );
}

/** Strings are compared to the letter; in comments and tokens blanks may change. */
function bare(piece: TextPiece): string {
  return piece.type === 'STRING' ? piece.text : piece.text.replace(/\s+/g, '');
}
