// What the records of a day say of each spot of a conveyor, in a form that a sheet's readings can be held against.

import type { Estate } from '../../domain/model/estate.js';
import type { Inspection } from '../../domain/model/records.js';
import { formatLength } from '../../domain/units/format.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';

/** A thickness in mm, a colour by its number from the screw side, from 0. */
export type Saying =
  | { readonly kind: 'thickness' | 'colour'; readonly value: number }
  | { readonly kind: 'trough' | 'not seen' };

export interface Recorded {
  readonly saying: Saying;
  readonly words: string;
}

/** A spot by chainage (mm, to a tenth) and clock (to the minute), in the direction of flow, whatever it is called. */
export function spotKey(chainage: number, clock: number): string {
  return `${Math.round(chainage * 10)} ${Math.round(clock * 60) % 720}`;
}

export function recordedAt(
  { readings, places }: Estate,
  inspections: readonly Inspection[],
): ReadonlyMap<string, readonly Recorded[]> {
  const found = new Map<string, Recorded[]>();
  for (const { firstRow, endRow } of inspections)
    for (let row = firstRow; row < endRow; row++) {
      const place = places[readings.place[row] ?? -1];
      const said = recordOf(readings.kind[row], readings.value[row] ?? NaN);
      if (!place) continue;
      const key = spotKey(place.at, place.clock);
      // The sheet may still have what was first read.
      const before = (readings.corrected.get(row)?.versions ?? []).flatMap(
        (version) => recordOf(version.kind, version.value) ?? [],
      );
      const all = [said, ...before].flatMap((each) => each ?? []);
      if (all.length > 0) found.set(key, [...(found.get(key) ?? []), ...all]);
    }
  return found;
}

function recordOf(kind: number | undefined, value: number): Recorded | undefined {
  switch (kind) {
    case ReadingKind.thickness:
      return { saying: { kind: 'thickness', value }, words: formatLength(value) };
    case ReadingKind.colour:
      return { saying: { kind: 'colour', value }, words: `colour ${value + 1} from the screw side` };
    case ReadingKind.trough:
      return { saying: { kind: 'trough' }, words: 'trough showing' };
    case ReadingKind.notSeen:
      return { saying: { kind: 'not seen' }, words: 'not seen' };
    default:
      return undefined;
  }
}
