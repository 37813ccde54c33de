// So much clock time at least, or at most, from the end of one thing to the beginning of another, pauses counted in.

import { leavesTime, noLater, noSooner, passed, type Pause } from '../clock.js';
import type { Propagator, Solver } from './solver.js';

/** `finish` is a variable that ends `length` before the thing itself does: a start with its duration, or a finish with 0. */
export class ClockGap implements Propagator {
  private readonly because: number[] = [];

  constructor(
    private readonly finish: number,
    private readonly length: number,
    private readonly start: number,
    private readonly bounds: { readonly least?: number | undefined; readonly most?: number | undefined },
    private readonly pauses: readonly Pause[],
  ) {}

  propagate(solver: Solver): boolean {
    const { finish, length, start, pauses } = this;
    const { least, most } = this.bounds;
    if (least !== undefined) {
      const soonest = solver.low(finish) + length;
      if (!this.raise(solver, 2 * start, passed(pauses, soonest, least), 2 * finish, soonest - length))
        return false;
      const latest = solver.high(start);
      const end = leavesTime(pauses, latest, least) - length;
      if (!this.raise(solver, 2 * finish + 1, -end, 2 * start + 1, -latest)) return false;
    }
    if (most !== undefined) {
      const latest = solver.high(finish) + length;
      const begun = noLater(pauses, latest, most);
      if (!this.raise(solver, 2 * start + 1, -begun, 2 * finish + 1, length - latest)) return false;
      const soonest = solver.low(start);
      const ended = noSooner(pauses, soonest, most) - length;
      if (!this.raise(solver, 2 * finish, ended, 2 * start, soonest)) return false;
    }
    return true;
  }

  private raise(solver: Solver, side: number, to: number, reason: number, value: number): boolean {
    this.because[0] = reason;
    this.because[1] = value;
    return solver.raiseBecause(side, to, this.because, 2);
  }
}
