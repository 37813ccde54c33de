// What the lines around say of braces that are missing or too many: where another block's heading stands, where a line is no
// further in than its block, and where facts of a block stand outside it.

import type { LinePattern, LinePatterns } from './pattern.js';
import type { TokenPlaces } from './places.js';

export interface OpenBlock {
  /** Undefined where nobody can tell what it is. */
  readonly block: string | undefined;
  /** Of the line that opens it, and the number of its first token. */
  readonly column: number;
  readonly heading: number;
  /** Nothing in it is used. */
  readonly lost: boolean;
}

export interface Evidence {
  /** The block that a word begins. */
  blockOf(word: string): string | undefined;
  /** A whole fact stands here, up to the end of the line, a brace, or the next fact. */
  isFactAt(at: number, pattern: LinePattern): boolean;
  /** The next brace closes something that nothing has opened. */
  isClosedLater(at: number): boolean;
  /** The heading of another block stands here, or a line as far out as the heading of the outermost open one. */
  isOutside(at: number, open: readonly OpenBlock[]): boolean;
  /** An order that was never closed: a line of the job, no step, and no further in than the word `order`. */
  isOutOfOrder(at: number, open: readonly OpenBlock[]): boolean;
  /** A brace further out than the order's own line closes the job: the order's own is missing. */
  isFurtherOut(at: number, open: readonly OpenBlock[]): boolean;
}

export function evidenceOf(places: TokenPlaces, patternOf: LinePatterns): Evidence {
  const { type, isFirst, column } = places;
  const headings = patternOf('Block');
  const isClosedLater = (at: number): boolean => {
    let next = at;
    while (next < places.count && type(next) !== '{' && type(next) !== '}') next++;
    return type(next) === '}' || type(next - 1) === 'order';
  };
  /** A heading up to its brace, or a record of one line. */
  const isHeading = (at: number, outermost: number): boolean => {
    let standing = headings.start;
    for (let next = at; next < places.count; next++) {
      const isNewLine = next > at && isFirst(next);
      if (isNewLine && headings.isWhole(standing)) return true;
      // A brace on a line of its own belongs to a heading only where that stands as far out as the block's.
      if (isNewLine && type(next) === '{' && column(at) > outermost) return false;
      const further = headings.next(standing, type(next));
      if (further === undefined) return false;
      standing = further;
      if (type(next) === '{') return true;
    }
    return headings.isWhole(standing);
  };
  return {
    blockOf: (word) =>
      word === 'order' ? 'Order' : headings.ways(headings.start).find(({ token }) => token === word)?.fact,
    isFactAt(from, pattern) {
      if (!pattern.first.has(type(from)) || type(from) === 'ID') return false;
      let standing = pattern.start;
      for (let at = from; at < places.count; at++) {
        const next = pattern.next(standing, type(at));
        if (next === undefined)
          return (
            pattern.isWhole(standing) && (type(at) === '}' || isFirst(at) || pattern.first.has(type(at)))
          );
        standing = next;
      }
      return pattern.isWhole(standing);
    },
    isClosedLater,
    isOutside(at, open) {
      const [outer] = open;
      if (!outer || !isFirst(at) || !headings.first.has(type(at))) return false;
      if (isHeading(at, outer.column)) return true;
      const inner = patternOf.inside(open.at(-1)?.block);
      return (
        column(at) <= outer.column &&
        type(at + 1) === 'ID' &&
        !inner.first.has(type(at)) &&
        !isClosedLater(at)
      );
    },
    isOutOfOrder(at, open) {
      const top = open.at(-1);
      if (top?.block !== 'Order' || open.length < 2 || !isFirst(at) || column(at) > top.column) return false;
      return patternOf('JobFact').first.has(type(at)) && !patternOf('Step').first.has(type(at));
    },
    isFurtherOut: (at, open) => open.length > 1 && isFirst(at) && column(at) < (open.at(-1)?.column ?? 0),
  };
}
