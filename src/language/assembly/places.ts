// The spots that readings name, each once: the declared points of every conveyor, and the chainages with clock positions that
// are used without a name. A reading written by chainage at a declared point is a reading of that point.

import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Origin } from '../../domain/model/origin.js';
import type { Place } from '../../domain/model/records.js';
import { formatClock } from '../../domain/units/clock.js';
import { formatChainage } from '../../domain/units/format.js';
import type { Spot } from '../sheet.js';

export interface Places {
  /** Provisional number of a place; -1 where the conveyor has no such point. `origin`: the row that uses it. */
  numberOf(conveyor: Conveyor, spot: Spot, origin: Origin): number;
  /** Places in the estate's order (conveyor; declared points as declared; then by chainage and clock), and the number each provisional one has there. */
  finish(): { readonly places: readonly Place[]; readonly newNumber: Int32Array };
}

export function createPlaces(conveyors: readonly Conveyor[]): Places {
  const places: Place[] = [];
  const groups = new Map<Conveyor, { readonly byName: Map<string, number>; readonly bySpot: Map<string, number>; readonly loose: number[]; readonly declared: number[] }>();
  for (const conveyor of conveyors) {
    const group = { byName: new Map<string, number>(), bySpot: new Map<string, number>(), loose: [] as number[], declared: [] as number[] };
    for (const point of conveyor.points) {
      const number = places.push({ conveyor, name: point.name, at: point.at.value, clock: point.clock.hours, declared: true, origin: point.nameOrigin }) - 1;
      group.byName.set(point.name, number);
      group.declared.push(number);
      const key = keyOf(point.at.value, point.clock.hours);
      if (!group.bySpot.has(key)) group.bySpot.set(key, number);
    }
    groups.set(conveyor, group);
  }
  return {
    numberOf(conveyor, spot, origin) {
      const group = groups.get(conveyor);
      if (!group || spot.kind === 'unreadable') return -1;
      if (spot.kind === 'point') return group.byName.get(spot.name) ?? -1;
      const key = keyOf(spot.at, spot.clock);
      const known = group.bySpot.get(key);
      if (known !== undefined) return known;
      const { at, clock } = spot;
      const number = places.push({ conveyor, name: `${formatChainage(at)} ${formatClock(clock)}`, at, clock, declared: false, origin }) - 1;
      group.bySpot.set(key, number);
      group.loose.push(number);
      return number;
    },
    finish() {
      const place = (number: number): Place | undefined => places[number];
      const newNumber = new Int32Array(places.length);
      const ordered: Place[] = [];
      for (const conveyor of conveyors) {
        const group = groups.get(conveyor);
        const loose = [...(group?.loose ?? [])].sort((a, b) => (place(a)?.at ?? 0) - (place(b)?.at ?? 0) || (place(a)?.clock ?? 0) - (place(b)?.clock ?? 0));
        for (const number of [...(group?.declared ?? []), ...loose]) {
          const one = place(number);
          if (one) newNumber[number] = ordered.push(one) - 1;
        }
      }
      return { places: ordered, newNumber };
    },
  };
}

/** To a tenth of a millimetre and a minute of the clock: what an author can write. */
function keyOf(at: number, clock: number): string {
  return `${Math.round(at * 10)} ${Math.round(clock * 60)}`;
}
