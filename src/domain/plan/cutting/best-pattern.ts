// The most valuable pattern that a stick yields at given prices, each piece at most as often as it is wanted: a bounded
// knapsack. Whole-number lengths by a table over all rooms up to the stick (Bellman 1957), exact; other lengths depth first by
// value a length, up to a number of looks, after which the value is still known from above.

export interface CutLength {
  readonly length: number;
  readonly count: number;
}

export interface BestPattern {
  readonly value: number;
  readonly counts: readonly number[];
  /** No pattern is worth more than this; equal to `value` where the search was exact. */
  readonly atMost: number;
}

/** Counts work in elementary looks, so that effort does not depend on the machine. */
export interface CutEffort {
  left: number;
}

const eps = 1e-9;
const largestTable = 40_000_000;
const mostLooks = 300_000;

export function bestPattern(
  room: number,
  pieces: readonly CutLength[],
  price: ArrayLike<number>,
  work: CutEffort,
): BestPattern {
  const useful = pieces.flatMap((piece, i) =>
    (price[i] ?? 0) > eps && piece.count > 0 && piece.length <= room + eps ? [i] : [],
  );
  const whole = useful.every((i) => Number.isInteger(pieces[i]?.length));
  const floor = Math.floor(room + eps);
  return whole && useful.length * (floor + 1) <= largestTable && floor <= 200_000
    ? byTable(floor, pieces, price, useful, work)
    : depthFirst(room, pieces, price, useful, work);
}

function byTable(
  room: number,
  pieces: readonly CutLength[],
  price: ArrayLike<number>,
  useful: readonly number[],
  work: CutEffort,
): BestPattern {
  // Bundles of 1, 2, 4 … of a piece make every number of it up to its count.
  const bundles: { readonly i: number; readonly times: number }[] = [];
  for (const i of useful) {
    const piece = pieces[i];
    let left = Math.min(piece?.count ?? 0, Math.floor(room / (piece?.length ?? 1)));
    for (let times = 1; left > 0; times *= 2) {
      bundles.push({ i, times: Math.min(times, left) });
      left -= Math.min(times, left);
    }
  }
  const width = room + 1;
  const value = new Float64Array(width);
  const taken = new Uint8Array(bundles.length * width);
  bundles.forEach(({ i, times }, b) => {
    const length = (pieces[i]?.length ?? 0) * times;
    const worth = (price[i] ?? 0) * times;
    const row = b * width;
    for (let at = room; at >= length; at--) {
      const better = value[at - length]! + worth; // within the table by the loop's bounds
      if (better <= value[at]! + 1e-12) continue;
      value[at] = better;
      taken[row + at] = 1;
    }
  });
  work.left -= bundles.length * width;
  const counts = new Array<number>(pieces.length).fill(0);
  let at = room;
  for (let b = bundles.length - 1; b >= 0; b--) {
    if (taken[b * width + at] === 0) continue;
    const { i, times } = bundles[b] ?? { i: 0, times: 0 };
    counts[i] = (counts[i] ?? 0) + times;
    at -= (pieces[i]?.length ?? 0) * times;
  }
  const best = value[room] ?? 0;
  return { value: best, counts, atMost: best + 1e-9 * (1 + best) };
}

function depthFirst(
  room: number,
  pieces: readonly CutLength[],
  price: ArrayLike<number>,
  useful: readonly number[],
  work: CutEffort,
): BestPattern {
  const density = (i: number): number => (price[i] ?? 0) / (pieces[i]?.length ?? 1);
  const order = [...useful].sort((a, b) => density(b) - density(a) || a - b);
  const counts = new Array<number>(pieces.length).fill(0);
  let best = { value: 0, counts: counts.slice() };
  let looks = 0;
  const visit = (k: number, left: number, value: number): void => {
    if (value > best.value + eps) best = { value, counts: counts.slice() };
    const i = order[k];
    if (i === undefined || looks > mostLooks) return;
    const length = pieces[i]?.length ?? 1;
    const worth = price[i] ?? 0;
    if (value + (left / length) * worth <= best.value + eps) return;
    const most = Math.min(pieces[i]?.count ?? 0, Math.floor(left / length + eps));
    for (let n = most; n >= 0; n--) {
      looks++;
      counts[i] = n;
      visit(k + 1, left - n * length, value + n * worth);
    }
    counts[i] = 0;
  };
  visit(0, room, 0);
  work.left -= 10 * looks;
  if (looks <= mostLooks) return { ...best, atMost: best.value + 1e-9 * (1 + best.value) };
  // Not looked at to the end: fractions of pieces by value a length say what no pattern exceeds.
  let left = room;
  let atMost = 0;
  for (const i of order) {
    const length = pieces[i]?.length ?? 1;
    const n = Math.min(pieces[i]?.count ?? 0, left / length);
    atMost += n * (price[i] ?? 0);
    left -= n * length;
  }
  return { ...best, atMost };
}
