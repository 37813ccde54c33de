// A text that does not parse → the same text with blanks for the lines that cannot be read, and what to tell of each. All other
// lines keep their places, so that every origin stays true. Asked for only where the parser has stumbled.

import type { ILexingError, IToken } from 'chevrotain';
import type { Grammar } from 'langium';
import type { TextSpan } from './reading-rows.js';
import { patternsOf } from './recovery/pattern.js';
import type { LeftLine } from './recovery/left-line.js';
import type { Slip } from './recovery/slip.js';
import { walk, type HalfName, type Walked } from './recovery/walk.js';

export type { HalfName, LeftLine, Slip };

export interface Recovered {
  /** Of the same length up to its end, where missing braces may be added. */
  readonly text: string;
  readonly slips: readonly Slip[];
  readonly left: readonly LeftLine[];
  readonly names: readonly HalfName[];
}

export function recover(
  text: string,
  lexed: { readonly tokens: readonly IToken[]; readonly errors: readonly ILexingError[] },
  grammar: Grammar,
  rows: readonly TextSpan[] = [],
): Recovered {
  const walked = walk(text, lexed.tokens, lexed.errors, patternsOf(grammar), (before) =>
    rows.reduce((last, { end }) => (end <= before && end > last ? end : last), 0),
  );
  return { ...walked, text: repaired(text, lexed.tokens, walked) };
}

/** Dropped tokens as blanks, missing braces in the gap behind their token. Comments go too: they are found in the text itself. */
function repaired(text: string, tokens: readonly IToken[], { dropped, put }: Walked): string {
  const gone = new Set<number>();
  for (const [from, to] of dropped) for (let at = from; at < to; at++) gone.add(at);
  const braces = new Map<number, string>();
  for (const { after, brace } of put) braces.set(after, (braces.get(after) ?? '') + brace);
  const pieces: string[] = [];
  let at = 0;
  for (let i = -1; i < tokens.length; i++) {
    const token = tokens[i];
    const end = token ? token.startOffset + token.image.length : 0;
    if (token) pieces.push(gone.has(i) ? blank(token.image) : token.image);
    const next = tokens[i + 1]?.startOffset ?? text.length;
    const gap = blank(text.slice(end, next));
    const put = braces.get(i) ?? '';
    // A closing brace stands behind all that was taken out of its block.
    const free = Math.max(0, gap.length - put.length);
    pieces.push(put.startsWith('}') ? gap.slice(0, free) + put : put + gap.slice(gap.length - free));
    at = next;
  }
  return pieces.join('') + text.slice(at);
}

function blank(text: string): string {
  return text.replace(/[^\n\r]/g, ' ');
}
