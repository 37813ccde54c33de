// Which few units stand for many, where only the reading error and the duty noise are asked for? An even choice of those with two
// thicknesses or more; colours and lives, which tell nothing of either, are left out.
// Index arithmetic runs within lengths made here and in reduce.ts, so `!` after an index is safe.

import type { Units } from '../reduce.js';

export interface Sample {
  readonly units: Units;
  /** Unit of the whole for each of the sample. */
  readonly chosen: readonly number[];
}

export function sampleOf(units: Units, most: number): Sample {
  const able: number[] = [];
  for (let unit = 0; unit < units.count; unit++)
    if (units.start[unit + 1]! - units.start[unit]! >= 2) able.push(unit);
  const size = Math.min(most, able.length);
  const chosen = Array.from({ length: size }, (_, k) => able[Math.floor((k * able.length) / size)]!);
  const start = new Int32Array(size + 1);
  chosen.forEach((unit, k) => (start[k + 1] = start[k]! + units.start[unit + 1]! - units.start[unit]!));
  const none = new Float64Array(0);
  const rows = (column: Float64Array): Float64Array => rowsOf(units, chosen, start, column);
  return {
    chosen,
    units: {
      ...units,
      count: size,
      start,
      exposure: rows(units.exposure),
      wear: rows(units.wear),
      reading: new Int32Array(start[size]!),
      edgeStart: new Int32Array(size + 1),
      edgeDepth: none,
      edgeTolerance: none,
      edgeReached: none,
      edgeNotYet: none,
      life: new Float64Array(size).fill(NaN),
      lifeSpread: new Float64Array(size),
      error: rows(units.error),
      day: rows(units.day),
      noise: units.noise && rows(units.noise),
      offset: perUnit(chosen, units.offset),
    },
  };
}

/** A column with a value for each thickness row, as the sample has its rows. */
export function sampleRows(whole: Units, sample: Sample, column: Float64Array): Float64Array {
  return rowsOf(whole, sample.chosen, sample.units.start, column);
}

/** A column with a value for each unit. */
export function sampleUnits(sample: Sample, column: Float64Array): Float64Array {
  return perUnit(sample.chosen, column);
}

function rowsOf(
  units: Units,
  chosen: readonly number[],
  start: Int32Array,
  column: Float64Array,
): Float64Array {
  const out = new Float64Array(start[chosen.length]!);
  chosen.forEach((unit, k) =>
    out.set(column.subarray(units.start[unit]!, units.start[unit + 1]!), start[k]!),
  );
  return out;
}

function perUnit(chosen: readonly number[], column: Float64Array): Float64Array {
  return Float64Array.from(chosen, (unit) => column[unit]!);
}
