// Whole sticks from the fractions of the relaxation. First best fit and fullest sticks; then dives: take patterns of the
// relaxation in whole numbers, solving again for what is left; then a search: the longest piece still wanted must come from
// some stick, so the patterns that the relaxation likes are tried, with ever more departures from its favourite (limited
// discrepancies, Harvey and Ginsberg 1995), and at last every full pattern that holds it (bin completion).

import { bestPattern, type CutLength, type CutEffort } from './best-pattern.js';
import { relaxation, type Known, type Pattern, type Relaxed, type Stock } from './relaxation.js';

export interface Whole {
  readonly sticks: readonly Pattern[] | undefined;
  readonly lowerBound: number;
  readonly nodes: number;
}

const eps = 1e-6;
/** Full patterns tried of one stick; where there are more the search is not exhaustive and says so. */
const mostPatterns = 3000;

/** The least cost in whole sticks as far as `work` goes, and what is proven. */
export function searchPatterns(
  stock: readonly Stock[],
  pieces: readonly CutLength[],
  work: CutEffort,
): Whole {
  return new PatternSearch(stock, pieces, work).run();
}

class PatternSearch {
  private readonly known: Known = new Map();
  private readonly step: number;
  private best: readonly Pattern[] | undefined;
  private bestCost = Infinity;
  private bound = 0;
  private nodes = 0;

  constructor(
    private readonly stock: readonly Stock[],
    private readonly pieces: readonly CutLength[],
    private readonly work: CutEffort,
  ) {
    this.step = commonStep(stock.map((kind) => kind.cost));
  }

  run(): Whole {
    const { stock, pieces } = this;
    const wanted = pieces.map((piece) => piece.count);
    this.consider(fillRest(stock, pieces, wanted, []));
    this.consider(this.fullestFirst(wanted, []));
    for (const stick of this.best ?? []) this.known.set(keyOf(stick), stick);
    const relaxed = relaxation(
      stock,
      pieces,
      this.work,
      this.known,
      (bound, cost) =>
        this.step > 0 &&
        this.roundUp(bound) >= cost - eps - this.step * (1 - 1e-6) &&
        this.roundUp(bound) >= this.roundUp(cost) - eps,
    );
    if (relaxed.cost === undefined && !this.best) return { sticks: undefined, lowerBound: 0, nodes: 0 };
    this.bound = this.roundUp(relaxed.bound);
    for (let lost = 0; lost <= 6 && !this.done(); lost++) this.visit(wanted, [], relaxed, { lost });
    const all = !this.done() && this.visit(wanted, [], relaxed, undefined);
    return {
      sticks: this.best,
      lowerBound: all ? this.bestCost : Math.min(this.bound, this.bestCost),
      nodes: this.nodes,
    };
  }

  private done(): boolean {
    return this.bestCost <= this.bound + eps || this.work.left <= 0;
  }

  private roundUp(cost: number): number {
    return this.step > 0 ? Math.ceil(cost / this.step - eps) * this.step : cost;
  }

  private costOf(sticks: readonly Pattern[]): number {
    return sticks.reduce((sum, stick) => sum + (this.stock[stick.stock]?.cost ?? 0), 0);
  }

  private consider(sticks: readonly Pattern[] | undefined): void {
    if (!sticks) return;
    const cost = this.costOf(sticks);
    if (cost < this.bestCost - eps) {
      this.best = sticks;
      this.bestCost = cost;
    }
  }

  /** True where everything was tried: nothing better hangs below. `within` undefined: no limit on departures. */
  private visit(
    left: readonly number[],
    sticks: readonly Pattern[],
    solved: Relaxed | undefined,
    within: { readonly lost: number } | undefined,
  ): boolean {
    const longest = left.findIndex((count) => count > 0);
    if (longest < 0) {
      this.consider(sticks);
      return true;
    }
    if (this.done()) return this.work.left > 0;
    this.nodes++;
    const kinds = stockLeft(this.stock, sticks);
    const spent = this.costOf(sticks);
    const hopeless = (bound: number): boolean => this.roundUp(spent + bound) >= this.bestCost - eps;
    const rest = this.pieces.map((piece, i) => ({ length: piece.length, count: left[i] ?? 0 }));
    const relaxed = solved ?? relaxation(kinds, rest, this.work, this.known, hopeless);
    if (this.work.left <= 0) return false;
    if (relaxed.cost === undefined || hopeless(relaxed.bound)) return true;
    this.consider(fillRest(this.stock, this.pieces, left, sticks));
    this.consider(this.fullestFirst(left, sticks));
    // Whole parts are taken at once on the way down, but for the exhaustive search.
    if (within) {
      const whole = wholeParts(kinds, rest, relaxed);
      if (whole.length > 0) return this.visit(minus(left, whole), [...sticks, ...whole], undefined, within);
    }
    const liked = favourites(relaxed, left, within ? -1 : longest, this.pieces);
    if (within) {
      for (const [k, way] of liked.slice(0, within.lost + 1).entries()) {
        this.visit(minus(left, [way]), [...sticks, way], undefined, { lost: within.lost - k });
        if (this.done()) break;
      }
      return false;
    }
    return this.tryAll(left, sticks, kinds, longest, liked);
  }

  private tryAll(
    left: readonly number[],
    sticks: readonly Pattern[],
    kinds: readonly Stock[],
    longest: number,
    liked: readonly Pattern[],
  ): boolean {
    const { ways, whole } = fullPatterns(kinds, this.pieces, left, longest);
    const rank = new Map(liked.map((pattern, k) => [keyOf(pattern), k]));
    const room = (pattern: Pattern): number =>
      (this.stock[pattern.stock]?.length ?? 0) -
      pattern.counts.reduce((sum, count, i) => sum + count * (this.pieces[i]?.length ?? 0), 0);
    const place = new Map(ways.map((way) => [way, rank.get(keyOf(way)) ?? liked.length]));
    ways.sort(
      (a, b) =>
        (place.get(a) ?? 0) - (place.get(b) ?? 0) || room(a) - room(b) || (keyOf(a) < keyOf(b) ? -1 : 1),
    );
    let all = whole;
    for (const way of ways) {
      if (!this.visit(minus(left, [way]), [...sticks, way], undefined, undefined)) all = false;
      if (this.done()) return this.work.left > 0 && this.bestCost <= this.bound + eps;
    }
    return all;
  }

  /** The fullest pattern that holds the longest piece left, again and again; undefined where the stock runs out. */
  private fullestFirst(wanted: readonly number[], begun: readonly Pattern[]): readonly Pattern[] | undefined {
    const { stock, pieces, work } = this;
    let left = [...wanted];
    const sticks = [...begun];
    const cheapest = stock.map((_, k) => k).sort((a, b) => rate(stock[a]) - rate(stock[b]) || a - b);
    for (;;) {
      const longest = left.findIndex((count) => count > 0);
      if (longest < 0) return sticks;
      if (work.left <= 0) return undefined;
      const length = pieces[longest]?.length ?? 0;
      const kinds = stockLeft(stock, sticks);
      const kind = cheapest.find(
        (k) => (kinds[k]?.count ?? 0) > 0 && (kinds[k]?.length ?? 0) >= length - 1e-9,
      );
      if (kind === undefined) return undefined;
      const rest = pieces.map((piece, i) => ({
        length: piece.length,
        count: (left[i] ?? 0) - (i === longest ? 1 : 0),
      }));
      // Longer pieces count a little more than their length, so that small ones are kept for the end.
      const worth = pieces.map(
        (piece) => piece.length * (1 + piece.length / (20 * (stock[kind]?.length ?? 1))),
      );
      const { counts } = bestPattern((stock[kind]?.length ?? 0) - length, rest, worth, work);
      const stick = { stock: kind, counts: counts.map((count, i) => count + (i === longest ? 1 : 0)) };
      sticks.push(stick);
      left = minus(left, [stick]);
    }
  }
}

function rate(kind: Stock | undefined): number {
  return kind ? kind.cost / kind.length : Infinity;
}

function minus(left: readonly number[], sticks: readonly Pattern[]): number[] {
  return left.map((count, i) => count - sticks.reduce((sum, stick) => sum + (stick.counts[i] ?? 0), 0));
}

/** Patterns of the relaxation, most used first and of those the fullest; only such as hold the piece, −1 for any. */
function favourites(
  relaxed: Relaxed,
  left: readonly number[],
  holding: number,
  pieces: readonly CutLength[],
): Pattern[] {
  const full = (pattern: Pattern): number =>
    pattern.counts.reduce((sum, count, i) => sum + count * (pieces[i]?.length ?? 0), 0);
  return relaxed.patterns
    .filter((pattern) => holding < 0 || (pattern.counts[holding] ?? 0) > 0)
    .map(({ stock, counts, times }) => ({
      times,
      pattern: { stock, counts: counts.map((count, i) => Math.min(count, left[i] ?? 0)) },
    }))
    .sort(
      (a, b) =>
        b.times - a.times ||
        full(b.pattern) - full(a.pattern) ||
        (keyOf(a.pattern) < keyOf(b.pattern) ? -1 : 1),
    )
    .map(({ pattern }) => pattern);
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
    let room = stock[kind]?.count ?? 0;
    for (let k = 0; k < Math.floor(times + eps) && room > 0; k++) {
      const taken = counts.map((count, i) => Math.min(count, left[i] ?? 0));
      if (taken.every((count) => count === 0)) break;
      taken.forEach((count, i) => {
        left[i] = (left[i] ?? 0) - count;
      });
      sticks.push({ stock: kind, counts: taken });
      room--;
    }
  }
  return sticks;
}

function stockLeft(stock: readonly Stock[], sticks: readonly Pattern[]): Stock[] {
  return stock.map((kind, k) => ({
    ...kind,
    count: kind.count - sticks.filter((stick) => stick.stock === k).length,
  }));
}

/** Patterns with the piece in them to which nothing that is still wanted can be added; `whole` where these are all of them. */
function fullPatterns(
  stock: readonly Stock[],
  pieces: readonly CutLength[],
  left: readonly number[],
  holding: number,
): { readonly ways: Pattern[]; readonly whole: boolean } {
  const ways: Pattern[] = [];
  const counts = new Array<number>(pieces.length).fill(0);
  let looks = 0;
  const visit = (kind: number, i: number, room: number): void => {
    if (looks++ > 40 * mostPatterns || ways.length >= mostPatterns) return;
    if (i >= pieces.length) {
      const full = pieces.every(
        (piece, k) => (counts[k] ?? 0) >= (left[k] ?? 0) || piece.length > room + 1e-9,
      );
      if (full) ways.push({ stock: kind, counts: counts.slice() });
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
  return { ways, whole: looks <= 40 * mostPatterns && ways.length < mostPatterns };
}

function keyOf({ stock, counts }: Pattern): string {
  return `${stock}:${counts.join(' ')}`;
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
