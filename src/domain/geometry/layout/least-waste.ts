// The fewest pieces that fill a run, and among those the panels with the least to cut off, where joints may lie anywhere.
// With n pieces the sum of the panels decides the waste, so only how many of each length matters; that is searched in full.

import type { PanelPiece } from '../panel-piece.js';

/** Pieces in fitting order, whole ones first, longest first. `offered` longest first; `minimum` not above any of them. */
export function leastWaste(
  length: number,
  offered: readonly number[],
  gap: number,
  minimum: number,
): readonly PanelPiece[] {
  const count = fewestPieces(length, offered, gap);
  const needed = length - (count - 1) * gap;
  const panels = smallestSum(count, needed - 1e-6, offered);
  return trim(panels, sum(panels) - needed, minimum);
}

/** How many of the longest panel reach the run's end. `offered` longest first. */
export function fewestPieces(length: number, offered: readonly number[], gap: number): number {
  const longest = offered[0] ?? length;
  return Math.max(1, Math.ceil((length + gap - 1e-6) / (longest + gap)));
}

/** `count` of the offered lengths whose sum is the smallest that reaches `needed`; one panel too few always falls short. */
function smallestSum(count: number, needed: number, offered: readonly number[]): readonly number[] {
  let best: readonly number[] = Array<number>(count).fill(offered[0] ?? needed);
  let bestSum = sum(best);
  const search = (kind: number, left: number, total: number, taken: readonly number[]): void => {
    const size = offered[kind];
    if (size === undefined || total + left * size < needed) return; // later lengths are shorter still
    if (kind === offered.length - 1 || left === 0) {
      const whole = total + left * size;
      if (whole < bestSum - 1e-6) [best, bestSum] = [[...taken, ...Array<number>(left).fill(size)], whole];
      return;
    }
    for (let some = left; some >= 0; some--)
      search(kind + 1, left - some, total + some * size, [...taken, ...Array<number>(some).fill(size)]);
  };
  search(0, count, 0, []);
  return best;
}

/** Takes `excess` off the closing panel, and off the panel before it only what would make the closing piece too short. */
function trim(panels: readonly number[], excess: number, minimum: number): readonly PanelPiece[] {
  const able = panels.filter((panel) => panel - excess >= minimum - 1e-6);
  const closing = able.length > 0 ? Math.min(...able) : Math.max(...panels);
  const order = [...panels];
  order.splice(order.lastIndexOf(closing), 1);
  order.push(closing);
  let left = Math.max(0, excess);
  return order
    .reverse()
    .map((panel) => {
      const off = Math.min(left, panel - minimum);
      left -= off;
      return { length: off < 1e-6 ? panel : panel - off, cutFrom: panel };
    })
    .reverse();
}

function sum(lengths: readonly number[]): number {
  return lengths.reduce((total, length) => total + length, 0);
}
