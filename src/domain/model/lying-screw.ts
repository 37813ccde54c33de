// Which screw lies in a conveyor when a job comes to it, or when somebody looks? The one of the last change before, else the
// conveyor's own.

import { historyOf, type History } from './history.js';
import type { Estate } from './estate.js';
import type { Job } from './job.js';
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

/** On the day of a change the new one. */
export function screwSeen(estate: Estate, { conveyor, date }: Inspection): ScrewSpecification {
  const sets = historyOf(estate, conveyor).screwSets;
  const set = sets.findLast(({ fitted }) => fitted === undefined || fitted.day <= date.day) ?? sets[0];
  return set?.screw ?? conveyor.screw;
}
