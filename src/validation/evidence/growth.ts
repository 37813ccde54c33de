// Where a later reading says that the liner got thicker. Wear only goes one way, so one of the two is of another liner, of
// another spot, or misread. Each reading bounds what is left from above and from below; a later lower bound may not pass an
// earlier upper bound by more than three standard deviations of the two.

import type { Estate } from '../../domain/model/estate.js';
import { ReadingKind, type Place } from '../../domain/model/records.js';
import type { LinerSpecification } from '../../domain/model/specifications.js';
import { errorOf, leftByLayer } from './reading-error.js';
import { isPlausible } from './plausible.js';
import { seenRows } from './seen-sets.js';

export interface Growth {
  /** Both are numbers by kind: thickness, colour or trough, as in ReadingKind. */
  readonly kinds: 'thickness' | 'colour' | 'mixed';
  readonly row: number;
  readonly before: number;
  readonly place: Place;
  readonly liner: LinerSpecification;
  readonly sameInspection: boolean;
}

const known = new WeakMap<Estate, readonly Growth[]>();

/** Worked out once an estate; for each row at most one, against the latest reading that it contradicts. */
export function growthsOf(estate: Estate): readonly Growth[] {
  const found = known.get(estate) ?? workOut(estate);
  known.set(estate, found);
  return found;
}

interface Bounds {
  readonly least: number;
  readonly leastError: number;
  readonly most: number;
  readonly mostError: number;
}

function workOut(estate: Estate): readonly Growth[] {
  const { readings } = estate;
  const growths: Growth[] = [];
  const lastThickness = new Int32Array(estate.places.length).fill(-1);
  const lastIndicator = new Int32Array(estate.places.length).fill(-1);
  const lastSet: object[] = [];
  for (const { row, place, placeIndex, set } of seenRows(estate)) {
    const kind = readings.kind[row] ?? ReadingKind.unreadable;
    if (lastSet[placeIndex] !== set) {
      lastSet[placeIndex] = set;
      lastThickness[placeIndex] = -1;
      lastIndicator[placeIndex] = -1;
    }
    const bounds = boundsOf(estate, row, set.liner);
    if (bounds) {
      const befores = [lastThickness[placeIndex] ?? -1, lastIndicator[placeIndex] ?? -1].filter((before) => before >= 0).sort((a, b) => b - a);
      const before = befores.find((candidate) => contradict(estate, set.liner, candidate, row, bounds));
      if (before !== undefined) {
        const both = [readings.kind[before], kind].map((one) => one === ReadingKind.thickness);
        growths.push({
          row, before, place, liner: set.liner,
          kinds: both[0] && both[1] ? 'thickness' : both[0] || both[1] ? 'mixed' : 'colour',
          sameInspection: readings.inspection[before] === readings.inspection[row],
        });
      }
      if (kind === ReadingKind.thickness) lastThickness[placeIndex] = row;
      else lastIndicator[placeIndex] = row;
    }
  }
  return growths;
}

function contradict(estate: Estate, liner: LinerSpecification, before: number, row: number, now: Bounds): boolean {
  const then = boundsOf(estate, before, liner);
  if (!then) return false;
  const sameInspection = estate.readings.inspection[before] === estate.readings.inspection[row];
  const bothThickness = estate.readings.kind[before] === ReadingKind.thickness && estate.readings.kind[row] === ReadingKind.thickness;
  if (sameInspection && bothThickness) return false; // a spot read twice has a rule of its own
  const { kind, value } = estate.readings;
  if (kind[before] !== ReadingKind.thickness && kind[row] !== ReadingKind.thickness) {
    // Two colours are compared by their place in the liner: where one ends the next begins, whatever the depth is exactly.
    const depth = (one: number): number => (kind[one] === ReadingKind.trough ? liner.layers.length : value[one] ?? 0);
    return !sameInspection && depth(row) < depth(before);
  }
  if (passes(now, then)) return true;
  // In one inspection neither is the earlier.
  return sameInspection && passes(then, now);
}

function passes(later: Bounds, earlier: Bounds): boolean {
  return later.least - earlier.most > 3 * Math.hypot(later.leastError, earlier.mostError) + 1e-9;
}

function boundsOf(estate: Estate, row: number, liner: LinerSpecification): Bounds | undefined {
  const value = estate.readings.value[row] ?? NaN;
  switch (estate.readings.kind[row]) {
    case ReadingKind.thickness: {
      if (!isPlausible('reading thickness', value) && isPlausible('liner thickness', liner.thickness.value)) return undefined;
      const error = errorOf(estate, row);
      return { least: value, leastError: error, most: value, mostError: error };
    }
    case ReadingKind.colour:
      return leftByLayer(liner, value);
    case ReadingKind.trough:
      return { least: 0, leastError: 0, most: 0, mostError: 0 };
    default:
      return undefined;
  }
}
