// A line whose parts are all right and stand in another order than the language has: the same parts in its order. A part is a
// word with its value (`by Alpha, Bravo`, `takes 3 h`, `from 2 m to 4 m`); what begins the line stays first.

import { isWord, type Word } from './repairs.js';
import type { LinePattern, LinePlace } from './pattern.js';

/** With more parts than this a line is no slip of order. */
const mostParts = 9;

/** The line in the language's order, as near to the one written as may be; undefined where there is none. */
export function inUsualOrder(line: readonly Word[], pattern: LinePattern): readonly Word[] | undefined {
  const [head, ...parts] = partsOf(line);
  if (!head || parts.length < 2 || parts.length > mostParts) return undefined;
  const start = through(head, pattern.start, pattern);
  const rest = start === undefined ? undefined : arranged(parts, start, pattern);
  return rest && [...head, ...rest];
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

/** All parts, one after the other; those written first are tried first. */
function arranged(
  parts: readonly (readonly Word[])[],
  from: LinePlace,
  pattern: LinePattern,
): readonly Word[] | undefined {
  if (parts.length === 0) return pattern.isWhole(from) ? [] : undefined;
  for (const [i, part] of parts.entries()) {
    const at = through(part, from, pattern);
    if (at === undefined) continue;
    const others = [...parts.slice(0, i), ...parts.slice(i + 1)];
    const rest = arranged(others, at, pattern);
    if (rest) return [...part, ...rest];
  }
  return undefined;
}
