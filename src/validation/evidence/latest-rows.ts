// The newest reading of every spot whose liner is still in: what a decision about it would rest on today.

import type { Estate } from '../../domain/model/estate.js';
import type { LinerSet } from '../../domain/model/liner-sets.js';
import type { Place } from '../../domain/model/records.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';
import { eachCounted } from './seen-sets.js';

export interface LatestRow {
  readonly row: number;
  readonly place: Place;
  readonly set: LinerSet;
  /** The row from which on bare steel is all that was seen there; undefined where something else is the newest. */
  readonly bareSince: number | undefined;
}

const known = new WeakMap<Estate, readonly LatestRow[]>();

export function latestRows(estate: Estate): readonly LatestRow[] {
  const found = known.get(estate);
  if (found) return found;
  const latest: (LatestRow | undefined)[] = [];
  eachCounted(estate, (row, index, set) => {
    const place = estate.places[index];
    if (!place || set.removed !== undefined) return;
    const before = latest[index];
    const bare = estate.readings.kind[row] === ReadingKind.trough;
    latest[index] = { row, place, set, bareSince: bare ? (before?.bareSince ?? row) : undefined };
  });
  const lying = latest.filter((one) => one !== undefined); // places without a reading leave holes
  known.set(estate, lying);
  return lying;
}
