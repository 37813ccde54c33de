// What one unit of the wear model is on the machine: which liner, where along the trough, and where round it.

import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { LinerSet } from '../../../domain/model/liner-sets.js';
import type { Place } from '../../../domain/model/records.js';
import type { Run } from '../../../domain/model/runs.js';

/** What a unit is: a set at a place, or a set in a run where nobody looked. */
export interface WearMember {
  readonly conveyor: Conveyor;
  readonly place: Place | undefined;
  readonly run: Run | undefined;
  readonly set: LinerSet;
  /** Where it lies, mm from the tail and hours on the face of a clock; undefined where nothing tells the latter. */
  readonly at: number;
  readonly clock: number | undefined;
  /** mm when it was new. */
  readonly fitted: number;
}

/** Where on the face a place lies, to the hour: worn sectors of one trough wear alike. */
export function sectorOf(clock: number): string {
  return `${Math.round(clock) === 0 ? 12 : Math.round(clock)} o’clock`;
}
