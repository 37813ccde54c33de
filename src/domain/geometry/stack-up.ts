// How errors of many pieces add up along a run: the worst case, and the likely case where they are independent.

import { notNegative } from './demand.js';

export interface StackUp {
  /** ±, the sum of all, mm. */
  readonly worst: number;
  /** ±, root of the sum of squares, mm. */
  readonly likely: number;
}

/** Tolerances are ± in mm, none negative; an empty list adds up to zero. */
export function stackUp(tolerances: readonly number[]): StackUp {
  let worst = 0;
  let squares = 0;
  for (const tolerance of tolerances) {
    worst += notNegative('tolerance', tolerance, 'mm');
    squares += tolerance ** 2;
  }
  return { worst, likely: Math.sqrt(squares) };
}
