// How to cut pieces out of stock with the least stock used: one-dimensional cutting stock, solved exactly at real sizes.
// Stock of several lengths, each plentiful or limited, each at a cost (its length where none is given); the saw takes a kerf
// between pieces. Lower bound: the linear relaxation over all cutting patterns (Gilmore and Gomory 1961), rounded up to what
// any whole number of sticks can cost. Upper: patterns of the relaxation taken in whole numbers, the rest filled piece by
// piece; then a search over patterns until the two meet or the work runs out, in which case the gap is stated.

import { fillRest, searchPatterns } from './cutting/whole-patterns.js';

export interface StockKind {
  readonly name?: string;
  /** mm, or any whole-number unit fine enough for all lengths. */
  readonly length: number;
  /** Undefined: as many as are wanted. */
  readonly count?: number;
  /** What using one costs; its length where left out. 0 for offcuts that are there anyway. */
  readonly cost?: number;
}

export interface CuttingProblem {
  readonly stock: readonly StockKind[];
  readonly pieces: readonly { readonly length: number; readonly count: number }[];
  /** Lost at every cut between two pieces, mm. */
  readonly kerf?: number;
}

export interface CutStick {
  /** Position in the list of stock kinds. */
  readonly stock: number;
  /** Positions in the list of pieces, longest first. */
  readonly pieces: readonly number[];
  /** How many sticks are cut this way. */
  readonly times: number;
  /** Left over after pieces and kerfs, mm. */
  readonly rest: number;
}

export type CuttingPlan =
  | {
      readonly kind: 'plan';
      readonly sticks: readonly CutStick[];
      readonly cost: number;
      readonly lowerBound: number;
      readonly optimal: boolean;
      /** Stock used, pieces got, and what is neither, mm; kerf counts as waste. */
      readonly used: number;
      readonly got: number;
      readonly waste: number;
      /** waste / used; 0 where nothing is cut. */
      readonly wasteRatio: number;
      readonly nodes: number;
    }
  /** A piece is longer than every kind of stock. */
  | { readonly kind: 'too long'; readonly piece: number }
  /** The limited stock does not yield all pieces. */
  | {
      readonly kind: 'not enough stock';
      readonly missing: readonly { readonly piece: number; readonly count: number }[];
    };

/** About ten seconds of processor on hard problems; cut lists of real jobs take a thousandth of it. */
export const usualWork = 4e9;

/**
 * One stick after another, all lengths in the same unit. `work` counts elementary looks: where it runs out the best list so far
 * comes back with the gap to what is proven. Throws RangeError for a length that is not positive.
 */
export function cuttingStock(problem: CuttingProblem, work = usualWork): CuttingPlan {
  const kerf = problem.kerf ?? 0;
  for (const { length } of [...problem.stock, ...problem.pieces])
    if (!(length > 0)) throw new RangeError(`A length of ${length} cannot be cut.`);
  // A kerf after every piece, and one more in the stock, counts one kerf between neighbours.
  const stock = problem.stock.map(({ length, count = Infinity, cost = length }) => ({
    length: length + kerf,
    count,
    cost,
  }));
  const pieces = merge(problem.pieces, kerf);
  const tooLong = pieces.find((piece) => stock.every((each) => each.length < piece.length - epsilon));
  if (tooLong) return { kind: 'too long', piece: tooLong.from[0] ?? 0 };

  const searched = searchPatterns(stock, pieces, { left: work });
  const filled =
    searched.sticks ??
    fillRest(
      stock,
      pieces,
      pieces.map((piece) => piece.count),
      [],
    );
  if (!filled) return { kind: 'not enough stock', missing: missingFrom(stock, pieces) };

  const cost = filled.reduce((sum, stick) => sum + (stock[stick.stock]?.cost ?? 0), 0);
  return finish(problem, pieces, filled, cost, Math.min(cost, searched.lowerBound), searched.nodes);
}

const epsilon = 1e-9;

export interface Demand {
  readonly length: number;
  readonly count: number;
  /** Positions in the caller's list that this stands for, with how many of each. */
  readonly from: readonly number[];
  readonly counts: readonly number[];
}

/** Pieces of equal length as one, longest first. */
function merge(pieces: CuttingProblem['pieces'], kerf: number): Demand[] {
  const byLength = new Map<number, { from: number[]; counts: number[] }>();
  pieces.forEach(({ length, count }, i) => {
    if (count <= 0) return;
    const known = byLength.get(length) ?? { from: [], counts: [] };
    known.from.push(i);
    known.counts.push(count);
    byLength.set(length, known);
  });
  return [...byLength]
    .sort(([a], [b]) => b - a)
    .map(([length, { from, counts }]) => ({
      length: length + kerf,
      count: counts.reduce((sum, count) => sum + count, 0),
      from,
      counts,
    }));
}

function missingFrom(
  stock: readonly { readonly length: number; readonly count: number; readonly cost: number }[],
  pieces: readonly Demand[],
): { readonly piece: number; readonly count: number }[] {
  const left = pieces.map((piece) => piece.count);
  const sticks = stock
    .flatMap((kind, k) =>
      Array.from({ length: Math.min(kind.count, 10_000) }, () => ({ room: kind.length, k })),
    )
    .sort((a, b) => a.room - b.room);
  for (const [i, piece] of pieces.entries()) {
    while ((left[i] ?? 0) > 0) {
      const stick = sticks.find((each) => each.room >= piece.length - epsilon);
      if (!stick) break;
      stick.room -= piece.length;
      left[i] = (left[i] ?? 0) - 1;
    }
  }
  return left.flatMap((count, i) => (count > 0 ? [{ piece: pieces[i]?.from[0] ?? 0, count }] : []));
}

function finish(
  problem: CuttingProblem,
  pieces: readonly Demand[],
  filled: readonly { readonly stock: number; readonly counts: readonly number[] }[],
  cost: number,
  bound: number,
  nodes: number,
): CuttingPlan {
  const kerf = problem.kerf ?? 0;
  const hand = pieces.map((piece) =>
    piece.from.flatMap((from, k) => Array.from({ length: piece.counts[k] ?? 0 }, () => from)),
  );
  const grouped = new Map<string, { stock: number; pieces: number[]; times: number; rest: number }>();
  let used = 0;
  let got = 0;
  for (const { stock, counts } of [...filled].sort(
    (a, b) => a.stock - b.stock || compare(b.counts, a.counts),
  )) {
    const length = problem.stock[stock]?.length ?? 0;
    const cut = counts.flatMap((count, i) => (hand[i] ?? []).splice(0, count));
    const sum = cut.reduce((total, i) => total + (problem.pieces[i]?.length ?? 0), 0);
    const key = `${stock}:${cut.join(',')}`;
    const known = grouped.get(key);
    if (known) known.times++;
    else
      grouped.set(key, {
        stock,
        pieces: cut,
        times: 1,
        rest: Math.max(0, round(length - sum - Math.max(0, cut.length - 1) * kerf)),
      });
    used += length;
    got += sum;
  }
  const waste = round(used - got);
  return {
    kind: 'plan',
    sticks: [...grouped.values()],
    cost: round(cost),
    lowerBound: round(bound),
    optimal: cost <= bound + epsilon,
    used: round(used),
    got: round(got),
    waste,
    wasteRatio: used > 0 ? waste / used : 0,
    nodes,
  };
}

function compare(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return (a[i] ?? 0) - (b[i] ?? 0);
  return 0;
}

function round(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
