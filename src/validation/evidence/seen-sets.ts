// Which liner was each reading of? One pass over the columns, done once an estate and shared by the rules that ask. Rows come
// in the order of time within a conveyor, so a rule that remembers the last row of each place needs no sorting. Rows of a conveyor
// that the estate does not hold are passed over: an estate of one conveyor costs what that one does.

import type { Estate } from '../../domain/model/estate.js';
import { setSeen } from '../../domain/model/exposure.js';
import { historyOf } from '../../domain/model/history.js';
import { isImpossible } from '../../domain/model/impossible-reading.js';
import { setsAt, type LinerSet } from '../../domain/model/liner-sets.js';
import type { Inspection } from '../../domain/model/records.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';

interface RowsBySet {
  readonly sets: readonly LinerSet[];
  /** Index into `sets` by row; −1 where the place or the liner is not known, or nothing was seen. */
  readonly setOf: Int32Array;
}

const known = new WeakMap<Estate, RowsBySet>();

/** A row with a thickness, a colour or bare steel whose liner is known. `place` counts in Estate.places. */
export type VisitRow = (row: number, place: number, set: LinerSet, inspection: Inspection) => void;

/** Rows in order of time within a conveyor. A plain loop with a callback: this runs over every reading at every keystroke. */
export function eachSeen(estate: Estate, visit: VisitRow): void {
  const { sets, setOf } = known.get(estate) ?? workOut(estate);
  const { place } = estate.readings;
  for (const inspection of estate.inspections) {
    for (let row = inspection.firstRow; row < inspection.endRow; row++) {
      const set = sets[setOf[row] ?? -1];
      if (set) visit(row, place[row] ?? -1, set, inspection);
    }
  }
}

/** The same without thicknesses that no liner there can have (domain/model/impossible-reading): what rates may rest on. */
export function eachCounted(estate: Estate, visit: VisitRow): void {
  eachSeen(estate, (row, index, set, inspection) => {
    const place = estate.places[index];
    if (place && !isImpossible(estate, row, set, place)) visit(row, index, set, inspection);
  });
}

function workOut(estate: Estate): RowsBySet {
  const { readings, places } = estate;
  const sets: LinerSet[] = [];
  const number = new Map<LinerSet, number>();
  const held = new Set(estate.conveyors);
  const only = new Int32Array(places.length).fill(-1);
  places.forEach((place, index) => {
    if (!held.has(place.conveyor)) return;
    const here = setsAt(historyOf(estate, place.conveyor).linerSets, place.at);
    for (const set of here) if (!number.has(set)) number.set(set, sets.push(set) - 1);
    const [one, another] = here;
    // Several sets in turn: which one, depends on the inspection.
    only[index] = another ? severalSets : one ? (number.get(one) ?? -1) : -1;
  });
  const setOf = new Int32Array(readings.count).fill(-1);
  for (const inspection of estate.inspections) {
    if (!held.has(inspection.conveyor)) continue;
    const history = historyOf(estate, inspection.conveyor);
    for (let row = inspection.firstRow; row < inspection.endRow; row++) {
      const kind = readings.kind[row];
      if (kind === undefined || saysNothing.has(kind)) continue;
      const placeIndex = readings.place[row] ?? -1;
      const place = places[placeIndex];
      if (!place) continue;
      const alone = only[placeIndex] ?? -1;
      if (alone !== severalSets) {
        setOf[row] = alone;
        continue;
      }
      const set = setSeen(history, place.at, inspection);
      setOf[row] = set ? (number.get(set) ?? -1) : -1;
    }
  }
  const seen = { sets, setOf };
  known.set(estate, seen);
  return seen;
}

const severalSets = -2;

const saysNothing: ReadonlySet<number> = new Set([
  ReadingKind.notSeen,
  ReadingKind.unreadable,
  ReadingKind.withdrawn,
]);
