// The least of some costs whose keys lie in a window that only moves down; each cost is two numbers compared in turn.
// Plain arrays that never shrink, because this is the inner loop of the layout search.

export class SlidingMinimum {
  private readonly keys: Int32Array;
  private readonly firsts: Float64Array;
  private readonly seconds: Float64Array;
  private head = 0;
  private tail = 0;

  /** `capacity`: how many costs will ever be pushed. */
  constructor(capacity: number) {
    this.keys = new Int32Array(capacity);
    this.firsts = new Float64Array(capacity);
    this.seconds = new Float64Array(capacity);
  }

  get empty(): boolean {
    return this.head === this.tail;
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
    let last = this.tail - 1;
    // `last` lies between head and tail, which lie within the arrays.
    while (
      last >= this.head &&
      (this.firsts[last]! > first || (this.firsts[last] === first && this.seconds[last]! >= second))
    )
      last--;
    this.tail = last + 1;
    this.keys[this.tail] = key;
    this.firsts[this.tail] = first;
    this.seconds[this.tail] = second;
    this.tail++;
  }

  dropAbove(key: number): void {
    while (this.head < this.tail && this.keys[this.head]! > key) this.head++; // below tail, as above
  }
}
