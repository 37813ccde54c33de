// The spots of a conveyor that readings name, each once: its declared points, and the chainages with clock positions that are
// used without a name. A reading written by chainage at a declared point is a reading of that point. What was read all along a stretch
// is so at every spot of it, and counts once: at the point in it that lies nearest to its middle, in the same run and at the same
// clock position; where there is none, at a spot in it that another reading names; else at its middle. A spot of its own, read once
// and long ago, would govern beside a point that was measured since.

import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import { chainageText } from '../../domain/units/length-words.js';
import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Origin } from '../../domain/model/origin.js';
import type { Place } from '../../domain/model/records.js';
import { formatClock, hoursApart } from '../../domain/units/clock.js';
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
  /** Of the loose places those that are the middle of a stretch and named by nothing else, by their number among the loose. */
  const stretches = new Map<number, Stretch>();
  for (const [number, place] of declared.entries()) {
    const key = keyOf(place.at, place.clock);
    if (!bySpot.has(key)) bySpot.set(key, number);
  }
  return {
    numberOf(spot, origin) {
      if (spot.kind !== 'point' && spot.kind !== 'chainage') return -1; // a panel and a stretch are settled before
      if (spot.kind === 'point') return byName.get(spot.name) ?? -1;
      const { at, clock, along } = spot;
      const inside = along && nearestIn(declared, spot, along, conveyor);
      if (inside !== undefined) return inside;
      const key = along ? `${keyOf(at, clock)} ${keyOf(along.from, along.to)}` : keyOf(at, clock);
      const known = bySpot.get(key) ?? (along && bySpot.get(keyOf(at, clock)));
      if (known !== undefined) return known;
      if (along) stretches.set(loose.length, along);
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
      const same = sameAs(loose, stretches, conveyor);
      const kept = [...loose.keys()].filter((number) => !same.has(number));
      const sorted = kept.sort((a, b) => compare(loose[a], loose[b]));
      const newNumber = Int32Array.from({ length: declared.length + loose.length }, (_, number) => number);
      for (const [index, number] of sorted.entries())
        newNumber[declared.length + number] = declared.length + index;
      for (const [number, other] of same)
        newNumber[declared.length + number] = newNumber[declared.length + other] ?? -1;
      return { places: [...declared, ...sorted.flatMap((number) => loose[number] ?? [])], newNumber };
    },
  };
}

function compare(a: Place | undefined, b: Place | undefined): number {
  return a && b ? a.at - b.at || a.clock - b.clock : 0;
}

interface Stretch {
  /** mm. */
  readonly from: number;
  readonly to: number;
}

/** Clock positions this far apart are one, hours: what an author rounds. */
const sameClock = 0.25;

/** The number of the place in the stretch that lies nearest to its middle, at the same clock, with no break between. */
function nearestIn(
  places: readonly (Place | undefined)[],
  { at, clock }: { readonly at: number; readonly clock: number },
  { from, to }: Stretch,
  { breaks }: Conveyor,
): number | undefined {
  let nearest: number | undefined;
  for (const [number, place] of places.entries()) {
    if (!place || place.at < from || place.at > to) continue;
    if (hoursApart(place.clock, clock) > sameClock) continue;
    const [low, high] = [Math.min(place.at, at), Math.max(place.at, at)];
    if (breaks.some((each) => each.from.value < high && each.to.value > low)) continue;
    const best = nearest === undefined ? undefined : places[nearest];
    if (!best || Math.abs(place.at - at) < Math.abs(best.at - at)) nearest = number;
  }
  return nearest;
}

/** Which middles of stretches are a spot that another reading names, the shortest stretches first. */
function sameAs(
  loose: readonly Place[],
  stretches: ReadonlyMap<number, Stretch>,
  conveyor: Conveyor,
): ReadonlyMap<number, number> {
  const same = new Map<number, number>();
  const named = loose.map((place, number) => (stretches.has(number) ? undefined : place));
  const shortest = [...stretches].sort(([, a], [, b]) => a.to - a.from - (b.to - b.from));
  for (const [number, stretch] of shortest) {
    const place = loose[number];
    if (!place) continue;
    const other = nearestIn(named, place, stretch, conveyor);
    if (other === undefined) named[number] = place;
    else same.set(number, other);
  }
  return same;
}

/** To a tenth of a millimetre and a minute of the clock: what an author can write. */
function keyOf(at: number, clock: number): string {
  return `${Math.round(at * 10)} ${Math.round(clock * 60)}`;
}
