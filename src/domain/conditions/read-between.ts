// Did a look read something of the liner or the steel between two chainages? What it could not see it did not read.

import type { Estate } from '../model/estate.js';
import type { Inspection } from '../model/records.js';
import { ReadingKind } from '../units/reading-kind.js';

/** `from` and `to` in mm, both of them among what counts. */
export function readsBetween(
  { readings, places }: Pick<Estate, 'readings' | 'places'>,
  look: Inspection,
  from: number,
  to: number,
): boolean {
  const isThere = (at: number | undefined): boolean => at !== undefined && at >= from && at <= to;
  if (look.plates.some(({ at }) => isThere(at.value))) return true;
  for (let row = look.firstRow; row < look.endRow; row++)
    if (readings.kind[row] !== ReadingKind.notSeen && isThere(places[readings.place[row] ?? -1]?.at))
      return true;
  return false;
}
