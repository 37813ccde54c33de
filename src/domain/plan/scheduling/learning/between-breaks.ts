// Work that may not be interrupted is begun and finished between two breaks: starts that would lie across one are skipped.

import type { Propagator, Solver } from './solver.js';

/** A duration that holds under a statement; slot −1 for always. */
export interface TimedLength {
  readonly duration: number;
  readonly slot: number;
  readonly value: number;
}

export class BetweenBreaks implements Propagator {
  private readonly because: number[] = [];

  constructor(
    private readonly start: number,
    private readonly lengths: readonly TimedLength[],
    private readonly breaks: readonly number[],
  ) {}

  propagate(solver: Solver): boolean {
    for (const length of this.lengths) {
      if (length.slot >= 0 && solver.bound[length.slot]! < length.value) continue;
      if (!this.later(solver, length) || !this.earlier(solver, length)) return false;
    }
    return true;
  }

  private later(solver: Solver, { duration, slot, value }: TimedLength): boolean {
    for (;;) {
      const low = solver.low(this.start);
      const end = this.breaks.find((at) => at > low && at < low + duration);
      if (end === undefined) return true;
      if (!this.raise(solver, 2 * this.start, end, end - duration + 1, slot, value)) return false;
    }
  }

  private earlier(solver: Solver, { duration, slot, value }: TimedLength): boolean {
    for (;;) {
      const high = solver.high(this.start);
      const end = this.breaks.find((at) => at > high && at < high + duration);
      if (end === undefined) return true;
      if (!this.raise(solver, 2 * this.start + 1, duration - end, 1 - end, slot, value)) return false;
    }
  }

  private raise(
    solver: Solver,
    side: number,
    to: number,
    from: number,
    slot: number,
    value: number,
  ): boolean {
    this.because[0] = side;
    this.because[1] = from;
    this.because[2] = slot;
    this.because[3] = value;
    return solver.raiseBecause(side, to, this.because, slot < 0 ? 2 : 4);
  }
}
