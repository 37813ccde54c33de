// A stated ± as a share of what it belongs to: `14000 h ± 30 %` and `14000 h ± 4200 h` say the same.

import type { Dimension } from '../units/dimension.js';
import type { Toleranced } from './stated.js';

/** One standard deviation of an expected life that can be believed, as a ratio: see TL511. */
export const believableSpread = { least: 0.05, most: 0.95 } as const;

/** Undefined where none is stated, or where there is nothing to be a share of. */
export function spreadRatio<D extends Dimension>({ nominal, tolerance }: Toleranced<D>): number | undefined {
  if (!tolerance) return undefined;
  if (tolerance.dimension === 'ratio') return tolerance.value;
  return nominal.value > 0 ? tolerance.value / nominal.value : undefined;
}
