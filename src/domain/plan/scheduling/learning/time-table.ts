// One resource over time: where activities must be under way whatever happens (between latest start and earliest finish) they
// load it; a load above capacity is a conflict, and an activity for which no room is left there is pushed past it (time-table
// reasoning, Lahrichi 1982; explained at one moment of the overload, Schutt, Feydy, Stuckey and Wallace 2011).

import type { Propagator, Solver } from './solver.js';

export interface TimedUse {
  /** Variable of the start. */
  readonly start: number;
  readonly duration: number;
  readonly amount: number;
  /** Statement under which it is used at all; slot −1 for always. */
  readonly slot: number;
  readonly value: number;
}

export class TimeTable implements Propagator {
  private readonly byStart: number[];
  private readonly byFinish: number[];
  private readonly from: Int32Array;
  private readonly to: Int32Array;
  private readonly segFrom: Int32Array;
  private readonly segTo: Int32Array;
  private readonly segLoad: Int32Array;
  private segments = 0;
  private readonly because: number[] = [];

  constructor(
    private readonly uses: readonly TimedUse[],
    private readonly capacity: number,
  ) {
    const n = uses.length;
    this.byStart = uses.map((_, i) => i);
    this.byFinish = uses.map((_, i) => i);
    this.from = new Int32Array(n);
    this.to = new Int32Array(n);
    this.segFrom = new Int32Array(2 * n + 2);
    this.segTo = new Int32Array(2 * n + 2);
    this.segLoad = new Int32Array(2 * n + 2);
  }

  propagate(solver: Solver): boolean {
    const { uses, from, to } = this;
    for (let i = 0; i < uses.length; i++) {
      const use = uses[i]!;
      from[i] = solver.high(use.start);
      to[i] = solver.low(use.start) + use.duration;
      // No part in the profile: sorted behind everything.
      if (from[i]! >= to[i]! || !holds(solver, use)) from[i] = to[i] = far;
    }
    const over = this.sweep();
    if (over >= 0) return this.overload(solver, over);
    if (this.segments === 0) return true;
    for (let i = 0; i < uses.length; i++) {
      const use = uses[i]!;
      if (solver.fixed(use.start) || !holds(solver, use)) continue;
      if (!this.later(solver, i, use) || !this.earlier(solver, i, use)) return false;
    }
    return true;
  }

  /** Fills the segments; a moment of overload, or −1. */
  private sweep(): number {
    const { uses, from, to, byStart, byFinish } = this;
    sortBy(byStart, from);
    sortBy(byFinish, to);
    let load = 0;
    let at = 0;
    let s = 0;
    let f = 0;
    this.segments = 0;
    const n = uses.length;
    while (f < n) {
      const start = s < n ? from[byStart[s]!]! : far;
      const finish = to[byFinish[f]!]!;
      if (finish === far) break;
      const time = start < finish ? start : finish;
      if (time > at && load > 0) {
        this.segFrom[this.segments] = at;
        this.segTo[this.segments] = time;
        this.segLoad[this.segments++] = load;
        if (load > this.capacity) return at;
      }
      at = time;
      while (f < n && to[byFinish[f]!]! === time) load -= uses[byFinish[f++]!]!.amount;
      while (s < n && from[byStart[s]!]! === time) load += uses[byStart[s++]!]!.amount;
    }
    return -1;
  }

  private later(solver: Solver, i: number, use: TimedUse): boolean {
    const { segFrom, segTo, segLoad, from, to, capacity } = this;
    const { start, duration, amount } = use;
    let low = solver.low(start);
    let k = firstAfter(segTo, this.segments, low);
    for (; k < this.segments && segFrom[k]! < low + duration; k++) {
      const own = from[i]! <= segFrom[k]! && segTo[k]! <= to[i]! ? amount : 0;
      if (segLoad[k]! - own + amount <= capacity) continue;
      while (low < segTo[k]!) {
        const time = Math.min(segTo[k]!, low + duration) - 1;
        const count = this.explain(time, capacity - amount, i, 2 * start, time + 1 - duration, use);
        if (!solver.raiseBecause(2 * start, time + 1, this.because, count)) return false;
        low = time + 1;
      }
    }
    return true;
  }

  private earlier(solver: Solver, i: number, use: TimedUse): boolean {
    const { segFrom, segTo, segLoad, from, to, capacity } = this;
    const { start, duration, amount } = use;
    let high = solver.high(start);
    let k = firstAfter(segTo, this.segments, high + duration);
    if (k === this.segments || segFrom[k]! >= high + duration) k--;
    for (; k >= 0 && segTo[k]! > high; k--) {
      const own = from[i]! <= segFrom[k]! && segTo[k]! <= to[i]! ? amount : 0;
      if (segLoad[k]! - own + amount <= capacity) continue;
      while (high + duration > segFrom[k]!) {
        const time = Math.max(segFrom[k]!, high);
        const count = this.explain(time, capacity - amount, i, 2 * start + 1, -time, use);
        if (!solver.raiseBecause(2 * start + 1, duration - time, this.because, count)) return false;
        high = time - duration;
      }
    }
    return true;
  }

  private overload(solver: Solver, time: number): false {
    const count = this.explain(time, this.capacity, -1, -1, 0, undefined);
    return solver.conflict(this.because, count);
  }

  /** Statements by which more than `room` is in use at the time, `besides` left out; and the one given. */
  private explain(
    time: number,
    room: number,
    besides: number,
    slot: number,
    value: number,
    own: TimedUse | undefined,
  ): number {
    const { uses, from, to, because } = this;
    let over = -room - 1;
    for (let i = 0; i < uses.length; i++)
      if (i !== besides && from[i]! <= time && time < to[i]!) over += uses[i]!.amount;
    let count = 0;
    const say = (which: number, much: number): void => {
      because[count++] = which;
      because[count++] = much;
    };
    if (slot >= 0) say(slot, value);
    if (own && own.slot >= 0) say(own.slot, own.value);
    for (let i = 0; i < uses.length; i++) {
      if (i === besides || from[i]! > time || time >= to[i]!) continue;
      const use = uses[i]!;
      if (use.amount <= over) {
        over -= use.amount;
        continue;
      }
      say(2 * use.start, time + 1 - use.duration);
      say(2 * use.start + 1, -time);
      if (use.slot >= 0) say(use.slot, use.value);
    }
    return count;
  }
}

const far = 2 ** 30;

function holds(solver: Solver, use: TimedUse): boolean {
  return use.slot < 0 || solver.bound[use.slot]! >= use.value;
}

/** Nearly sorted already from the last time, so by insertion. */
function sortBy(order: number[], key: Int32Array): void {
  for (let k = 1; k < order.length; k++) {
    const i = order[k]!;
    const value = key[i]!;
    let at = k;
    while (at > 0 && key[order[at - 1]!]! > value) {
      order[at] = order[at - 1]!;
      at--;
    }
    order[at] = i;
  }
}

/** First segment that ends after the time. */
function firstAfter(ends: Int32Array, count: number, time: number): number {
  let a = 0;
  let b = count;
  while (a < b) {
    const mid = (a + b) >> 1;
    if (ends[mid]! > time) b = mid;
    else a = mid + 1;
  }
  return a;
}
