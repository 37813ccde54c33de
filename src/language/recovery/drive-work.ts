// The parts of a drive that work is recorded of, and that work, as the grammar has them.

import type { PartName, Service } from '../../domain/model/records.js';

// Spelled out, so that a part that the records gain is missed here at once.
const parts: Readonly<Record<PartName, boolean>> = {
  gearbox: true,
  'tail bearing': true,
  'thrust bearing': true,
  motor: true,
  coupling: true,
  liner: false,
  panel: false,
  bolts: false,
  spiral: false,
  flight: false,
  'hold-down': false,
  brace: false,
  cover: false,
  hatch: false,
  gate: false,
  trough: false,
  drive: false,
  'drive plate': false,
};

const works: Readonly<Record<NonNullable<Service['work']>, true>> = {
  'oil changed': true,
  'oil topped up': true,
  'seal renewed': true,
  'bearings renewed': true,
  greased: true,
  aligned: true,
  tightened: true,
  renewed: true,
};

export const driveParts: ReadonlySet<string> = new Set(
  Object.entries(parts).flatMap(([part, isOfDrive]) => (isOfDrive ? [part] : [])),
);

/** What ends that which a look has seen at the drive. */
export const driveWorks: ReadonlySet<string> = new Set(Object.keys(works));
