// Could a look have seen it? Whoever came for the drive or the safeguards alone opened no cover, and nobody sees a dent under a
// liner: a look that could not is not asked what became of it.

import type { ConditionLine, DatedRecord, Inspection, PartName } from '../model/records.js';
import { runAt } from '../model/runs.js';
import { isDriven, partOf, takenWith } from './kinds.js';
import { isBesideTrough } from './safeguards.js';

/** `last`: the record that saw it last. */
export function couldSee(look: Inspection, line: ConditionLine, last: DatedRecord): boolean {
  if (isUnderLiner(line, last)) return false;
  return !isOfTheDriveAlone(look) || isOfTheDrive(line);
}

/** Steel that was seen while the liner was off, and is covered since. */
export function isUnderLiner({ kind, about, at }: ConditionLine, last: DatedRecord): boolean {
  if (!('oldPanels' in last) || at === undefined || !runAt(last.conveyor, at.value)) return false;
  return kind === 'trough dented' || kind === 'trough cracked' || (kind === 'finding' && about === 'trough');
}

/** Something is told of the drive or of a safeguard, and nothing of anything else. */
function isOfTheDriveAlone(look: Inspection): boolean {
  const {
    currents,
    speeds,
    conditions,
    remarks,
    flights,
    flightDiameters,
    wornWidths,
    holdDownGaps,
    plates,
  } = look;
  const ofTheTrough = [flights, flightDiameters, wornWidths, holdDownGaps, plates].some(
    (each) => each.length > 0,
  );
  if (look.endRow > look.firstRow || ofTheTrough) return false;
  const told = [
    ...conditions.map(isOfTheDrive),
    // A note of no part may be of anything.
    ...remarks.map(({ part }) => part !== undefined && isDrivePart(part)),
  ];
  return told.every(Boolean) && told.length + currents.length + speeds.length > 0;
}

function isOfTheDrive(line: ConditionLine): boolean {
  return (
    partOf(line.kind) === 'drive' ||
    takenWith(line) === 'drive' ||
    isBesideTrough(line) ||
    (line.about !== undefined && isDrivePart(line.about))
  );
}

function isDrivePart(part: string): boolean {
  return (
    isDriven(part) || part === 'tail bearing' || isBesideTrough({ kind: 'finding', about: part as PartName })
  );
}
