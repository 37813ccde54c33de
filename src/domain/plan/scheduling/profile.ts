// What is still free of every resource, over time: a list of moments from which on it stays the same until the next one.
// Answers "from when on is so much free for so long?" for schedules that are built activity by activity.

import type { ResourceUse } from './model.js';

export class Profile {
  private time: Int32Array;
  private free: Int32Array;
  private points = 1;

  constructor(
    private readonly capacities: readonly number[],
    room: number,
  ) {
    this.time = new Int32Array(2 * room + 2);
    this.free = new Int32Array((2 * room + 2) * capacities.length);
    this.clear();
  }

  clear(): void {
    this.points = 1;
    this.time[0] = -(2 ** 30);
    this.capacities.forEach((capacity, r) => {
      this.free[r] = capacity;
    });
  }

  /** The first time from `earliest` at which the uses fit for so long. */
  firstFit(earliest: number, duration: number, uses: readonly ResourceUse[]): number {
    if (duration === 0 || uses.length === 0) return earliest;
    const { time, free, points } = this;
    const width = this.capacities.length;
    let at = earliest;
    let p = this.pointAt(at);
    for (let q = p; q < points && time[q]! < at + duration; q++) {
      for (const { resource, amount } of uses) {
        if (free[q * width + resource]! >= amount) continue;
        // Begins again behind this one; the last point is free of everything.
        p = q + 1;
        at = time[p]!;
        break;
      }
    }
    return at;
  }

  take(at: number, duration: number, uses: readonly ResourceUse[]): void {
    if (duration === 0 || uses.length === 0) return;
    const from = this.split(at);
    const to = this.split(at + duration);
    const width = this.capacities.length;
    for (let q = from; q < to; q++)
      for (const { resource, amount } of uses) {
        const k = q * width + resource;
        this.free[k] = this.free[k]! - amount;
      }
  }

  private pointAt(at: number): number {
    let a = 0;
    let b = this.points - 1;
    while (a < b) {
      const mid = (a + b + 1) >> 1;
      if (this.time[mid]! <= at) a = mid;
      else b = mid - 1;
    }
    return a;
  }

  private split(at: number): number {
    const p = this.pointAt(at);
    if (this.time[p] === at) return p;
    const width = this.capacities.length;
    this.time.copyWithin(p + 2, p + 1, this.points);
    this.free.copyWithin((p + 1) * width, p * width, this.points * width);
    this.time[p + 1] = at;
    this.points++;
    return p + 1;
  }
}
