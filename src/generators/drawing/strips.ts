// Cutting a long conveyor into strips that fit one below the other on a sheet, at panel joints where there are any.

import type { Scale } from './scale.js';
import { scaleOf } from './scale.js';

export interface Strip {
  /** Chainages, mm. */
  readonly from: number;
  readonly to: number;
}

export interface StripLayout {
  readonly scale: Scale;
  /** Strips sheet by sheet. */
  readonly sheets: readonly (readonly Strip[])[];
}

const reductions = [10, 20, 50, 100, 200, 500, 1000] as const;

/**
 * `length` mm of machine in strips of at most `width` mm of paper, `rowsAt` of them to a sheet. The largest recommended
 * scale that needs one sheet, but never below 1:100 (a panel of a metre must hold its number) unless even four sheets are
 * too few. `cuts` are chainages where a strip may end.
 */
export function stripsOf(
  length: number,
  cuts: readonly number[],
  width: number,
  rowsAt: (reduction: number) => number,
): StripLayout {
  for (const reduction of reductions) {
    const strips = cutInto(length, cuts, width * reduction);
    const rows = Math.max(1, rowsAt(reduction));
    const most = reduction < 100 ? 1 : 4;
    if (strips.length > rows * most && reduction < 1000) continue;
    const sheets: (readonly Strip[])[] = [];
    for (let i = 0; i < strips.length; i += rows) sheets.push(strips.slice(i, i + rows));
    return { scale: scaleOf(reduction), sheets };
  }
  return { scale: scaleOf(1000), sheets: [] };
}

/** Strips of nearly equal length, none longer than `most`. */
function cutInto(length: number, cuts: readonly number[], most: number): readonly Strip[] {
  const count = Math.max(1, Math.ceil(length / most - 1e-9));
  const strips = withTarget(length, cuts, most, length / count);
  return strips.length > count ? withTarget(length, [], most, length / count) : strips;
}

function withTarget(length: number, cuts: readonly number[], most: number, target: number): readonly Strip[] {
  const strips: Strip[] = [];
  let from = 0;
  while (length - from > 1e-6) {
    const wish = from + target;
    let to = length - from <= most ? length : wish;
    if (to !== length || length - from > target * 1.2) {
      const near = cuts.filter(
        (cut) => cut > from + target * 0.5 && cut <= from + most && cut < length - target * 0.3,
      );
      to =
        near.length > 0
          ? near.reduce((best, cut) => (Math.abs(cut - wish) < Math.abs(best - wish) ? cut : best))
          : Math.min(wish, length);
    }
    strips.push({ from, to });
    from = to;
  }
  return strips;
}
