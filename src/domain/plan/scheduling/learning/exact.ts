// The shortest schedule by a search that learns: starts, ways and the order of pairs that cannot overlap as variables; every
// schedule found lowers the limit, until nothing shorter is possible or the allowed number of conflicts is spent. Counted in
// conflicts and raised bounds, never in time, so the same problem always gives the same answer.

import { moveBetween, overloads, type WorkMode, type Model } from '../model.js';
import type { Timing } from '../serial.js';
import { BetweenBreaks, type TimedLength } from './between-breaks.js';
import { ClockGap } from './clock-gap.js';
import { Solver } from './solver.js';
import { TimeTable, type TimedUse } from './time-table.js';

export interface ExactAnswer {
  /** Undefined where none was found within the limit. */
  readonly best: Timing | undefined;
  /** True where nothing shorter than `best`, or than the limit, exists. */
  readonly complete: boolean;
  readonly conflicts: number;
}

export interface SearchBudget {
  readonly conflicts: number;
  /** Bounds raised: what a conflict costs grows with the size of the problem. */
  readonly raises: number;
}

/**
 * Looks for schedules of at most `limit`, ever shorter ones, down to `stopAt`. `hint` is a schedule that it begins near to; it
 * need not be allowed itself.
 */
export function searchExactly(
  model: Model,
  hint: Timing,
  limit: number,
  stopAt: number,
  most: SearchBudget,
): ExactAnswer {
  return new Search(model, hint, limit).run(stopAt, most);
}

interface OpenPair {
  readonly i: number;
  readonly j: number;
  /** Statement that i is before j, and that j is before i. */
  readonly ij: readonly [slot: number, value: number];
  readonly ji: readonly [slot: number, value: number];
  /** They can never overlap, however they are done. */
  readonly always: boolean;
}

interface Moved {
  readonly i: number;
  readonly j: number;
  /** Statement that i is before j; undefined where that is sure. */
  readonly order: readonly [slot: number, value: number] | undefined;
  readonly variable: number;
}

class Search {
  private readonly solver: Solver;
  private readonly n: number;
  private best: Timing | undefined;
  private readonly end: number;
  /** First variable of the ways of each activity, −1 where there is one way only; of its finish, likewise. */
  private readonly ways: Int32Array;
  private readonly finish: Int32Array;
  private readonly low: number[] = [];
  private readonly high: number[] = [];
  /** Value that each variable is tried with first. */
  private phase: Int32Array;
  private ok = true;

  constructor(
    private readonly model: Model,
    private hint: Timing,
    limit: number,
  ) {
    const { n, activities, head, tail, shortest } = model;
    this.n = n;
    this.ways = new Int32Array(n).fill(-1);
    this.finish = new Int32Array(n).fill(-1);
    for (let i = 0; i < n; i++) this.variable(head[i]!, limit - tail[i]! - shortest[i]!);
    this.end = this.variable(0, limit);
    activities.forEach(({ modes }, i) => {
      if (modes.length === 1) return;
      this.finish[i] = this.variable(head[i]! + shortest[i]!, limit - tail[i]!);
      this.ways[i] = this.low.length;
      for (const _ of modes) this.variable(0, 1);
    });
    const pairs = this.openPairs();
    const moves = this.moves(pairs);
    this.phase = new Int32Array(this.low.length);
    activities.forEach((_, i) => {
      this.phase[i] = hint.start[i]!;
      if (this.ways[i]! >= 0) this.phase[this.ways[i]! + hint.mode[i]!] = 1;
    });
    this.ok = this.low.every((each, x) => each <= this.high[x]!);
    // Where the limit leaves no room for a chain there is nothing to search.
    this.solver = new Solver(this.low, this.ok ? this.high : this.low);
    if (!this.ok) return;
    this.bindWays();
    this.bindOrder();
    this.bindPairs(pairs);
    this.bindMoves(moves);
    this.bindResources();
    this.bindBreaks();
  }

  private variable(low: number, high: number): number {
    this.low.push(low);
    this.high.push(high);
    return this.low.length - 1;
  }

  run(stopAt: number, most: SearchBudget): ExactAnswer {
    const { solver } = this;
    let complete = !this.ok;
    let restart = 0;
    let left = 0;
    let inOrder = true;
    while (!complete && (this.best?.makespan ?? Infinity) > stopAt) {
      if (left <= 0) {
        solver.backTo(0);
        solver.forget(3000 + 50 * restart);
        restart++;
        inOrder = restart % 8 === 1;
        left = 128 * luby(restart);
        if (solver.conflicts >= most.conflicts || solver.raises >= most.raises) break;
      }
      if (!solver.propagate()) {
        left--;
        if (!solver.learn()) complete = true;
        continue;
      }
      if (this.decide(inOrder)) continue;
      const makespan = this.keep();
      solver.backTo(0);
      if (!solver.assume(2 * this.end + 1, 1 - makespan)) complete = true;
    }
    const done = complete || (this.best?.makespan ?? Infinity) <= stopAt;
    return { best: this.best, complete: done, conflicts: solver.conflicts };
  }

  /** False where everything is decided. */
  private decide(inOrder: boolean): boolean {
    const { solver } = this;
    if (inOrder) return this.decideInOrder();
    const x = solver.next();
    if (x < 0) return false;
    const low = solver.low(x);
    const high = solver.high(x);
    const before = this.phase[x]!;
    if (x < this.n) {
      // Near where it lies in the best schedule so far.
      if (before >= high) solver.decide(2 * x, high);
      else solver.decide(2 * x + 1, -Math.max(low, before));
    } else if (high - low > 1) solver.decide(2 * x + 1, -((low + high) >> 1));
    else if (before > low) solver.decide(2 * x, high);
    else solver.decide(2 * x + 1, -low);
    return true;
  }

  /** The one that can begin first, as soon as it can. */
  private decideInOrder(): boolean {
    const { solver, n } = this;
    let next = -1;
    let bestLow = 0;
    let bestHigh = 0;
    for (let i = 0; i < n; i++) {
      if (solver.fixed(i) && this.settled(i)) continue;
      const low = solver.low(i);
      const high = solver.high(i);
      if (next < 0 || low < bestLow || (low === bestLow && high < bestHigh)) {
        next = i;
        bestLow = low;
        bestHigh = high;
      }
    }
    if (next < 0) {
      const x = solver.next();
      if (x < 0) return false;
      solver.decide(2 * x + 1, -solver.low(x));
      return true;
    }
    if (!this.settled(next)) {
      solver.decide(2 * (this.ways[next]! + this.likeliest(next)), 1);
      return true;
    }
    solver.decide(2 * next + 1, -bestLow);
    return true;
  }

  /** The way of the best schedule so far where it is still open, else the shortest that is. */
  private likeliest(i: number): number {
    const first = this.ways[i]!;
    let way = -1;
    this.model.activities[i]!.modes.forEach((mode, m) => {
      if (this.solver.fixed(first + m)) return;
      const usual = this.phase[first + m] === 1;
      if (way < 0 || usual) way = m;
      else if (
        this.phase[first + way] !== 1 &&
        mode.duration < this.model.activities[i]!.modes[way]!.duration
      )
        way = m;
    });
    return way;
  }

  private settled(i: number): boolean {
    const first = this.ways[i]!;
    if (first < 0) return true;
    for (let m = 0; m < this.model.activities[i]!.modes.length; m++)
      if (!this.solver.fixed(first + m)) return false;
    return true;
  }

  /** Notes the schedule that all bounds now say; its length. */
  private keep(): number {
    const { solver, n } = this;
    const start = Int32Array.from({ length: n }, (_, i) => solver.low(i));
    const mode = Int32Array.from({ length: n }, (_, i) => {
      const first = this.ways[i]!;
      if (first < 0) return 0;
      return this.model.activities[i]!.modes.findIndex((_, m) => solver.low(first + m) === 1);
    });
    let makespan = 0;
    for (let i = 0; i < n; i++)
      makespan = Math.max(makespan, start[i]! + this.model.activities[i]!.modes[mode[i]!]!.duration);
    this.best = { start, mode, makespan };
    this.phase = Int32Array.from({ length: this.low.length }, (_, x) => solver.low(x));
    return makespan;
  }

  private bindWays(): void {
    const { solver, model } = this;
    model.activities.forEach(({ modes }, i) => {
      const first = this.ways[i]!;
      if (first < 0) return;
      const finish = this.finish[i]!;
      this.addArc(i, finish, model.shortest[i]!);
      const longest = Math.max(...modes.map((mode) => mode.duration));
      // finish ≤ start + longest
      this.addArc(finish, i, -longest);
      modes.forEach((mode, m) => {
        this.addArc(i, finish, mode.duration, 2 * (first + m), 1);
        this.addArc(finish, i, -mode.duration, 2 * (first + m), 1);
        for (let k = 0; k < m; k++) solver.addClause([2 * (first + m) + 1, 0, 2 * (first + k) + 1, 0]);
      });
      solver.addClause(modes.flatMap((_, m) => [2 * (first + m), 1]));
    });
  }

  /** variable[to] ≥ variable[from] + lag. */
  private addArc(from: number, to: number, lag: number, slot = -1, value = 0): void {
    this.solver.addArc(2 * from, 2 * to, lag, slot, value);
    this.solver.addArc(2 * to + 1, 2 * from + 1, lag, slot, value);
  }

  private addWait(i: number, to: number, lag: number, slot = -1, value = 0): void {
    const finish = this.finish[i]!;
    if (finish >= 0) this.addArc(finish, to, lag, slot, value);
    else this.addArc(i, to, this.model.shortest[i]! + lag, slot, value);
  }

  private bindOrder(): void {
    const { model } = this;
    model.waits.forEach((list, j) => {
      for (const { on, least, clock } of list) {
        this.addWait(on, j, least);
        if (clock > 0) this.addClock(on, j, { least: clock });
      }
      this.addWait(j, this.end, 0);
    });
    for (const { first, then, most, byClock } of model.within) {
      if (byClock) {
        this.addClock(first, then, { most });
        continue;
      }
      const finish = this.finish[first]!;
      if (finish >= 0) this.addArc(then, finish, -most);
      else this.addArc(then, first, -most - model.shortest[first]!);
    }
  }

  private addClock(first: number, then: number, bounds: { least?: number; most?: number }): void {
    const finish = this.finish[first]!;
    const of = finish >= 0 ? finish : first;
    const length = finish >= 0 ? 0 : this.model.shortest[first]!;
    const pauses = bounds.most === undefined ? (this.model.pauses ?? []) : this.model.nights;
    const gap = new ClockGap(of, length, then, bounds, pauses);
    this.solver.addPropagator(gap, [2 * of, 2 * of + 1, 2 * then, 2 * then + 1]);
  }

  /** Pairs of which it is not yet said which is first, and of which one must be. */
  private openPairs(): OpenPair[] {
    const { n, before, apart, activities, resources } = this.model;
    const found: OpenPair[] = [];
    for (let j = 1; j < n; j++) {
      for (let i = 0; i < j; i++) {
        if (before[i * n + j] || before[j * n + i]) continue;
        const always = apart[i * n + j] === 1;
        const [a, b] = [activities[i]!.modes, activities[j]!.modes];
        if (
          !always &&
          (a.length + b.length === 2 || !a.some((x) => b.some((y) => overloads(resources, x, y))))
        )
          continue;
        const x = this.variable(0, 1);
        // Each of the two orders for itself where neither may be needed.
        const other = always ? x : this.variable(0, 1);
        found.push({ i, j, ij: [2 * x, 1], ji: always ? [2 * x + 1, 0] : [2 * other, 1], always });
      }
    }
    return found;
  }

  private bindPairs(pairs: readonly OpenPair[]): void {
    const { solver, model } = this;
    for (const { i, j, ij, ji, always } of pairs) {
      this.addWait(i, j, 0, ...ij);
      this.addWait(j, i, 0, ...ji);
      if (always) continue;
      solver.addClause([ij[0] ^ 1, 1 - ij[1], ji[0] ^ 1, 1 - ji[1]]);
      this.eachWays(i, j, (x, y, notBoth) => {
        if (overloads(model.resources, x, y)) solver.addClause([...ij, ...ji, ...notBoth]);
      });
    }
  }

  /** Every way of the one with every way of the other, and the statements of which one is true unless both are taken. */
  private eachWays(
    i: number,
    j: number,
    visit: (x: WorkMode, y: WorkMode, notBoth: readonly number[]) => void,
  ): void {
    const not = (of: number, way: number): number[] =>
      this.ways[of]! < 0 ? [] : [2 * (this.ways[of]! + way) + 1, 0];
    this.model.activities[i]!.modes.forEach((x, k) => {
      this.model.activities[j]!.modes.forEach((y, l) => visit(x, y, [...not(i, k), ...not(j, l)]));
    });
  }

  /** Pairs between which something both use may have to be moved, with a variable for each direction that may need it. */
  private moves(pairs: readonly OpenPair[]): readonly Moved[] {
    const { n, before, resources } = this.model;
    if (!resources.some((resource) => (resource.move ?? 0) > 0)) return [];
    const open = new Map(pairs.map((pair) => [pair.i * n + pair.j, pair]));
    const found: Moved[] = [];
    for (let j = 1; j < n; j++) {
      for (let i = 0; i < j; i++) {
        let most = 0;
        this.eachWays(i, j, (x, y) => {
          most = Math.max(most, moveBetween(resources, x, y));
        });
        if (most === 0) continue;
        const pair = open.get(i * n + j);
        if (before[i * n + j] || pair) found.push({ i, j, order: pair?.ij, variable: this.variable(0, 1) });
        if (before[j * n + i] || pair)
          found.push({ i: j, j: i, order: pair?.ji, variable: this.variable(0, 1) });
      }
    }
    return found;
  }

  private bindMoves(moves: readonly Moved[]): void {
    const { solver, model } = this;
    for (const { i, j, order, variable } of moves) {
      let move = 0;
      this.eachWays(i, j, (x, y, notBoth) => {
        const time = moveBetween(model.resources, x, y);
        if (time === 0) return;
        // Different platforms may take different times: the arc has the longest, so others get none of their own.
        move = Math.max(move, time);
        solver.addClause([2 * variable, 1, ...(order ? [order[0] ^ 1, 1 - order[1]] : []), ...notBoth]);
      });
      this.addWait(i, j, move, 2 * variable, 1);
    }
  }

  private bindBreaks(): void {
    const { model, solver } = this;
    const breaks = model.breaks ?? [];
    model.activities.forEach(({ whole, modes, room = 0 }, i) => {
      if (!whole || breaks.length === 0) return;
      const first = this.ways[i]!;
      const lengths: TimedLength[] = [{ duration: model.shortest[i]! + room, slot: -1, value: 0 }];
      if (first >= 0)
        modes.forEach((mode, m) =>
          lengths.push({ duration: mode.duration + room, slot: 2 * (first + m), value: 1 }),
        );
      const slots = [2 * i, 2 * i + 1, ...lengths.flatMap(({ slot }) => (slot < 0 ? [] : [slot]))];
      solver.addPropagator(new BetweenBreaks(i, lengths, breaks), slots);
    });
  }

  private bindResources(): void {
    const { solver, model } = this;
    model.resources.forEach(({ capacity }, r) => {
      const uses: TimedUse[] = [];
      const slots = new Set<number>();
      model.activities.forEach(({ modes }, i) => {
        modes.forEach((mode, m) => {
          const amount = mode.uses.find((use) => use.resource === r)?.amount ?? 0;
          if (amount === 0 || mode.duration === 0) return;
          const first = this.ways[i]!;
          uses.push({
            start: i,
            duration: mode.duration,
            amount,
            slot: first < 0 ? -1 : 2 * (first + m),
            value: 1,
          });
          slots.add(2 * i).add(2 * i + 1);
          if (first >= 0) slots.add(2 * (first + m));
        });
      });
      if (uses.length > 1) solver.addPropagator(new TimeTable(uses, capacity), slots);
    });
  }
}

/** 1 1 2 1 1 2 4 …: lengths of attempts (Luby, Sinclair and Zuckerman 1993); from k = 1. */
function luby(k: number): number {
  let size = 1;
  while (size < k + 1) size *= 2;
  if (size === k + 1) return size / 2;
  return luby(k - size / 2 + 1);
}
