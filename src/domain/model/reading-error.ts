// How sure is a reading? As stated on the row or by its gauge, else as usual for the kind of gauge, one standard deviation.

import { depthGaugeError } from '../geometry/gauge.js';
import type { Estate } from './estate.js';

/** mm, above zero. */
export function errorOf({ readings }: Estate, row: number): number {
  const stated = readings.error[row] ?? NaN;
  return stated > 0 ? stated : depthGaugeError;
}
