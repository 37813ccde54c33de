// The cutting problem with fractions of sticks allowed: what stock costs at least, over all patterns there are. Patterns are
// found as they are needed (column generation, Gilmore and Gomory 1961): prices of the pieces come from a small simplex, and a
// knapsack per kind of stock looks for a pattern worth more than it costs.

export interface Stock {
  readonly length: number;
  /** Infinity where unlimited. */
  readonly count: number;
  readonly cost: number;
}

export interface CutLength {
  readonly length: number;
  readonly count: number;
}

export interface Pattern {
  readonly stock: number;
  /** Of each piece. */
  readonly counts: readonly number[];
}

export interface Relaxed {
  /** Undefined where the limited stock does not yield all pieces even in fractions. */
  readonly cost: number | undefined;
  /** Patterns used, with how often. */
  readonly patterns: readonly (Pattern & { readonly times: number })[];
}

const eps = 1e-9;

interface Column {
  readonly cost: number;
  readonly values: Float64Array;
  readonly pattern: Pattern | undefined;
  readonly artificial: boolean;
}

export function relaxation(stock: readonly Stock[], pieces: readonly CutLength[]): Relaxed {
  if (pieces.length === 0) return { cost: 0, patterns: [] };
  const limited = stock.flatMap((kind, k) => (Number.isFinite(kind.count) ? [k] : []));
  const m = pieces.length + limited.length;
  const right = Float64Array.from([
    ...pieces.map((piece) => piece.count),
    ...limited.map((k) => stock[k]?.count ?? 0),
  ]);
  const big =
    1000 *
    Math.max(1, ...stock.map((kind) => Math.abs(kind.cost))) *
    Math.max(1, ...pieces.map((piece) => piece.count));

  const unit = (row: number, value: number, cost: number, artificial: boolean): Column => {
    const values = new Float64Array(m);
    values[row] = value;
    return { cost, values, pattern: undefined, artificial };
  };
  const basis: Column[] = Array.from({ length: m }, (_, r) =>
    unit(r, 1, r < pieces.length ? big : 0, r < pieces.length),
  );
  const surplus = pieces.map((_, r) => unit(r, -1, 0, false));
  const slack = limited.map((_, k) => unit(pieces.length + k, 1, 0, false));
  const inverse: Float64Array[] = Array.from({ length: m }, (_, r) => {
    const row = new Float64Array(m);
    row[r] = 1;
    return row;
  });
  const level = right.slice();

  for (let round = 0; round < 5000; round++) {
    const price = new Float64Array(m);
    for (let r = 0; r < m; r++) {
      const cost = basis[r]?.cost ?? 0;
      if (cost === 0) continue;
      const row = inverse[r];
      for (let c = 0; c < m; c++) price[c] = (price[c] ?? 0) + cost * (row?.[c] ?? 0);
    }
    const entering = enteringColumn(stock, pieces, limited, price, surplus, slack, m);
    if (!entering) break;
    const direction = new Float64Array(m);
    for (let r = 0; r < m; r++) {
      let sum = 0;
      const row = inverse[r];
      for (let c = 0; c < m; c++) sum += (row?.[c] ?? 0) * (entering.values[c] ?? 0);
      direction[r] = sum;
    }
    let leaving = -1;
    let ratio = Infinity;
    for (let r = 0; r < m; r++) {
      const d = direction[r] ?? 0;
      if (d <= eps) continue;
      const here = (level[r] ?? 0) / d;
      if (
        here < ratio - eps ||
        (here < ratio + eps &&
          leaving >= 0 &&
          (basis[r]?.artificial ?? false) &&
          !(basis[leaving]?.artificial ?? false))
      ) {
        ratio = here;
        leaving = r;
      }
    }
    if (leaving < 0) break;
    pivot(inverse, level, direction, leaving);
    basis[leaving] = entering;
  }

  let cost = 0;
  const patterns: (Pattern & { times: number })[] = [];
  for (let r = 0; r < m; r++) {
    const column = basis[r];
    const times = level[r] ?? 0;
    if (!column || times <= 1e-7) continue;
    if (column.artificial) return { cost: undefined, patterns: [] };
    cost += column.cost * times;
    if (column.pattern) patterns.push({ ...column.pattern, times });
  }
  return { cost, patterns };
}

function enteringColumn(
  stock: readonly Stock[],
  pieces: readonly CutLength[],
  limited: readonly number[],
  price: Float64Array,
  surplus: readonly Column[],
  slack: readonly Column[],
  m: number,
): Column | undefined {
  for (const [r, column] of surplus.entries()) if ((price[r] ?? 0) < -1e-7) return column;
  for (const [k, column] of slack.entries()) if ((price[pieces.length + k] ?? 0) > 1e-7) return column;
  let best: Column | undefined;
  let bestGain = 1e-7;
  for (const [k, kind] of stock.entries()) {
    const row = limited.indexOf(k);
    const rent = row < 0 ? 0 : (price[pieces.length + row] ?? 0);
    const { value, counts } = knapsack(kind.length, pieces, price);
    const gain = value + rent - kind.cost;
    if (gain <= bestGain * Math.max(1, Math.abs(kind.cost))) continue;
    bestGain = gain;
    const values = new Float64Array(m);
    counts.forEach((count, i) => {
      values[i] = count;
    });
    if (row >= 0) values[pieces.length + row] = 1;
    best = { cost: kind.cost, values, pattern: { stock: k, counts }, artificial: false };
  }
  return best;
}

function pivot(
  inverse: readonly Float64Array[],
  level: Float64Array,
  direction: Float64Array,
  leaving: number,
): void {
  const m = level.length;
  const by = direction[leaving] ?? 1;
  const row = inverse[leaving];
  if (!row) return;
  for (let c = 0; c < m; c++) row[c] = (row[c] ?? 0) / by;
  level[leaving] = Math.max(0, (level[leaving] ?? 0) / by);
  for (let r = 0; r < m; r++) {
    const d = direction[r] ?? 0;
    const other = inverse[r];
    if (r === leaving || d === 0 || !other) continue;
    for (let c = 0; c < m; c++) other[c] = (other[c] ?? 0) - d * (row[c] ?? 0);
    level[r] = Math.max(0, (level[r] ?? 0) - d * (level[leaving] ?? 0));
  }
}

/** The most valuable pattern a stick yields, each piece at most as often as it is wanted: depth first by value a length, bounded. */
export function knapsack(
  room: number,
  pieces: readonly CutLength[],
  price: ArrayLike<number>,
): { readonly value: number; readonly counts: number[] } {
  const order = pieces
    .map((_, i) => i)
    .filter((i) => (price[i] ?? 0) > eps && (pieces[i]?.length ?? Infinity) <= room + eps)
    .sort(
      (a, b) =>
        (price[b] ?? 0) / (pieces[b]?.length ?? 1) - (price[a] ?? 0) / (pieces[a]?.length ?? 1) || a - b,
    );
  const counts = new Array<number>(pieces.length).fill(0);
  let best = { value: 0, counts: counts.slice() };
  const visit = (k: number, left: number, value: number): void => {
    if (value > best.value + eps) best = { value, counts: counts.slice() };
    const i = order[k];
    if (i === undefined) return;
    const length = pieces[i]?.length ?? 1;
    const worth = price[i] ?? 0;
    if (value + (left / length) * worth <= best.value + eps) return;
    const most = Math.min(pieces[i]?.count ?? 0, Math.floor(left / length + eps));
    for (let n = most; n >= 0; n--) {
      counts[i] = n;
      visit(k + 1, left - n * length, value + n * worth);
    }
    counts[i] = 0;
  };
  visit(0, room, 0);
  return best;
}
