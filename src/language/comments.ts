// Comments are found by one pass over the text and not by the parser, so that a comment on every row of a long block costs
// no more than reading it. A `/** … */` that stands before a block describes it.

import { visibleText } from '../domain/units/visible-text.js';

export interface Comment {
  /** Without its markers and outer blanks. */
  readonly text: string;
  readonly start: number;
  readonly end: number;
  readonly kind: 'line' | 'block' | 'doc';
}

// A quote right behind a number is an inch mark (tokens.ts) and opens no text.
const stringOrComment = /(?<![\w.])\d[\d.,/]*[ \t]*"(?=\s)|"[^"\n\r]*"|\/\/[^\n\r]*|\/\*[\s\S]*?\*\//g;

/** All comments in the order of the text; what looks like one inside a quoted text is not. */
export function scanComments(text: string): readonly Comment[] {
  const comments: Comment[] = [];
  for (const match of text.matchAll(stringOrComment)) {
    const image = match[0];
    if (!image.startsWith('/')) continue;
    const place = { start: match.index, end: match.index + image.length };
    if (image.startsWith('//')) comments.push({ ...place, kind: 'line', text: image.slice(2).trim() });
    else if (image.startsWith('/**') && image.length > 4)
      comments.push({ ...place, kind: 'doc', text: visibleText(docText(image)) });
    else comments.push({ ...place, kind: 'block', text: image.slice(2, -2).trim() });
  }
  return comments;
}

/** A line without the comments that begin and end in it; what looks like one inside a quoted text stays. */
export function withoutComments(line: string): string {
  return line.replace(stringOrComment, (image) => (image.startsWith('/') ? '' : image));
}

/** A line without its quoted texts; an inch mark stays. */
export function withoutTexts(line: string): string {
  return line.replace(stringOrComment, (image) => (image.startsWith('"') ? '' : image));
}

/** The doc comment that ends right before `offset`, with only blanks between. */
export function docBefore(text: string, comments: readonly Comment[], offset: number): string | undefined {
  let low = 0;
  let high = comments.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const comment = comments[middle];
    if (comment && comment.end <= offset) low = middle + 1;
    else high = middle;
  }
  const last = comments[low - 1];
  if (last?.kind !== 'doc' || last.text === '') return undefined;
  return text.slice(last.end, offset).trim() === '' ? last.text : undefined;
}

function docText(image: string): string {
  const lines = image.slice(3, -2).split(/\r\n|\r|\n/);
  return lines
    .map((line) => line.replace(/^\s*\*?[ \t]?/, '').trimEnd())
    .join('\n')
    .trim();
}
