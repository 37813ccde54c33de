// Which screw lies in a conveyor when a job comes to it, or when somebody looks? The one of the last change before, else the
// conveyor's own.

import { historyOf, momentOf, type History, type ScrewSet } from './history.js';
import type { Estate } from './estate.js';
import type { Job } from './job.js';
import { isAfter } from './liner-sets.js';
import type { Inspection } from './records.js';
import type { ScrewSpecification } from './specifications.js';

/** Before the job's own change. */
export function lyingScrew({ conveyor, screwLying }: Job): ScrewSpecification {
  return screwLying ?? conveyor.screw;
}

/** After the job's own change, where it has one. */
export function screwAfter(job: Job): ScrewSpecification {
  return job.screwChange?.screw ?? lyingScrew(job);
}

/** The one that turns there now. */
export function screwNow({ conveyor, screwSets }: History): ScrewSpecification {
  return screwSets.at(-1)?.screw ?? conveyor.screw;
}

/** The one a look is of: on the day of a change, as with liners, the old one until the meter stands higher. */
export function screwSetSeen(history: History, inspection: Inspection): ScrewSet | undefined {
  const seen = momentOf(history, inspection);
  // The first screw came with the machine: nothing was read of another.
  return history.screwSets.findLast(
    ({ change, fitted }) => change === undefined || (fitted !== undefined && isAfter(seen, fitted)),
  );
}

export function screwSeen(estate: Estate, inspection: Inspection): ScrewSpecification {
  const { conveyor } = inspection;
  return screwSetSeen(historyOf(estate, conveyor), inspection)?.screw ?? conveyor.screw;
}
