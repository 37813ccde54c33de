// The least of some costs whose keys lie in a window that only moves down; each cost is two numbers compared in turn.

export class SlidingMinimum {
  private readonly keys: number[] = [];
  private readonly firsts: number[] = [];
  private readonly seconds: number[] = [];
  private head = 0;

  get empty(): boolean {
    return this.head === this.keys.length;
  }

  /** Of the least entry; only where not empty. */
  get first(): number {
    return this.firsts[this.head] ?? Infinity;
  }

  get second(): number {
    return this.seconds[this.head] ?? Infinity;
  }

  /** Keys come in falling order. An older entry that is no better can never be the least again. */
  push(key: number, first: number, second: number): void {
    for (let last = this.keys.length - 1; last >= this.head; last--) {
      const [a = 0, b = 0] = [this.firsts[last], this.seconds[last]];
      if (a < first || (a === first && b < second)) break;
      this.keys.length = this.firsts.length = this.seconds.length = last;
    }
    this.keys.push(key);
    this.firsts.push(first);
    this.seconds.push(second);
  }

  dropAbove(key: number): void {
    while (this.head < this.keys.length && (this.keys[this.head] ?? 0) > key) this.head++;
  }
}
