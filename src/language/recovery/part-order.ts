// A line whose parts are all right and stand in another order than the language has: the same parts in its order. A part is a
// word with its value (`by Alpha, Bravo`, `takes 3 h`, `from 2 m to 4 m`); what begins the line stays first, unless it cannot
// begin one and another part can (`at 14.2 m panel torn`, `from 19 m to 26 m not seen`).

import { imagesOf, isWord, type Word } from './word.js';
import type { LinePattern, LinePlace } from './pattern.js';

/** With more parts than this a line is no slip of order. */
const mostParts = 9;

/** The line in the language's order; undefined where there is none, or more than one. */
export function inUsualOrder(line: readonly Word[], pattern: LinePattern): readonly Word[] | undefined {
  const parts = partsOf(line);
  if (parts.length < 2 || parts.length > mostParts + 1) return undefined;
  const own = beginningWith(0, parts, pattern);
  if (own.length > 0) return own.length === 1 ? own[0] : undefined;
  const others = parts.flatMap((part, i) =>
    i > 0 && isWord(part[0]?.type ?? '') ? beginningWith(i, parts, pattern) : [],
  );
  return others.length === 1 ? others[0] : undefined;
}

/** The whole lines, at most two, that begin with this part. */
function beginningWith(
  first: number,
  parts: readonly (readonly Word[])[],
  pattern: LinePattern,
): readonly (readonly Word[])[] {
  const head = parts[first] ?? [];
  const others = [...parts.slice(0, first), ...parts.slice(first + 1)];
  const start = through(head, pattern.start, pattern);
  // A part says the same wherever it stands, but for two that begin alike; the first way found is nearest to what was written.
  const isTwice = ([word]: readonly Word[]): boolean =>
    others.filter(([each]) => each?.type === word?.type).length > 1;
  const found = new Map<string, readonly Word[]>();
  for (const rest of start === undefined ? [] : arranged(others, start, pattern)) {
    const key = imagesOf(rest.filter(isTwice).flat());
    if (!found.has(key)) found.set(key, [...head, ...rest.flat()]);
    if (found.size > 1 || !others.some(isTwice)) break;
  }
  return [...found.values()];
}

/** What belongs together: a word up to the next one, a note by itself. */
function partsOf(line: readonly Word[]): readonly (readonly Word[])[] {
  const parts: Word[][] = [];
  for (const word of line) {
    const last = parts.at(-1);
    const isNew =
      word.type === 'STRING'
        ? !['photo', 'by', 'welded by'].includes(last?.at(-1)?.type ?? '')
        : isWord(word.type) && word.type !== 'to';
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
): Generator<readonly (readonly Word[])[]> {
  if (parts.length === 0 && pattern.isWhole(from)) yield [];
  for (const [i, part] of parts.entries()) {
    const at = through(part, from, pattern);
    if (at === undefined) continue;
    const others = [...parts.slice(0, i), ...parts.slice(i + 1)];
    for (const rest of arranged(others, at, pattern)) yield [part, ...rest];
  }
}
