// The spots of a conveyor that readings name, each once: its declared points, and the chainages with clock positions that are
// used without a name. A reading written by chainage at a declared point is a reading of that point.

import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import { chainageText } from '../../domain/units/length-words.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Origin } from '../../domain/model/origin.js';
import type { Place } from '../../domain/model/records.js';
import { formatClock } from '../../domain/units/clock.js';
import type { ReadingSpot } from '../sheet.js';

export interface Places {
  /** Provisional number of a place; -1 where the conveyor has no such point. `origin`: the row that uses it. */
  numberOf(spot: ReadingSpot, origin: Origin): number;
  /** Declared points as declared, then the others by chainage and clock; and the number that each provisional one has there. */
  finish(): { readonly places: readonly Place[]; readonly newNumber: Int32Array };
}

export function createPlaces(conveyor: Conveyor): Places {
  const declared: Place[] = conveyor.points.map((point) => ({
    conveyor,
    name: point.name,
    at: point.at.value,
    clock: point.clock.hours,
    declared: true,
    origin: point.nameOrigin,
  }));
  const loose: Place[] = [];
  const byName = new Map(declared.map((place, number) => [place.name, number]));
  const bySpot = new Map<string, number>();
  for (const [number, place] of declared.entries()) {
    const key = keyOf(place.at, place.clock);
    if (!bySpot.has(key)) bySpot.set(key, number);
  }
  return {
    numberOf(spot, origin) {
      if (spot.kind === 'unreadable' || spot.kind === 'panel') return -1; // a panel is settled before
      if (spot.kind === 'point') return byName.get(spot.name) ?? -1;
      const { at, clock } = spot;
      const key = keyOf(at, clock);
      const known = bySpot.get(key);
      if (known !== undefined) return known;
      const number =
        declared.length +
        loose.push({
          conveyor,
          name: `${chainageText(at, unitOfMachine(conveyor))} ${formatClock(clock)}`,
          at,
          clock,
          declared: false,
          origin,
        }) -
        1;
      bySpot.set(key, number);
      return number;
    },
    finish() {
      const sorted = [...loose.keys()].sort((a, b) => compare(loose[a], loose[b]));
      const newNumber = Int32Array.from({ length: declared.length + loose.length }, (_, number) => number);
      for (const [index, number] of sorted.entries())
        newNumber[declared.length + number] = declared.length + index;
      return { places: [...declared, ...sorted.flatMap((number) => loose[number] ?? [])], newNumber };
    },
  };
}

function compare(a: Place | undefined, b: Place | undefined): number {
  return a && b ? a.at - b.at || a.clock - b.clock : 0;
}

/** To a tenth of a millimetre and a minute of the clock: what an author can write. */
function keyOf(at: number, clock: number): string {
  return `${Math.round(at * 10)} ${Math.round(clock * 60)}`;
}
