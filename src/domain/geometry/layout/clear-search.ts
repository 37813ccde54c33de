// Where joints must keep clear of flanges and bolts: the best layout by dynamic programming along the run.
// best[s] is the least cost of filling the run from s onwards, on a grid that every panel length and the gap fall on. A cut
// piece may end anywhere in a window, so a sliding minimum a panel length makes the whole search linear in the run's length.
import { SlidingMinimum } from './sliding-minimum.js';
import type { PanelPiece, KeepClear } from '../panel-piece.js';

interface ClearInput {
  readonly length: number;
  readonly offered: readonly number[];
  readonly gap: number;
  readonly minimum: number;
  readonly avoid: readonly KeepClear[];
}

/** True where no joint between the pieces comes nearer to a place than it allows. */
export function clearOf(pieces: readonly PanelPiece[], avoid: readonly KeepClear[], gap: number): boolean {
  let at = 0;
  return pieces.slice(0, -1).every((piece) => {
    const joint = at + piece.length + gap / 2;
    at += piece.length + gap;
    return avoid.every((place) => Math.abs(joint - place.at) >= place.clearance - 1e-6);
  });
}

/*
 * A cost is two whole numbers compared in turn: joints too near and pieces in the first, waste and cuts in the second.
 * The lesser half of each has room for more than any run can hold, so a lesser concern never outweighs a greater one.
 */
const violation = 2 ** 24;
const piece = 1;
const wasteCell = 2 ** 20;
const cut = 1;

/**
 * Pieces in fitting order; whole ones as early as ties allow, and of cut ones the longest first.
 * Undefined where the minimum leaves no layout on the grid.
 */
export function searchClear(input: ClearInput): readonly PanelPiece[] | undefined {
  const step = gridStep([...input.offered, input.gap], input.length);
  const cells = Math.floor(input.length / step + 1e-9);
  const gap = Math.round(input.gap / step);
  const minimum = Math.max(1, Math.ceil(input.minimum / step - 1e-9));
  const sizes = input.offered.map((length) => Math.round(length / step));
  const penalty = penalties(input, cells, step);

  const first = new Float64Array(cells + 1).fill(Infinity);
  const second = new Float64Array(cells + 1).fill(Infinity);
  const windows = sizes.map((size) => ({ size, queue: new SlidingMinimum(cells + 1) }));
  /** Whether a joint after a piece that ends at cell e, and the rest of the run after it, can be had at all. */
  const goesOn = (e: number): boolean => e + gap <= cells && first[e + gap] !== Infinity;
  const firstAfter = (e: number): number =>
    (first[e + gap] ?? Infinity) + (penalty[e] ?? 0) * violation + piece;
  const secondAfter = (e: number): number => second[e + gap] ?? Infinity;
  const closing = (s: number, size: number): number | undefined => {
    const length = input.length - s * step;
    const off = Math.ceil(size - length / step - 1e-6);
    return off >= 0 && length >= input.minimum - 1e-6 ? off * wasteCell + (off > 0 ? cut : 0) : undefined;
  };

  for (let s = cells; s >= 0; s--) {
    let a = Infinity;
    let b = Infinity;
    const offer = (x: number, y: number): void => {
      if (x < a || (x === a && y < b)) [a, b] = [x, y];
    };
    const entering = s + minimum;
    for (const { size, queue } of windows) {
      if (goesOn(entering))
        queue.push(entering, firstAfter(entering), secondAfter(entering) - entering * wasteCell);
      queue.dropAbove(s + size - 1);
      if (!queue.empty) offer(queue.first, queue.second + (s + size) * wasteCell + cut);
      if (goesOn(s + size)) offer(firstAfter(s + size), secondAfter(s + size));
      const last = s + size + 1 >= cells ? closing(s, size) : undefined;
      if (last !== undefined) offer(piece, last);
    }
    first[s] = a;
    second[s] = b;
  }
  if (first[0] === Infinity) return undefined;

  const pieces: PanelPiece[] = [];
  const is = (s: number, a: number, b: number): boolean => a === first[s] && b === second[s];
  let s = 0;
  for (;;) {
    const from = s;
    const whole = sizes.find(
      (size) => goesOn(from + size) && is(from, firstAfter(from + size), secondAfter(from + size)),
    );
    const last = sizes.find((size) => is(from, piece, closing(from, size) ?? -1));
    if (last !== undefined) return [...pieces, { length: input.length - from * step, cutFrom: last * step }];
    const next = whole === undefined ? longestCut(from) : { size: whole, to: from + whole };
    pieces.push({ length: (next.to - from) * step, cutFrom: next.size * step });
    s = next.to + gap;
  }

  function longestCut(from: number): { readonly size: number; readonly to: number } {
    for (const size of sizes) {
      for (let to = from + size - 1; to >= from + minimum; to--) {
        if (goesOn(to) && is(from, firstAfter(to), secondAfter(to) + (from + size - to) * wasteCell + cut))
          return { size, to };
      }
    }
    // Every finite cost came from one of the choices tried above, so this is a fault of ours and not of the input.
    throw new Error('The panel layout could not be read back from its own search.');
  }
}

/** How many places a joint would be too near to, by the cell at which the piece before it ends. */
function penalties(input: ClearInput, cells: number, step: number): Uint16Array {
  const penalty = new Uint16Array(cells + 1);
  for (const place of input.avoid) {
    const from = Math.max(0, Math.floor((place.at - place.clearance - input.gap / 2) / step));
    const to = Math.min(cells, Math.ceil((place.at + place.clearance - input.gap / 2) / step));
    for (let e = from; e <= to; e++) {
      if (Math.abs(e * step + input.gap / 2 - place.at) < place.clearance - 1e-6)
        penalty[e] = (penalty[e] ?? 0) + 1;
    }
  }
  return penalty;
}

/** A millimetre, or the coarsest finer step that all lengths are multiples of (inches need tenths); never more cells than memory allows. */
function gridStep(lengths: readonly number[], run: number): number {
  const fits = [1, 0.5, 0.2, 0.1, 0.05, 0.025].find((step) =>
    lengths.every((length) => Math.abs(length / step - Math.round(length / step)) < 1e-6),
  );
  return Math.max(fits ?? 0.025, run / 4e6);
}
