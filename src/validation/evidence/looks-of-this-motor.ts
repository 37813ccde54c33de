// Which currents may be held against each other? Those of one motor: a look on the day of its change may have been either.

import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Estate } from '../../domain/model/estate.js';
import { historyOf } from '../../domain/model/history.js';
import { motorSince } from '../../domain/model/present-drive.js';
import type { Inspection } from '../../domain/model/records.js';

/** Oldest first. */
export function looksOfThisMotor(estate: Estate, conveyor: Conveyor): readonly Inspection[] {
  const since = motorSince(estate, conveyor) ?? -Infinity;
  return historyOf(estate, conveyor).inspections.flatMap(({ inspection }) =>
    inspection.date.day > since ? [inspection] : [],
  );
}
