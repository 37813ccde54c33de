// Where labels go so that none covers another: on one line, moved sideways as little as possible, in the order of their marks.

export interface Mark {
  /** Where the label would like its middle to be, mm. */
  readonly at: number;
  readonly width: number;
}

/**
 * Middles of the labels on one line between `from` and `to`, in the order of `marks` (which must ascend): the least sum
 * of squared shifts that leaves `gap` between neighbours (pool adjacent violators). Undefined where they cannot all fit.
 */
export function spreadLabels(
  marks: readonly Mark[],
  gap: number,
  from: number,
  to: number,
): readonly number[] | undefined {
  const total = marks.reduce((sum, mark) => sum + mark.width, 0) + gap * Math.max(0, marks.length - 1);
  if (total > to - from + 1e-9) return undefined;

  // Shift every mark by the room its predecessors need: what remains is to keep the shifted wishes in ascending order.
  const offsets: number[] = [];
  let used = 0;
  for (const mark of marks) {
    offsets.push(used + mark.width / 2);
    used += mark.width + gap;
  }
  const lowest = from;
  const highest = to - total;
  const blocks: { sum: number; count: number }[] = [];
  marks.forEach((mark, index) => {
    blocks.push({ sum: mark.at - (offsets[index] ?? 0), count: 1 });
    for (;;) {
      const last = blocks.at(-1);
      const before = blocks.at(-2);
      if (!last || !before || before.sum / before.count <= last.sum / last.count) break;
      before.sum += last.sum;
      before.count += last.count;
      blocks.pop();
    }
  });
  const middles: number[] = [];
  for (const block of blocks) {
    const start = Math.min(Math.max(block.sum / block.count, lowest), highest);
    for (let i = 0; i < block.count; i++) middles.push(start + (offsets[middles.length] ?? 0));
  }
  return middles;
}

/** What a label must not cover: a mark of this half-size around a spot. */
export interface CoveredMark {
  readonly x: number;
  readonly y: number;
  readonly half: number;
}

/** Where a label of a width and height would stand: its middle, and its foot. */
export interface LabelSpot {
  readonly x: number;
  readonly foot: number;
}

/** The first spot that covers no obstacle, else the one that covers the fewest; undefined for no spots. `free`: none is covered. */
export function freeSpot(
  spots: readonly LabelSpot[],
  size: { readonly width: number; readonly height: number },
  obstacles: readonly CoveredMark[],
): (LabelSpot & { readonly free: boolean }) | undefined {
  const covered = spots.map((spot) => obstacles.filter((each) => covers(spot, size, each)).length);
  const least = Math.min(...covered);
  const spot = spots[covered.indexOf(least)];
  return spot && { ...spot, free: least === 0 };
}

function covers(
  { x, foot }: LabelSpot,
  { width, height }: { readonly width: number; readonly height: number },
  mark: CoveredMark,
): boolean {
  return (
    Math.abs(mark.x - x) < width / 2 + mark.half &&
    mark.y > foot - height - mark.half &&
    mark.y < foot + mark.half
  );
}
