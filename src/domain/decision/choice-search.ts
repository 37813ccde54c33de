// A good answer to a programme that is too large to be solved to the end: every group takes one of its options, rows bound what
// the options use together. Starts where prices on the rows lead (those of the relaxed programme), mends what is beyond a row,
// then improves: one group to another option, or two groups at once where the one makes room for the other; from the best
// answer so far a few groups are set free and it begins again. Counted, not timed; nothing is drawn by chance but from a fixed
// sequence. The answer keeps every row; how far it is from the best is for a bound to say, not for this search.

export interface GroupOption {
  readonly cost: number;
  readonly uses: readonly { readonly row: number; readonly by: number }[];
}

export interface ChoiceSearch {
  /** At least one option of each group uses nothing. */
  readonly groups: readonly (readonly GroupOption[])[];
  /** What each row holds at most. */
  readonly capacity: readonly number[];
  /** Price of a unit of each row, ≥ 0. */
  readonly prices: readonly number[];
  /** How often to set some free and begin again. */
  readonly rounds: number;
  /** An answer to begin with, by group; left out: one is made by the prices. */
  readonly from?: readonly number[] | undefined;
}

/** Position of the chosen option, by group. */
export function searchChoices(problem: ChoiceSearch): readonly number[] {
  const state = new State(problem);
  state.start(problem.from);
  state.improve();
  let best = state.kept();
  let least = state.cost;
  const next = sequence();
  for (let round = 0; round < problem.rounds; round++) {
    state.free(next);
    state.improve();
    if (state.cost < least - 1e-9) {
      least = state.cost;
      best = state.kept();
    } else state.restore(best);
  }
  state.restore(best);
  return state.taken();
}

const slack = 1e-6;
/** Groups set free at once. */
const freed = 10;

class State {
  private readonly chosen: Int32Array;
  private readonly load: Float64Array;
  private readonly most: Float64Array;
  private readonly users: Set<number>[];
  /** Options of a group from the cheapest. */
  private readonly byCost: readonly (readonly Ranked[])[];
  /** Where the chosen option uses nothing. */
  private readonly idle: readonly number[];
  cost = 0;

  constructor(private readonly problem: ChoiceSearch) {
    const { groups, capacity } = problem;
    this.chosen = new Int32Array(groups.length);
    this.load = new Float64Array(capacity.length);
    this.most = Float64Array.from(capacity, (value) => value + slack);
    this.users = capacity.map(() => new Set<number>());
    this.byCost = groups.map((options) =>
      options
        .map(({ cost, uses }, k) => ({
          k,
          cost,
          row: uses.map((use) => use.row),
          by: uses.map((use) => use.by),
        }))
        .sort((a, b) => a.cost - b.cost || a.k - b.k),
    );
    this.idle = this.byCost.map((options) => options.findIndex(({ row }) => row.length === 0));
    this.idle.forEach((at, g) => {
      this.chosen[g] = at;
      this.cost += this.ranked(g, at).cost;
    });
  }

  private ranked(g: number, at: number): Ranked {
    return this.byCost[g]?.[at] ?? nowhere;
  }

  private now(g: number): Ranked {
    return this.ranked(g, this.chosen[g] ?? 0);
  }

  taken(): readonly number[] {
    return Array.from(this.chosen, (at, g) => this.ranked(g, at).k);
  }

  /** As it stands, to be put back. */
  kept(): Int32Array {
    return this.chosen.slice();
  }

  restore(kept: Int32Array): void {
    kept.forEach((at, g) => {
      if (at !== this.chosen[g]) this.put(g, at);
    });
  }

  start(from: readonly number[] | undefined): void {
    from?.forEach((k, g) => this.put(g, this.byCost[g]?.findIndex((option) => option.k === k) ?? 0));
    if (!from) this.insert(this.byCost.map((_, g) => g));
  }

  /** Those with most to gain first, each to its best option at the prices that still fits. */
  private insert(groups: readonly number[]): void {
    const regret = (g: number): number => this.now(g).cost - this.priced(g, this.best(g));
    const order = [...groups].map((g) => ({ g, by: regret(g) })).sort((a, b) => b.by - a.by || a.g - b.g);
    for (const { g } of order) {
      let [at, least] = [this.chosen[g] ?? 0, Infinity];
      this.byCost[g]?.forEach((option, k) => {
        const price = this.priced(g, k);
        if (price < least && this.roomFor(option)) [at, least] = [k, price];
      });
      if (at !== this.chosen[g]) this.put(g, at);
    }
  }

  private priced(g: number, at: number): number {
    const { cost, row, by } = this.ranked(g, at);
    const { prices } = this.problem;
    return row.reduce((sum, r, n) => sum + (by[n] ?? 0) * (prices[r] ?? 0), cost);
  }

  private best(g: number): number {
    return (this.byCost[g] ?? []).reduce((a, _, k) => (this.priced(g, k) < this.priced(g, a) ? k : a), 0);
  }

  /** Some that use one row, and some of another. */
  free(next: (below: number) => number): void {
    const out: number[] = [];
    for (let n = 0; n < 2; n++) {
      const users = [...(this.users[next(this.users.length)] ?? [])].sort((a, b) => a - b);
      for (let m = 0; m < freed && users.length > 0; m++) out.push(...users.splice(next(users.length), 1));
    }
    for (const g of new Set(out)) this.put(g, this.idle[g] ?? 0);
    this.insert([...new Set(out)]);
  }

  improve(): void {
    for (let better = true; better;) {
      better = false;
      for (let g = 0; g < this.chosen.length; g++) if (this.improveOne(g)) better = true;
    }
  }

  /** To the cheapest option that fits, or for which another group makes room at less than is gained. */
  private improveOne(g: number): boolean {
    const now = this.now(g);
    const options = this.byCost[g] ?? [];
    this.change(now, -1);
    for (let at = 0; at < options.length; at++) {
      const option = options[at] ?? nowhere;
      const gain = now.cost - option.cost;
      if (gain <= 1e-9) break;
      const room = this.roomFor(option) ? 'now' : this.makeRoom(g, option, gain);
      if (!room) continue;
      this.change(now, 1);
      if (room !== 'now') this.put(room.other, room.at);
      this.put(g, at);
      return true;
    }
    this.change(now, 1);
    return false;
  }

  /** With `g` taken out: who can step aside so that it can have the option? */
  private makeRoom(g: number, wanted: Ranked, gain: number): { other: number; at: number } | undefined {
    const full = wanted.row.find(
      (row, n) => (this.load[row] ?? 0) + (wanted.by[n] ?? 0) > (this.most[row] ?? 0),
    );
    if (full === undefined) return undefined;
    this.change(wanted, 1);
    for (const other of this.users[full] ?? []) {
      if (other === g) continue;
      const now = this.now(other);
      this.change(now, -1);
      const fits = this.withinRows(wanted.row) ? this.cheaperThan(other, now.cost + gain) : undefined;
      this.change(now, 1);
      if (fits === undefined) continue;
      this.change(wanted, -1);
      return { other, at: fits };
    }
    this.change(wanted, -1);
    return undefined;
  }

  private cheaperThan(g: number, cost: number): number | undefined {
    const options = this.byCost[g] ?? [];
    for (let at = 0; at < options.length; at++) {
      const option = options[at] ?? nowhere;
      if (option.cost >= cost - 1e-9) return undefined;
      if (at !== this.chosen[g] && this.roomFor(option)) return at;
    }
    return undefined;
  }

  private roomFor({ row, by }: Ranked): boolean {
    for (let n = 0; n < row.length; n++) {
      const r = row[n] ?? 0;
      if ((this.load[r] ?? 0) + (by[n] ?? 0) > (this.most[r] ?? 0)) return false;
    }
    return true;
  }

  private withinRows(rows: readonly number[]): boolean {
    return rows.every((row) => (this.load[row] ?? 0) <= (this.most[row] ?? 0));
  }

  private change({ row, by }: Ranked, sign: number): void {
    for (let n = 0; n < row.length; n++) {
      const r = row[n] ?? 0;
      this.load[r] = (this.load[r] ?? 0) + sign * (by[n] ?? 0);
    }
  }

  private put(g: number, at: number): void {
    const before = this.now(g);
    const after = this.ranked(g, at);
    this.change(before, -1);
    this.change(after, 1);
    for (const row of before.row) this.users[row]?.delete(g);
    for (const row of after.row) this.users[row]?.add(g);
    this.chosen[g] = at;
    this.cost += after.cost - before.cost;
  }
}

interface Ranked {
  readonly k: number;
  readonly cost: number;
  readonly row: readonly number[];
  readonly by: readonly number[];
}
const nowhere: Ranked = { k: 0, cost: Infinity, row: [], by: [] };

/** A fixed sequence (linear congruence, the constants of Numerical Recipes). */
function sequence(): (below: number) => number {
  let state = 1;
  return (below) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 4_294_967_296) * below);
  };
}
