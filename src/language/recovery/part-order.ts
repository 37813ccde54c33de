// A line whose parts are all right and stand in another order than the language has: the same parts in its order. A part is a
// word with its value (`by Alpha, Bravo`, `takes 3 h`, `from 2 m to 4 m`); what begins the line stays first.

import { imagesOf, isWord, type Word } from './repairs.js';
import type { LinePattern, LinePlace } from './pattern.js';

/** With more parts than this a line is no slip of order. */
const mostParts = 9;

/** The line in the language's order; undefined where there is none, or more than one. */
export function inUsualOrder(line: readonly Word[], pattern: LinePattern): readonly Word[] | undefined {
  const [head, ...parts] = partsOf(line);
  if (!head || parts.length < 2 || parts.length > mostParts) return undefined;
  const start = through(head, pattern.start, pattern);
  const found = new Map<string, readonly Word[]>();
  for (const rest of start === undefined ? [] : arranged(parts, start, pattern)) {
    const whole = [...head, ...rest];
    found.set(imagesOf(whole), whole);
    if (found.size > 1) return undefined;
  }
  const [only] = found.values();
  return only;
}

/** What belongs together: a word up to the next one, a note by itself. */
function partsOf(line: readonly Word[]): readonly (readonly Word[])[] {
  const parts: Word[][] = [];
  for (const word of line) {
    const last = parts.at(-1);
    const isNew =
      word.type === 'STRING' ? last?.at(-1)?.type !== 'photo' : isWord(word.type) && word.type !== 'to';
    if (!last || isNew) parts.push([word]);
    else last.push(word);
  }
  return parts;
}

function through(part: readonly Word[], from: LinePlace, pattern: LinePattern): LinePlace | undefined {
  return part.reduce<LinePlace | undefined>(
    (at, { type }) => (at === undefined ? undefined : pattern.next(at, type)),
    from,
  );
}

/** All ways in which the parts, one after the other, make a whole line. */
function* arranged(
  parts: readonly (readonly Word[])[],
  from: LinePlace,
  pattern: LinePattern,
): Generator<readonly Word[]> {
  if (parts.length === 0 && pattern.isWhole(from)) yield [];
  for (const [i, part] of parts.entries()) {
    const at = through(part, from, pattern);
    if (at === undefined) continue;
    const others = [...parts.slice(0, i), ...parts.slice(i + 1)];
    for (const rest of arranged(others, at, pattern)) yield [...part, ...rest];
  }
}
