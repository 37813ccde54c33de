// A search that learns from its dead ends: whole-number variables with bounds, clauses over statements "x is at least v", and
// a clause learned from every conflict (lazy clause generation: Ohrimenko, Stuckey and Codish 2009; first unique implication
// point and activities as in Moskewicz et al. 2001). A statement is a slot and a value: slot 2x with v says x ≥ v, slot 2x + 1
// with v says −x ≥ v, so every bound only ever rises. Indices are made here and in the propagators, hence the `!`.

/** A part of the problem that raises bounds; it explains every raise with statements that are true at that moment. */
export interface Propagator {
  /** False where it found a conflict and said so through `solver.conflict`. */
  propagate(solver: Solver): boolean;
}

/** After waiting `lag` from one bound to another: bound[to] ≥ bound[from] + lag, where the condition holds. */
interface Arc {
  readonly from: number;
  readonly to: number;
  readonly lag: number;
  /** Slot and value; −1 for always. */
  readonly slot: number;
  readonly value: number;
}

/** Lists of watches at most; beyond it several bounds share one. */
const mostLists = 1 << 20;

/** By how much a conflict outweighs the one before when the next variable is chosen. Slow to forget: half the conflicts of 1.05. */
const freshness = 1.02;

const noReason = 0;
const byClause = 1;
const byArc = 2;
const byCondition = 3;
const byPool = 4;

export class Solver {
  readonly bound: Int32Array;
  /** Conflicts met so far: what effort is counted in. */
  conflicts = 0;
  /** Bounds raised so far, the other measure of effort. */
  raises = 0;
  level = 0;

  private readonly slots: number;
  private readonly last: Int32Array;
  private tSlot = new Int32Array(1 << 14);
  private tValue = new Int32Array(1 << 14);
  private tOld = new Int32Array(1 << 14);
  private tPrev = new Int32Array(1 << 14);
  private tKind = new Uint8Array(1 << 14);
  private tData = new Int32Array(1 << 14);
  private trail = 0;
  private read = 0;
  private readonly levels: number[] = [];
  private readonly pools: number[] = [];
  private pool = new Int32Array(1 << 15);
  private poolEnd = 0;

  private arena = new Int32Array(1 << 15);
  private arenaEnd = 0;
  /** Clauses: where each begins in the arena, how many statements, how good it is. */
  private readonly begin: number[] = [];
  private readonly size: number[] = [];
  private readonly levelsIn: number[] = [];
  /** Conflict that last needed each clause. */
  private readonly needed: number[] = [];
  private fixedClauses = 0;
  /** Watches 2c and 2c + 1 of clause c, in lists by slot and by the bound at which the watched statement becomes false. */
  private watchFrom = new Int32Array(1 << 12);
  private watchNext = new Int32Array(1 << 12);
  /** A statement of the clause that was true when last looked at: while it is, the clause need not be opened. */
  private watchSlot = new Int32Array(1 << 12);
  private watchValue = new Int32Array(1 << 12);
  private readonly heads: Int32Array;
  private readonly base: Int32Array;
  private readonly origin: Int32Array;
  private readonly shift: number;

  private readonly arcs: Arc[] = [];
  private readonly arcsFrom: number[][] = [];
  private readonly arcsTo: number[][] = [];
  private readonly arcsIf: number[][] = [];
  private readonly propagators: Propagator[] = [];
  private readonly wakes: number[][] = [];
  private readonly asleep: number[] = [];
  private queue: number[] = [];

  private readonly activity: Float64Array;
  private bump = 1;
  private readonly heap: Int32Array;
  private readonly place: Int32Array;
  private heapSize = 0;

  /** What the conflict needs, by slot. */
  private readonly need: Int32Array;
  private readonly needEntry: Int32Array;
  private readonly touched: number[] = [];
  private here = 0;
  private readonly reason: number[] = [];

  constructor(low: ArrayLike<number>, high: ArrayLike<number>) {
    const n = low.length;
    this.slots = 2 * n;
    this.bound = new Int32Array(2 * n);
    for (let x = 0; x < n; x++) {
      this.bound[2 * x] = low[x]!;
      this.bound[2 * x + 1] = -high[x]!;
    }
    this.last = new Int32Array(2 * n).fill(-1);
    for (let s = 0; s < 2 * n; s++) {
      this.arcsFrom.push([]);
      this.arcsTo.push([]);
      this.arcsIf.push([]);
      this.wakes.push([]);
    }
    this.origin = this.bound.slice();
    this.base = new Int32Array(2 * n);
    let span = 0;
    for (let x = 0; x < n; x++) span += 2 * (high[x]! - low[x]! + 2);
    this.shift = Math.max(0, Math.ceil(Math.log2(span / mostLists)));
    let lists = 0;
    for (let slot = 0; slot < 2 * n; slot++) {
      this.base[slot] = lists;
      lists += ((high[slot >> 1]! - low[slot >> 1]! + 1) >> this.shift) + 1;
    }
    this.heads = new Int32Array(lists).fill(-1);
    this.activity = new Float64Array(n);
    this.heap = new Int32Array(n);
    this.place = new Int32Array(n).fill(-1);
    for (let x = 0; x < n; x++) this.insert(x);
    this.need = new Int32Array(2 * n);
    this.needEntry = new Int32Array(2 * n).fill(-1);
  }

  low(x: number): number {
    return this.bound[2 * x]!;
  }

  high(x: number): number {
    return -this.bound[2 * x + 1]!;
  }

  fixed(x: number): boolean {
    return this.bound[2 * x]! === -this.bound[2 * x + 1]!;
  }

  /** At level 0 only. */
  addArc(from: number, to: number, lag: number, slot = -1, value = 0): void {
    const a = this.arcs.length;
    this.arcs.push({ from, to, lag, slot, value });
    this.arcsFrom[from]!.push(a);
    // Where the far bound rises too high, the condition fails: seen from the other side of `to`.
    if (slot >= 0) {
      this.arcsTo[to ^ 1]!.push(a);
      this.arcsIf[slot]!.push(a);
    }
  }

  addPropagator(propagator: Propagator, slots: Iterable<number>): void {
    const p = this.propagators.length;
    this.propagators.push(propagator);
    for (const slot of slots) this.wakes[slot]!.push(p);
    this.asleep.push(0);
    this.queue.push(p);
  }

  /** At level 0 only. `statements`: slot, value, slot, value …; at least one must be true. False where none can be. */
  addClause(statements: readonly number[]): boolean {
    if (statements.length === 2) return this.raise(statements[0]!, statements[1]!, noReason, 0);
    this.store(statements, 0);
    this.fixedClauses = this.begin.length;
    return true;
  }

  /** At level 0 only: true from now on. False where that contradicts. */
  assume(slot: number, value: number): boolean {
    return this.raise(slot, value, noReason, 0);
  }

  decide(slot: number, value: number): void {
    this.levels.push(this.trail);
    this.pools.push(this.poolEnd);
    this.level++;
    this.raise(slot, value, noReason, 0);
  }

  backTo(level: number): void {
    if (level >= this.level) return;
    const end = this.levels[level]!;
    for (let e = this.trail - 1; e >= end; e--) {
      const slot = this.tSlot[e]!;
      this.bound[slot] = this.tOld[e]!;
      this.last[slot] = this.tPrev[e]!;
      const x = slot >> 1;
      if (this.place[x]! < 0) this.insert(x);
    }
    this.trail = end;
    this.read = end;
    this.poolEnd = this.pools[level]!;
    this.levels.length = level;
    this.pools.length = level;
    this.level = level;
    for (const p of this.queue) this.asleep[p] = 1;
    this.queue.length = 0;
  }

  /** Raises all bounds that follow. False: a conflict, which `learn` must take up (or, at level 0, the end). */
  propagate(): boolean {
    for (;;) {
      while (this.read < this.trail) {
        const e = this.read++;
        const slot = this.tSlot[e]!;
        if (!this.visitClauses(slot, this.tOld[e]!, this.tValue[e]!) || !this.visitArcs(slot)) return false;
        for (const p of this.wakes[slot]!) {
          if (this.asleep[p] === 1) {
            this.asleep[p] = 0;
            this.queue.push(p);
          }
        }
      }
      const p = this.queue.shift();
      if (p === undefined) return true;
      this.asleep[p] = 1;
      if (!this.propagators[p]!.propagate(this)) return false;
    }
  }

  /** Raises a bound for reasons: `because` holds slot, value, slot, value … all true now. False on a conflict. */
  raiseBecause(slot: number, value: number, because: readonly number[], count: number): boolean {
    if (this.bound[slot]! >= value) return true;
    const at = this.poolEnd;
    this.roomInPool(count + 1);
    this.pool[at] = count;
    for (let k = 0; k < count; k++) this.pool[at + 1 + k] = because[k]!;
    this.poolEnd = at + count + 1;
    return this.raise(slot, value, byPool, at);
  }

  /** Says that these statements, all true now, cannot all be true. Always false, for `return`. */
  conflict(because: readonly number[], count: number): false {
    this.clearNeed();
    for (let k = 0; k < count; k += 2) this.require(because[k]!, because[k + 1]!);
    return false;
  }

  /** Learns from the conflict, steps back, and raises what follows. False where nothing is left: no solution. */
  learn(): boolean {
    this.conflicts++;
    if (this.level === 0) return false;
    // A conflict that lies wholly in earlier levels is met there.
    let highest = 0;
    for (const slot of this.touched) highest = Math.max(highest, this.levelOf(this.needEntry[slot]!));
    if (highest === 0) return false;
    if (highest < this.level) {
      this.backTo(highest);
    }
    const start = this.levels[this.level - 1]!;
    this.here = 0;
    for (const slot of this.touched) if (this.needEntry[slot]! >= start) this.here++;
    let e = this.trail - 1;
    let slot = 0;
    let value = 0;
    for (;;) {
      while (this.needEntry[this.tSlot[e]!] !== e) e--;
      slot = this.tSlot[e]!;
      value = this.need[slot]!;
      this.needEntry[slot] = -1;
      this.here--;
      if (this.here === 0) break;
      this.explain(e, value);
      if (this.tKind[e] === byClause) this.needed[this.tData[e]!] = this.conflicts;
      for (let k = 0; k < this.reason.length; k += 2)
        this.require(this.reason[k]!, this.reason[k + 1]!, start);
      e--;
    }
    const kept = this.shortened();
    const learned = [slot ^ 1, 1 - value];
    let back = 0;
    const seen = new Set<number>();
    for (const each of kept) {
      const level = this.levelOf(this.needEntry[each]!);
      seen.add(level);
      const where = learned.length;
      learned.push(each ^ 1, 1 - this.need[each]!);
      if (level > back) {
        back = level;
        // The second statement is the one undone last.
        [learned[2], learned[where]] = [learned[where]!, learned[2]!];
        [learned[3], learned[where + 1]] = [learned[where + 1]!, learned[3]!];
      }
    }
    this.clearNeed();
    this.bump *= freshness;
    if (this.bump > 1e100) this.rescale();
    this.backTo(back);
    if (learned.length === 2) return this.raise(learned[0]!, learned[1]!, noReason, 0);
    const c = this.store(learned, seen.size + 1);
    return this.raise(learned[0]!, learned[1]!, byClause, c);
  }

  /** The variable that was in most of the recent conflicts and is not fixed; −1 for none. */
  next(): number {
    while (this.heapSize > 0) {
      const x = this.heap[0]!;
      if (!this.fixed(x)) return x;
      this.removeTop();
    }
    return -1;
  }

  activityOf(x: number): number {
    return this.activity[x]!;
  }

  favour(x: number, by: number): void {
    this.activity[x] = this.activity[x]! + by * this.bump;
    if (this.place[x]! >= 0) this.up(this.place[x]!);
  }

  /** At level 0: forgets the worse half of what was learned once it is more than `most`. */
  forget(most: number): void {
    const learned = this.begin.length - this.fixedClauses;
    if (this.level > 0 || learned <= most) return;
    const order = Array.from({ length: learned }, (_, k) => this.fixedClauses + k);
    // Those that name few levels are kept; among nearly as good ones those that a conflict needed last.
    const tier = (c: number): number => this.levelsIn[c]! >> 2;
    order.sort((a, b) => tier(a) - tier(b) || this.needed[b]! - this.needed[a]! || b - a);
    const keep = new Uint8Array(this.begin.length).fill(1);
    order.forEach((c, rank) => {
      if (rank >= learned / 2 && this.levelsIn[c]! > 2) keep[c] = 0;
    });
    this.rebuild(keep);
  }

  private rebuild(keep: Uint8Array): void {
    this.heads.fill(-1);
    const old = this.arena;
    const begin = [...this.begin];
    const size = [...this.size];
    const levelsIn = [...this.levelsIn];
    this.begin.length = 0;
    this.size.length = 0;
    const needed = [...this.needed];
    this.levelsIn.length = 0;
    this.needed.length = 0;
    const arena = new Int32Array(old.length);
    this.arena = arena;
    this.arenaEnd = 0;
    let fixed = 0;
    for (let c = 0; c < begin.length; c++) {
      if (keep[c] === 0) continue;
      const from = begin[c]!;
      const statements: number[] = [];
      let satisfied = false;
      for (let k = 0; k < size[c]!; k += 2) {
        const slot = old[from + k]!;
        const value = old[from + k + 1]!;
        if (this.bound[slot]! >= value) satisfied = true;
        else if (this.bound[slot ^ 1]! < 1 - value) statements.push(slot, value);
      }
      if (satisfied || statements.length < 4) continue;
      if (c < this.fixedClauses) fixed++;
      this.store(statements, levelsIn[c]!, needed[c]);
    }
    this.fixedClauses = fixed;
    // Nothing below level 0 is ever explained.
    for (let e = 0; e < this.trail; e++) this.tKind[e] = noReason;
  }

  private store(statements: readonly number[], levels: number, needed = this.conflicts): number {
    const c = this.begin.length;
    const at = this.arenaEnd;
    if (at + statements.length > this.arena.length) {
      const more = new Int32Array(Math.max(this.arena.length * 2, at + statements.length));
      more.set(this.arena);
      this.arena = more;
    }
    for (let k = 0; k < statements.length; k++) this.arena[at + k] = statements[k]!;
    this.arenaEnd = at + statements.length;
    this.begin.push(at);
    this.size.push(statements.length);
    this.levelsIn.push(levels);
    this.needed.push(needed);
    if (2 * c + 2 > this.watchNext.length) {
      this.watchNext = doubled(this.watchNext);
      this.watchFrom = doubled(this.watchFrom);
      this.watchSlot = doubled(this.watchSlot);
      this.watchValue = doubled(this.watchValue);
    }
    this.watch(2 * c, statements[0]!, statements[1]!);
    this.watch(2 * c + 1, statements[2]!, statements[3]!);
    this.watchSlot[2 * c] = statements[2]!;
    this.watchValue[2 * c] = statements[3]!;
    this.watchSlot[2 * c + 1] = statements[0]!;
    this.watchValue[2 * c + 1] = statements[1]!;
    return c;
  }

  private watch(w: number, slot: number, value: number): void {
    const lost = slot ^ 1;
    const list = this.listOf(lost, 1 - value);
    this.watchFrom[w] = 1 - value;
    this.watchNext[w] = this.heads[list]!;
    this.heads[list] = w;
  }

  private listOf(slot: number, bound: number): number {
    const offset = bound - this.origin[slot]!;
    return this.base[slot]! + (offset >> this.shift);
  }

  /** A bound rose: clauses that watched a statement now false look for another, or say what follows. */
  private visitClauses(slot: number, old: number, now: number): boolean {
    const last = this.listOf(slot, now);
    for (let list = this.listOf(slot, old + 1); list <= last; list++)
      if (this.heads[list]! >= 0 && !this.visitList(list, slot, old, now)) return false;
    return true;
  }

  private visitList(list: number, slot: number, old: number, now: number): boolean {
    const { arena, bound, watchFrom, watchNext, watchSlot, watchValue } = this;
    const lost = slot ^ 1;
    let before = -1;
    let w = this.heads[list]!;
    while (w >= 0) {
      const next = watchNext[w]!;
      const from = watchFrom[w]!;
      if (from > now || from <= old || bound[watchSlot[w]!]! >= watchValue[w]!) {
        before = w;
        w = next;
        continue;
      }
      const c = w >> 1;
      const at = this.begin[c]!;
      const lostValue = 1 - from;
      if (arena[at] === lost && arena[at + 1] === lostValue) {
        arena[at] = arena[at + 2]!;
        arena[at + 1] = arena[at + 3]!;
        arena[at + 2] = lost;
        arena[at + 3] = lostValue;
      }
      const first = arena[at]!;
      const firstValue = arena[at + 1]!;
      if (bound[first]! >= firstValue) {
        watchSlot[w] = first;
        watchValue[w] = firstValue;
        before = w;
        w = next;
        continue;
      }
      const end = at + this.size[c]!;
      let k = at + 4;
      while (k < end && bound[arena[k]! ^ 1]! >= 1 - arena[k + 1]!) k += 2;
      if (k < end) {
        const other = arena[k]!;
        const otherValue = arena[k + 1]!;
        arena[k] = lost;
        arena[k + 1] = lostValue;
        arena[at + 2] = other;
        arena[at + 3] = otherValue;
        if (before < 0) this.heads[list] = next;
        else watchNext[before] = next;
        this.watch(w, other, otherValue);
        w = next;
        continue;
      }
      before = w;
      w = next;
      if (!this.raise(first, firstValue, byClause, c)) return false;
    }
    return true;
  }

  private visitArcs(slot: number): boolean {
    const { bound } = this;
    for (const a of this.arcsFrom[slot]!) {
      const arc = this.arcs[a]!;
      const value = bound[arc.from]! + arc.lag;
      if (arc.slot < 0 || bound[arc.slot]! >= arc.value) {
        if (bound[arc.to]! < value && !this.raise(arc.to, value, byArc, a)) return false;
      } else if (!this.failIfTooLate(a, arc)) return false;
    }
    for (const a of this.arcsTo[slot]!) {
      const arc = this.arcs[a]!;
      if (bound[arc.slot]! < arc.value && !this.failIfTooLate(a, arc)) return false;
    }
    for (const a of this.arcsIf[slot]!) {
      const arc = this.arcs[a]!;
      if (bound[arc.slot]! < arc.value) continue;
      const value = bound[arc.from]! + arc.lag;
      if (bound[arc.to]! < value && !this.raise(arc.to, value, byArc, a)) return false;
    }
    return true;
  }

  /** bound[from] + lag is more than `to` can ever be: the condition is false. */
  private failIfTooLate(a: number, arc: Arc): boolean {
    if (this.bound[arc.from]! + arc.lag <= -this.bound[arc.to ^ 1]!) return true;
    return this.raise(arc.slot ^ 1, 1 - arc.value, byCondition, a);
  }

  private raise(slot: number, value: number, kind: number, data: number): boolean {
    const old = this.bound[slot]!;
    if (old >= value) return true;
    if (value + this.bound[slot ^ 1]! > 0) {
      this.clearNeed();
      this.explainRaise(slot, value, kind, data, this.trail);
      for (let k = 0; k < this.reason.length; k += 2) this.require(this.reason[k]!, this.reason[k + 1]!);
      this.require(slot ^ 1, 1 - value);
      return false;
    }
    if (this.trail === this.tSlot.length) this.grow();
    const e = this.trail++;
    this.tSlot[e] = slot;
    this.tValue[e] = value;
    this.tOld[e] = old;
    this.tPrev[e] = this.last[slot]!;
    this.tKind[e] = kind;
    this.tData[e] = data;
    this.last[slot] = e;
    this.bound[slot] = value;
    this.raises++;
    return true;
  }

  private explain(e: number, value: number): void {
    this.explainRaise(this.tSlot[e]!, value, this.tKind[e]!, this.tData[e]!, e);
  }

  /** Into `reason`: what made the slot at least `value` at that place of the trail. */
  private explainRaise(slot: number, value: number, kind: number, data: number, e: number): void {
    const reason = this.reason;
    reason.length = 0;
    switch (kind) {
      case byClause: {
        const at = this.begin[data]!;
        const end = at + this.size[data]!;
        for (let k = at + 2; k < end; k += 2) reason.push(this.arena[k]! ^ 1, 1 - this.arena[k + 1]!);
        return;
      }
      case byArc: {
        const arc = this.arcs[data]!;
        reason.push(arc.from, value - arc.lag);
        if (arc.slot >= 0) reason.push(arc.slot, arc.value);
        return;
      }
      case byCondition: {
        const arc = this.arcs[data]!;
        const from = this.boundAt(arc.from, e);
        reason.push(arc.from, from, arc.to ^ 1, 1 - from - arc.lag);
        return;
      }
      case byPool: {
        const count = this.pool[data]!;
        for (let k = 1; k <= count; k++) reason.push(this.pool[data + k]!);
        return;
      }
      default:
        return;
    }
  }

  private boundAt(slot: number, e: number): number {
    let at = this.last[slot]!;
    if (at < e) return this.bound[slot]!;
    let value = this.bound[slot]!;
    while (at >= e) {
      value = this.tOld[at]!;
      at = this.tPrev[at]!;
    }
    return value;
  }

  /** Notes that the conflict needs this statement, at the place where it became true. */
  private require(slot: number, value: number, start = -1): void {
    const known = this.needEntry[slot]!;
    if (known >= 0 && this.need[slot]! >= value) return;
    let at = this.last[slot]!;
    while (at >= 0 && this.tOld[at]! >= value) at = this.tPrev[at]!;
    if (at < 0 || (this.level > 0 && at < this.levels[0]!)) return;
    if (start >= 0) {
      if (at >= start && known < start) this.here++;
      this.bumpVariable(slot >> 1);
    }
    if (known < 0) this.touched.push(slot);
    this.needEntry[slot] = at;
    this.need[slot] = value;
  }

  private clearNeed(): void {
    for (const slot of this.touched) this.needEntry[slot] = -1;
    this.touched.length = 0;
  }

  /** What is left to say once what follows from the rest is dropped. */
  private shortened(): number[] {
    const all = [...new Set(this.touched)].filter((slot) => this.needEntry[slot]! >= 0);
    return all.filter((slot) => {
      const e = this.needEntry[slot]!;
      if (this.tKind[e] === noReason) return true;
      this.explain(e, this.need[slot]!);
      for (let k = 0; k < this.reason.length; k += 2) {
        const other = this.reason[k]!;
        const value = this.reason[k + 1]!;
        const known = this.needEntry[other]!;
        // Only by what came earlier, or two statements could each be dropped for the other.
        if (known >= 0 && known < e && this.need[other]! >= value) continue;
        if (this.trueFromTheStart(other, value)) continue;
        return true;
      }
      return false;
    });
  }

  private trueFromTheStart(slot: number, value: number): boolean {
    let at = this.last[slot]!;
    while (at >= 0 && this.tOld[at]! >= value) at = this.tPrev[at]!;
    return at < 0 || at < this.levels[0]!;
  }

  private levelOf(e: number): number {
    let a = 0;
    let b = this.level;
    while (a < b) {
      const mid = (a + b) >> 1;
      if (this.levels[mid]! <= e) a = mid + 1;
      else b = mid;
    }
    return a;
  }

  private grow(): void {
    this.tSlot = doubled(this.tSlot);
    this.tValue = doubled(this.tValue);
    this.tOld = doubled(this.tOld);
    this.tPrev = doubled(this.tPrev);
    this.tData = doubled(this.tData);
    const kinds = new Uint8Array(this.tKind.length * 2);
    kinds.set(this.tKind);
    this.tKind = kinds;
  }

  private roomInPool(count: number): void {
    if (this.poolEnd + count <= this.pool.length) return;
    const more = new Int32Array(Math.max(this.pool.length * 2, this.poolEnd + count));
    more.set(this.pool);
    this.pool = more;
  }

  private bumpVariable(x: number): void {
    this.activity[x] = this.activity[x]! + this.bump;
    if (this.place[x]! >= 0) this.up(this.place[x]!);
  }

  private rescale(): void {
    for (let x = 0; x < this.activity.length; x++) this.activity[x] = this.activity[x]! * 1e-100;
    this.bump *= 1e-100;
  }

  private insert(x: number): void {
    this.heap[this.heapSize] = x;
    this.place[x] = this.heapSize;
    this.up(this.heapSize++);
  }

  private above(a: number, b: number): boolean {
    return this.activity[a]! > this.activity[b]! || (this.activity[a]! === this.activity[b]! && a < b);
  }

  private up(from: number): void {
    let at = from;
    const x = this.heap[at]!;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      const y = this.heap[parent]!;
      if (!this.above(x, y)) break;
      this.heap[at] = y;
      this.place[y] = at;
      at = parent;
    }
    this.heap[at] = x;
    this.place[x] = at;
  }

  private removeTop(): void {
    this.place[this.heap[0]!] = -1;
    const x = this.heap[--this.heapSize]!;
    if (this.heapSize === 0) return;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= this.heapSize) break;
      if (child + 1 < this.heapSize && this.above(this.heap[child + 1]!, this.heap[child]!)) child++;
      const y = this.heap[child]!;
      if (!this.above(y, x)) break;
      this.heap[at] = y;
      this.place[y] = at;
      at = child;
    }
    this.heap[at] = x;
    this.place[x] = at;
  }
}

function doubled(of: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> {
  const more = new Int32Array(of.length * 2);
  more.set(of);
  return more;
}
