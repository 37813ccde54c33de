// How does the newest of a row of readings stand against those before it? Usual is the median of the earlier ones, so
// that one odd reading among several does not move it; below two of them nothing is usual yet.

import { median } from '../../domain/wear/median.js';

export interface AgainstUsual<R> {
  readonly newest: R;
  /** Median of the earlier ones, of an even number the mean of the middle two, in their base unit. */
  readonly usual: number;
  /** Earlier ones, at least two. */
  readonly count: number;
}

/** @param readings oldest first */
export function againstUsual<R extends { readonly value: number }>(
  readings: readonly R[],
): AgainstUsual<R> | undefined {
  const newest = readings.at(-1);
  const earlier = readings.slice(0, -1).map(({ value }) => value);
  return !newest || earlier.length < 2
    ? undefined
    : { newest, usual: median(earlier), count: earlier.length };
}
