// Which screw lies in a conveyor when a job comes to it, or when somebody looks? The one of the last change before, else the
// conveyor's own.

import { historyOf, momentOf, type History } from './history.js';
import type { Estate } from './estate.js';
import type { Job } from './job.js';
import { isAfter } from './liner-sets.js';
import type { DatedRecord, Inspection } from './records.js';
import type { ScrewSet } from './screw-sets.js';
import type { ScrewSpecification } from './specifications.js';

/** Before the job's own change. */
export function lyingScrew({ conveyor, screwLying }: Job): ScrewSpecification {
  return screwLying ?? conveyor.screw;
}

/** After the job's own change, where it has one. */
export function screwAfter(job: Job): ScrewSpecification {
  return job.screwChange?.screw ?? lyingScrew(job);
}

/** What turns there now, each length as old as it is; tail first. */
export function screwsNow({ screwSets }: Pick<History, 'screwSets'>): readonly ScrewSet[] {
  return screwSets.filter(({ removed }) => removed === undefined).sort((a, b) => a.from - b.from);
}

/** The one that turns there now; where lengths of several were put together, the one with most of the length. */
export function screwNow(history: History): ScrewSpecification {
  return mostOf(screwsNow(history)) ?? history.conveyor.screw;
}

/** Undefined where there is none. */
export function mostOf(sets: readonly ScrewSet[]): ScrewSpecification | undefined {
  const lengths = new Map<ScrewSpecification, number>();
  for (const { screw, from, to } of sets) lengths.set(screw, (lengths.get(screw) ?? 0) + to - from);
  const most = Math.max(...lengths.values());
  return [...lengths].find(([, length]) => length === most)?.[0];
}

/** The one a look is of, there: on the day of a change, as with liners, the old one until the meter stands higher. */
export function screwSetSeen(history: History, inspection: DatedRecord, at: number): ScrewSet | undefined {
  const seen = momentOf(history, inspection);
  const place = Math.min(Math.max(at, 0), history.conveyor.length.value);
  // The first screw came with the machine: nothing was read of another.
  return history.screwSets.findLast(
    ({ change, fitted, from, to }) =>
      from <= place &&
      place <= to &&
      (change === undefined || (fitted !== undefined && isAfter(seen, fitted))),
  );
}

export function screwSeen(estate: Estate, inspection: Inspection, at: number): ScrewSpecification {
  const { conveyor } = inspection;
  return screwSetSeen(historyOf(estate, conveyor), inspection, at)?.screw ?? conveyor.screw;
}
