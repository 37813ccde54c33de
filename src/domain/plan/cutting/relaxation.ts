// The cutting problem with fractions of sticks allowed: what stock costs at least, over all patterns there are. Patterns are
// found as they are needed (column generation, Gilmore and Gomory 1961): prices of the pieces come from a small simplex, and a
// knapsack per kind of stock looks for a pattern worth more than it costs. The bound does not trust the simplex: from any
// prices whatever a bound follows (Farley 1990; with limited stock by Lagrange), so it holds before the prices have settled
// and whatever rounding does to them.

import { bestPattern, type BestPattern, type CutLength, type CutEffort } from './best-pattern.js';

export interface Stock {
  readonly length: number;
  /** Infinity where unlimited. */
  readonly count: number;
  readonly cost: number;
}

export interface Pattern {
  readonly stock: number;
  /** Of each piece. */
  readonly counts: readonly number[];
}

export interface Relaxed {
  /** Of the fractions below; undefined where the limited stock does not yield all pieces even in fractions. */
  readonly cost: number | undefined;
  /** Nothing can cost less; proven whether or not the prices have settled. */
  readonly bound: number;
  /** Patterns used, with how often. */
  readonly patterns: readonly (Pattern & { readonly times: number })[];
}

/** Patterns met so far; later problems with the same stock and pieces begin with them. */
export type Known = Map<string, Pattern>;

const eps = 1e-9;
/** Added to what is wanted, a little differently for each piece: equal ratios would let the simplex go in circles. */
const hair = 2e-8;

interface Column {
  readonly cost: number;
  readonly values: Float64Array;
  readonly pattern: Pattern | undefined;
  readonly artificial: boolean;
}

/**
 * `enough`: stops once the bound says that no whole number of sticks costs less than this. Pieces of which none are wanted
 * take no part. Where `work` runs out the bound is what is proven so far.
 */
export function relaxation(
  stock: readonly Stock[],
  pieces: readonly CutLength[],
  work: CutEffort,
  known: Known,
  enough: (bound: number, cost: number) => boolean,
): Relaxed {
  const wanted = pieces.flatMap((piece, i) => (piece.count > 0 ? [i] : []));
  if (wanted.length === 0) return { cost: 0, bound: 0, patterns: [] };
  return new Generation(stock, pieces, wanted, work, known).run(enough);
}

class Generation {
  /** Rows: wanted pieces, then limited stock. */
  private readonly rowOf: Int32Array;
  private readonly limited: readonly number[];
  private readonly m: number;
  private readonly basis: Column[];
  private readonly inverse: Float64Array[];
  private readonly level: Float64Array;
  private readonly columns: Column[] = [];
  private bound = 0;

  constructor(
    private readonly stock: readonly Stock[],
    private readonly pieces: readonly CutLength[],
    private readonly wanted: readonly number[],
    private readonly work: CutEffort,
    private readonly known: Known,
  ) {
    this.rowOf = new Int32Array(pieces.length).fill(-1);
    wanted.forEach((i, r) => {
      this.rowOf[i] = r;
    });
    this.limited = stock.flatMap((kind, k) => (Number.isFinite(kind.count) ? [k] : []));
    this.m = wanted.length + this.limited.length;
    const big =
      1000 *
      Math.max(1, ...stock.map((kind) => Math.abs(kind.cost))) *
      Math.max(1, ...pieces.map((piece) => piece.count));
    this.basis = Array.from({ length: this.m }, (_, r) =>
      this.unit(r, 1, r < wanted.length ? big : 0, r < wanted.length),
    );
    this.inverse = Array.from({ length: this.m }, (_, r) => {
      const row = new Float64Array(this.m);
      row[r] = 1;
      return row;
    });
    this.level = Float64Array.from([
      ...wanted.map((i, r) => (pieces[i]?.count ?? 0) + hair * (1 + ((r * 0.618_034) % 1))),
      ...this.limited.map((k) => stock[k]?.count ?? 0),
    ]);
    wanted.forEach((_, r) => this.columns.push(this.unit(r, -1, 0, false)));
    this.limited.forEach((_, r) => this.columns.push(this.unit(wanted.length + r, 1, 0, false)));
    for (const pattern of known.values()) {
      const column = this.columnOf(pattern);
      if (column) this.columns.push(column);
    }
  }

  run(enough: (bound: number, cost: number) => boolean): Relaxed {
    const { work, m } = this;
    for (let round = 0; round < 20_000 && work.left > 0; round++) {
      work.left -= m * (3 * m + this.columns.length);
      const price = this.prices();
      const entering = this.fromKnown(price) ?? this.fromKnapsack(price);
      if (!entering || (round % 8 === 0 && enough(this.bound, this.cost()))) break;
      if (!this.enter(entering)) break;
    }
    return this.answer();
  }

  private unit(row: number, value: number, cost: number, artificial: boolean): Column {
    const values = new Float64Array(this.m);
    values[row] = value;
    return { cost, values, pattern: undefined, artificial };
  }

  /** Of each piece no more than is wanted; undefined where none of it is, or the stick is used up. */
  private columnOf(pattern: Pattern): Column | undefined {
    const kind = this.stock[pattern.stock];
    if (!kind || kind.count <= 0) return undefined;
    const values = new Float64Array(this.m);
    let any = false;
    const counts = pattern.counts.map((count, i) => {
      const kept = Math.min(count, this.pieces[i]?.count ?? 0);
      if (kept > 0) {
        values[this.rowOf[i] ?? 0] = kept;
        any = true;
      }
      return kept;
    });
    // eslint-disable-next-line @typescript-eslint/no-unnecessary-condition -- set in the loop above
    if (!any) return undefined;
    const row = this.limited.indexOf(pattern.stock);
    if (row >= 0) values[this.wanted.length + row] = 1;
    return { cost: kind.cost, values, pattern: { stock: pattern.stock, counts }, artificial: false };
  }

  private prices(): Float64Array {
    const price = new Float64Array(this.m);
    for (let r = 0; r < this.m; r++) {
      const cost = this.basis[r]!.cost;
      if (cost === 0) continue;
      const row = this.inverse[r]!;
      for (let c = 0; c < this.m; c++) price[c] = price[c]! + cost * row[c]!;
    }
    return price;
  }

  private fromKnown(price: Float64Array): Column | undefined {
    let best: Column | undefined;
    let bestGain = 1e-7;
    for (const column of this.columns) {
      let worth = -column.cost;
      for (let r = 0; r < this.m; r++) worth += price[r]! * column.values[r]!;
      if (worth <= bestGain * Math.max(1, Math.abs(column.cost))) continue;
      bestGain = worth;
      best = column;
    }
    return best;
  }

  /** A pattern worth more than it costs, and on the way what these prices prove. */
  private fromKnapsack(price: Float64Array): Column | undefined {
    const { stock, wanted, limited, known } = this;
    const byPiece = new Float64Array(this.pieces.length);
    wanted.forEach((i, r) => {
      byPiece[i] = Math.max(0, price[r]!);
    });
    const found = stock.map((kind) =>
      kind.count > 0 ? bestPattern(kind.length, this.pieces, byPiece, this.work) : undefined,
    );
    this.bound = Math.max(this.bound, this.provenBy(byPiece, found));
    let best: Column | undefined;
    let bestGain = 1e-7;
    found.forEach((pattern, k) => {
      const kind = stock[k];
      if (!pattern || !kind) return;
      const row = limited.indexOf(k);
      const rent = row < 0 ? 0 : price[wanted.length + row]!;
      const gain = pattern.value + rent - kind.cost;
      if (gain <= bestGain * Math.max(1, Math.abs(kind.cost))) return;
      bestGain = gain;
      best = this.columnOf({ stock: k, counts: pattern.counts });
    });
    if (best?.pattern) {
      known.set(`${best.pattern.stock}:${best.pattern.counts.join(' ')}`, best.pattern);
      this.columns.push(best);
    }
    return best;
  }

  /** Prices scaled down until no plentiful stick yields more than it costs; limited ones pay for what they yield beyond. */
  private provenBy(price: Float64Array, found: readonly (BestPattern | undefined)[]): number {
    let scale = 1;
    this.stock.forEach((kind, k) => {
      const most = found[k]?.atMost ?? 0;
      if (!Number.isFinite(kind.count) && most > 0) scale = Math.min(scale, kind.cost / most);
    });
    let bound = 0;
    for (const i of this.wanted) bound += scale * price[i]! * this.pieces[i]!.count;
    this.stock.forEach((kind, k) => {
      const most = found[k]?.atMost ?? 0;
      if (Number.isFinite(kind.count)) bound -= kind.count * Math.max(0, scale * most - kind.cost);
    });
    return bound;
  }

  private enter(entering: Column): boolean {
    const { m, inverse, level, basis } = this;
    const direction = new Float64Array(m);
    for (let r = 0; r < m; r++) {
      let sum = 0;
      const row = inverse[r]!;
      for (let c = 0; c < m; c++) sum += row[c]! * entering.values[c]!;
      direction[r] = sum;
    }
    let leaving = -1;
    let ratio = Infinity;
    for (let r = 0; r < m; r++) {
      const d = direction[r]!;
      if (d <= eps) continue;
      const here = level[r]! / d;
      const frees = leaving >= 0 && basis[r]!.artificial && !basis[leaving]!.artificial;
      if (here < ratio - 1e-12 || (here < ratio + 1e-12 && frees)) {
        ratio = here;
        leaving = r;
      }
    }
    if (leaving < 0) return false;
    this.pivot(direction, leaving);
    basis[leaving] = entering;
    return true;
  }

  private pivot(direction: Float64Array, leaving: number): void {
    const { m, inverse, level } = this;
    const by = direction[leaving]!;
    const row = inverse[leaving]!;
    for (let c = 0; c < m; c++) row[c] = row[c]! / by;
    level[leaving] = Math.max(0, level[leaving]! / by);
    for (let r = 0; r < m; r++) {
      const d = direction[r]!;
      if (r === leaving || d === 0) continue;
      const other = inverse[r]!;
      for (let c = 0; c < m; c++) other[c] = other[c]! - d * row[c]!;
      level[r] = Math.max(0, level[r]! - d * level[leaving]!);
    }
  }

  private cost(): number {
    return this.basis.reduce((sum, column, r) => sum + column.cost * this.level[r]!, 0);
  }

  private answer(): Relaxed {
    const patterns: (Pattern & { times: number })[] = [];
    let cost = 0;
    let short = false;
    for (let r = 0; r < this.m; r++) {
      const column = this.basis[r]!;
      const times = this.level[r]!;
      if (times <= 1e-6) continue;
      if (column.artificial) short = true;
      cost += column.cost * times;
      if (column.pattern) patterns.push({ ...column.pattern, times });
    }
    return short
      ? { cost: undefined, bound: this.bound, patterns: [] }
      : { cost, bound: Math.min(this.bound, cost), patterns };
  }
}
