// The parts of a drive that work is recorded of, and that work, as the grammar has them.

import type { Service } from '../../domain/model/records.js';

// Spelled out, so that a part that the records gain is missed here at once.
const parts: Readonly<Record<Service['part'], true>> = {
  gearbox: true,
  'tail bearing': true,
  'thrust bearing': true,
  motor: true,
  coupling: true,
};

const works: Readonly<Record<Service['work'], true>> = {
  'oil changed': true,
  'oil topped up': true,
  'seal renewed': true,
  greased: true,
  renewed: true,
};

export const driveParts: ReadonlySet<string> = new Set(Object.keys(parts));

/** What ends that which a look has seen at the drive. */
export const driveWorks: ReadonlySet<string> = new Set(Object.keys(works));
