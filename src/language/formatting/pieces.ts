// A text cut into everything that is not white space, in order: tokens, comments, and what the lexer cannot read.
// The project's own lexer does the cutting, because only the grammar's keywords tell `18 power` (two tokens) from `18 rpm`
// (one); a second scanner would drift from it.

import type { AstNode } from 'langium';
import { createTroughlineServices, type TroughlineServices } from '../module.js';

export interface TextPiece {
  readonly kind: 'token' | 'line comment' | 'block comment' | 'unreadable';
  readonly start: number;
  /** Exclusive. */
  readonly end: number;
  readonly text: string;
  /** The name of the token's type; for keywords the keyword. */
  readonly type: string;
}

export interface Cut {
  readonly pieces: readonly TextPiece[];
  /** Where a block or a fact begins; undefined where the text does not parse and nothing is known. */
  readonly factStarts: ReadonlySet<number> | undefined;
}

/** The pieces alone: enough to compare two texts. Comments are what the lexer skips between two tokens. */
export function piecesOf(text: string): readonly TextPiece[] {
  const pieces: TextPiece[] = [];
  let at = 0;
  for (const token of services().parser.Lexer.tokenize(text).tokens) {
    const [start, end] = [token.startOffset, token.startOffset + token.image.length];
    pieces.push(...between(text, at, start), {
      kind: 'token',
      start,
      end,
      text: token.image,
      type: token.tokenType.name,
    });
    at = end;
  }
  return [...pieces, ...between(text, at, text.length)];
}

export function cut(text: string): Cut {
  const pieces = piecesOf(text);
  if (pieces.some((piece) => piece.kind === 'unreadable')) return { pieces, factStarts: undefined };
  const { value, lexerErrors, parserErrors } = services().parser.LangiumParser.parse(text);
  if (lexerErrors.length > 0 || parserErrors.length > 0) return { pieces, factStarts: undefined };
  const starts = new Set<number>();
  collect(value, starts);
  return { pieces, factStarts: starts };
}

/** Lists of the grammar whose members stand on lines of their own. */
const lists = ['blocks', 'facts', 'rows', 'steps'] as const;

function collect(node: AstNode, starts: Set<number>): void {
  for (const list of lists) {
    const members: unknown = Reflect.get(node, list);
    if (!Array.isArray(members)) continue;
    for (const member of members as AstNode[]) {
      // these lists hold nodes by the grammar
      if (member.$cstNode) starts.add(member.$cstNode.offset);
      collect(member, starts);
    }
  }
}

const skipped = /\/\/[^\n\r]*|\/\*[\s\S]*?\*\/|\S(?:(?!\/\/|\/\*)\S)*/g;

/** Comments and unreadable characters between two tokens; blanks behind a line comment are not part of it. */
function between(text: string, from: number, to: number): readonly TextPiece[] {
  return [...text.slice(from, to).matchAll(skipped)].map((match) => {
    const kind = match[0].startsWith('//')
      ? 'line comment'
      : /^\/\*[\s\S]*\*\/$/.test(match[0])
        ? 'block comment'
        : 'unreadable';
    const image = kind === 'line comment' ? match[0].trimEnd() : match[0];
    const start = from + match.index;
    return { kind, start, end: start + image.length, text: image, type: '' };
  });
}

let made: TroughlineServices | undefined;
function services(): TroughlineServices {
  made ??= createTroughlineServices().troughline;
  return made;
}
