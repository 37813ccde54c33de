// Does a spot lie on the joint between two liners of different age? What is read there is of whichever sheet the gauge stood on,
// and the records cannot tell which: a tape and a joint never agree to the millimetre.

import type { Estate } from './estate.js';
import { historyOf, momentOf, type History } from './history.js';
import { isAfter, type LinerSet } from './liner-sets.js';
import type { Inspection, Place } from './records.js';
import { runAt } from './runs.js';

/** mm from the joint [judgement: what a tape along a trough is good for]. */
const near = 10;

export interface SetJoint {
  /** Chainage, mm. */
  readonly at: number;
  /** The younger of the two sets that meet there. */
  readonly younger: LinerSet;
}

/** The joint that came to lie within a tape's error of a place last; undefined where none did. */
export function jointAt(estate: Estate, place: Pick<Place, 'conveyor' | 'at'>): SetJoint | undefined {
  return jointIn(historyOf(estate, place.conveyor), place);
}

function jointIn(
  { linerSets }: History,
  { conveyor, at }: Pick<Place, 'conveyor' | 'at'>,
): SetJoint | undefined {
  const run = runAt(conveyor, at);
  if (!run) return undefined;
  // Within a run only: at its ends a break lies between the two.
  const isEdge = (edge: number): boolean =>
    Math.abs(edge - at) <= near && edge > run.from + near && edge < run.to - near;
  const younger = linerSets.findLast(({ reline, from, to }) => reline && (isEdge(from) || isEdge(to)));
  return younger && { at: isEdge(younger.from) ? younger.from : younger.to, younger };
}

/** True where the last two readings of a place may be of two sheets. */
export function isOnAJoint(estate: Estate, place: Pick<Place, 'conveyor' | 'at'>): boolean {
  return jointAt(estate, place) !== undefined;
}

/**
 * A thickness of a spot that is no point, seen once the two sheets met there: nobody can say of which it is, so it starts no rate. A
 * point is read again and again, and steel that shows is bare whichever it was.
 */
export function isOfEitherSheet(
  history: History,
  place: Pick<Place, 'conveyor' | 'at' | 'declared'>,
  look: Inspection,
): boolean {
  const fitted = place.declared ? undefined : jointIn(history, place)?.younger.fitted;
  return fitted !== undefined && isAfter(momentOf(history, look), fitted);
}
