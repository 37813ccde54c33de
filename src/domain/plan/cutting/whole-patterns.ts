// Whole sticks from the fractions of the relaxation. First a dive: take the whole part of every pattern, round the rest up one
// by one, solving again for what is left. Where that costs more than the lower bound, a search: the longest piece still wanted
// must come from some stick, so every full pattern that holds it is tried, cheapest promise first (bin completion).

import { relaxation, type Pattern, type CutLength, type Relaxed, type Stock } from './relaxation.js';

export interface Whole {
  readonly sticks: readonly Pattern[] | undefined;
  readonly lowerBound: number;
  readonly nodes: number;
}

const eps = 1e-6;

export function searchPatterns(
  stock: readonly Stock[],
  pieces: readonly CutLength[],
  relaxed: Relaxed,
  mostNodes: number,
): Whole {
  if (relaxed.cost === undefined) return { sticks: undefined, lowerBound: 0, nodes: 0 };
  const step = commonStep(stock.map((kind) => kind.cost));
  const roundUp = (cost: number): number => (step > 0 ? Math.ceil(cost / step - eps) * step : cost);
  const bound = roundUp(relaxed.cost);
  const wanted = pieces.map((piece) => piece.count);

  let best: readonly Pattern[] | undefined;
  let bestCost = Infinity;
  const consider = (sticks: readonly Pattern[] | undefined): void => {
    if (!sticks) return;
    const cost = sticks.reduce((sum, stick) => sum + (stock[stick.stock]?.cost ?? 0), 0);
    if (cost < bestCost - eps) {
      best = sticks;
      bestCost = cost;
    }
  };
  consider(fillRest(stock, pieces, wanted, []));
  if (bestCost > bound + eps) consider(dive(stock, pieces, relaxed));
  if (bestCost <= bound + eps || mostNodes <= 0) return { sticks: best, lowerBound: bound, nodes: 0 };

  // The whole parts are nearly always part of some best plan, so the rest is searched first, then everything.
  const fixed = wholeParts(stock, pieces, relaxed);
  const rest = remaining(pieces, fixed);
  const budget = { nodes: 0, most: Math.floor(mostNodes / 2) };
  if (fixed.length > 0)
    complete(stock, pieces, rest, fixed, roundUp, bound, budget, () => bestCost, consider);
  budget.most = mostNodes;
  const all =
    bestCost > bound + eps &&
    complete(stock, pieces, wanted, [], roundUp, bound, budget, () => bestCost, consider);
  return { sticks: best, lowerBound: all ? bestCost : bound, nodes: budget.nodes };
}

/** Longest first into the stick where the least is left over, a new stick of the kind that suits best; undefined where stock runs out. */
export function fillRest(
  stock: readonly Stock[],
  pieces: readonly CutLength[],
  wanted: readonly number[],
  begun: readonly Pattern[],
): readonly Pattern[] | undefined {
  const used = stock.map((_, k) => begun.filter((stick) => stick.stock === k).length);
  const sticks: { stock: number; room: number; counts: number[] }[] = [];
  const left = [...wanted];
  for (let i = 0; i < pieces.length; i++) {
    const length = pieces[i]?.length ?? 0;
    while ((left[i] ?? 0) > 0) {
      let place: (typeof sticks)[number] | undefined;
      for (const stick of sticks)
        if (stick.room >= length - 1e-9 && (!place || stick.room < place.room)) place = stick;
      if (!place) {
        const kind = bestKind(stock, used, length, left[i] ?? 0);
        if (kind < 0) return undefined;
        used[kind] = (used[kind] ?? 0) + 1;
        place = { stock: kind, room: stock[kind]?.length ?? 0, counts: pieces.map(() => 0) };
        sticks.push(place);
      }
      place.room -= length;
      place.counts[i] = (place.counts[i] ?? 0) + 1;
      left[i] = (left[i] ?? 0) - 1;
    }
  }
  return [...begun, ...sticks.map(({ stock: kind, counts }) => ({ stock: kind, counts }))];
}

/** Cheapest for each length of this piece that it yields; offcuts that cost nothing first, shortest first. */
function bestKind(stock: readonly Stock[], used: readonly number[], length: number, wanted: number): number {
  let best = -1;
  let bestPrice = Infinity;
  stock.forEach((kind, k) => {
    const yields = Math.min(wanted, Math.floor(kind.length / length + 1e-9));
    if (yields < 1 || (used[k] ?? 0) >= kind.count) return;
    const price = kind.cost / yields + kind.length * 1e-9;
    if (price < bestPrice) {
      best = k;
      bestPrice = price;
    }
  });
  return best;
}

function wholeParts(stock: readonly Stock[], pieces: readonly CutLength[], relaxed: Relaxed): Pattern[] {
  const left = pieces.map((piece) => piece.count);
  const sticks: Pattern[] = [];
  for (const { stock: kind, counts, times } of relaxed.patterns) {
    for (let k = 0; k < Math.floor(times + eps); k++) {
      const taken = counts.map((count, i) => Math.min(count, left[i] ?? 0));
      if (taken.every((count) => count === 0)) break;
      taken.forEach((count, i) => {
        left[i] = (left[i] ?? 0) - count;
      });
      sticks.push({ stock: kind, counts: taken });
    }
  }
  return sticks;
}

function remaining(pieces: readonly CutLength[], sticks: readonly Pattern[]): number[] {
  return pieces.map(
    (piece, i) => piece.count - sticks.reduce((sum, stick) => sum + (stick.counts[i] ?? 0), 0),
  );
}

function stockLeft(stock: readonly Stock[], sticks: readonly Pattern[]): Stock[] {
  return stock.map((kind, k) => ({
    ...kind,
    count: kind.count - sticks.filter((stick) => stick.stock === k).length,
  }));
}

function dive(
  stock: readonly Stock[],
  pieces: readonly CutLength[],
  relaxed: Relaxed,
): readonly Pattern[] | undefined {
  let sticks = wholeParts(stock, pieces, relaxed);
  let now: Relaxed = relaxed;
  let first = true;
  for (;;) {
    const left = remaining(pieces, sticks);
    if (left.every((count) => count <= 0)) return sticks;
    const kept = left.flatMap((count, i) => (count > 0 ? [i] : []));
    const rest = kept.map((i) => ({ length: pieces[i]?.length ?? 0, count: left[i] ?? 0 }));
    const kinds = stockLeft(stock, sticks);
    now = relaxation(
      kinds.map((kind) => (kind.count <= 0 ? { ...kind, length: 0, count: 0 } : kind)),
      rest,
    );
    if (now.cost === undefined) return undefined;
    const whole = wholeParts(kinds, rest, now);
    const next =
      whole.length > 0 && !first ? whole : [largest(now, rest)].filter((pattern) => pattern !== undefined);
    first = false;
    if (next.length === 0) return fillRest(stock, pieces, left, sticks);
    sticks = [...sticks, ...next.map((pattern) => spread(pattern, kept, pieces.length))];
  }
}

/** The pattern used most, and of those the fullest. */
function largest(relaxed: Relaxed, pieces: readonly CutLength[]): Pattern | undefined {
  let best: (Pattern & { times: number }) | undefined;
  const full = (pattern: Pattern): number =>
    pattern.counts.reduce((sum, count, i) => sum + count * (pieces[i]?.length ?? 0), 0);
  for (const pattern of relaxed.patterns) {
    const part = pattern.times - Math.floor(pattern.times + eps);
    const bestPart = best ? best.times - Math.floor(best.times + eps) : -1;
    if (!best || part > bestPart + eps || (part > bestPart - eps && full(pattern) > full(best)))
      best = pattern;
  }
  return (
    best && {
      stock: best.stock,
      counts: best.counts.map((count, i) => Math.min(count, pieces[i]?.count ?? 0)),
    }
  );
}

function spread(pattern: Pattern, kept: readonly number[], width: number): Pattern {
  const counts = new Array<number>(width).fill(0);
  kept.forEach((i, k) => {
    counts[i] = pattern.counts[k] ?? 0;
  });
  return { stock: pattern.stock, counts };
}

/** True where the search ran to its end. */
function complete(
  stock: readonly Stock[],
  pieces: readonly CutLength[],
  wanted: readonly number[],
  begun: readonly Pattern[],
  roundUp: (cost: number) => number,
  stopAt: number,
  budget: { nodes: number; readonly most: number },
  known: () => number,
  consider: (sticks: readonly Pattern[] | undefined) => void,
): boolean {
  const spent = (sticks: readonly Pattern[]): number =>
    sticks.reduce((sum, stick) => sum + (stock[stick.stock]?.cost ?? 0), 0);
  const visit = (left: readonly number[], sticks: readonly Pattern[]): boolean => {
    const longest = left.findIndex((count) => count > 0);
    if (longest < 0) {
      consider(sticks);
      return true;
    }
    if (known() <= stopAt + eps) return true;
    if (budget.nodes >= budget.most) return false;
    budget.nodes++;
    const kept = left.flatMap((count, i) => (count > 0 ? [i] : []));
    const rest = kept.map((i) => ({ length: pieces[i]?.length ?? 0, count: left[i] ?? 0 }));
    const kinds = stockLeft(stock, sticks).map((kind) =>
      kind.count <= 0 ? { ...kind, length: 0, count: 0 } : kind,
    );
    const relaxed = relaxation(kinds, rest);
    if (relaxed.cost === undefined || roundUp(spent(sticks) + relaxed.cost) >= known() - eps) return true;
    consider(fillRest(stock, pieces, left, sticks));
    const liked = new Map(
      relaxed.patterns.map((pattern) => [keyOf(spread(pattern, kept, pieces.length)), pattern.times]),
    );
    const ways = fullPatterns(kinds, pieces, left, longest);
    const room = (pattern: Pattern): number =>
      (stock[pattern.stock]?.length ?? 0) -
      pattern.counts.reduce((sum, count, i) => sum + count * (pieces[i]?.length ?? 0), 0);
    ways.sort(
      (a, b) =>
        (liked.get(keyOf(b)) ?? 0) - (liked.get(keyOf(a)) ?? 0) ||
        room(a) - room(b) ||
        (keyOf(a) < keyOf(b) ? -1 : 1),
    );
    let whole = true;
    for (const way of ways) {
      const after = left.map((count, i) => count - (way.counts[i] ?? 0));
      if (!visit(after, [...sticks, way])) whole = false;
      if (known() <= stopAt + eps) return true;
      if (budget.nodes >= budget.most) return false;
    }
    return whole;
  };
  return visit(wanted, begun);
}

/** Patterns with the piece in them to which nothing that is still wanted can be added, for each kind of stock that is left. */
function fullPatterns(
  stock: readonly Stock[],
  pieces: readonly CutLength[],
  left: readonly number[],
  holding: number,
): Pattern[] {
  const found: Pattern[] = [];
  const counts = new Array<number>(pieces.length).fill(0);
  const visit = (kind: number, i: number, room: number): void => {
    if (i >= pieces.length) {
      const full = pieces.every(
        (piece, k) => (counts[k] ?? 0) >= (left[k] ?? 0) || piece.length > room + 1e-9,
      );
      if (full) found.push({ stock: kind, counts: counts.slice() });
      return;
    }
    const length = pieces[i]?.length ?? Infinity;
    const most = Math.min(left[i] ?? 0, Math.floor(room / length + 1e-9));
    for (let n = most; n >= (i === holding ? 1 : 0); n--) {
      counts[i] = n;
      visit(kind, i + 1, room - n * length);
    }
    counts[i] = 0;
  };
  stock.forEach((kind, k) => {
    if (kind.count > 0 && kind.length > 0) visit(k, holding, kind.length);
  });
  return found;
}

function keyOf({ stock, counts }: Pattern): string {
  return `${stock}:${counts.map((count) => String(count).padStart(3, '0')).join('')}`;
}

/** The largest amount that all costs are whole multiples of; 0 for none above a thousandth. */
function commonStep(costs: readonly number[]): number {
  const thousandths = costs.filter((cost) => cost > 0).map((cost) => Math.round(cost * 1000));
  if (
    thousandths.some((cost, i) => Math.abs(cost / 1000 - (costs.filter((each) => each > 0)[i] ?? 0)) > 1e-9)
  )
    return 0;
  const step = thousandths.reduce((a, b) => gcd(a, b), 0);
  return step / 1000;
}

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}
