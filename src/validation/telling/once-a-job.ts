// Judging an order or planning a job takes milliseconds, so it is done once for all rules that ask, and again only when the
// job, its conveyor or what is fitted there has changed: typing in a record costs nothing here.

import type { Estate } from '../../domain/model/estate.js';
import type { Job } from '../../domain/model/job.js';
import type { Origin } from '../../domain/model/origin.js';

interface Kept<T> {
  readonly inputs: readonly unknown[];
  readonly result: T;
}

export function onceAJob<T>(work: (job: Job, estate: Estate) => T): (job: Job, estate: Estate) => T {
  // By the place of the job's name, which is the same object as long as the job's text is unchanged.
  const known = new WeakMap<Origin, Kept<T>>();
  return (job, estate) => {
    const inputs = inputsOf(job, estate);
    const before = known.get(job.nameOrigin);
    if (
      before &&
      before.inputs.length === inputs.length &&
      before.inputs.every((input, index) => input === inputs[index])
    )
      return before.result;
    const result = work(job, estate);
    known.set(job.nameOrigin, { inputs, result });
    return result;
  };
}

function inputsOf(job: Job, estate: Estate): readonly unknown[] {
  const relines = estate.relines.filter((reline) => reline.conveyor === job.conveyor);
  return [
    job.conveyor,
    job.screwChange?.screw,
    job.screwLying,
    job.window?.from.day,
    job.window?.to.day,
    ...job.crews.map(({ crew }) => crew),
    ...job.accessUnits.map(({ unit }) => unit),
    ...job.relines.map((scope) => scope.liner),
    'relines',
    ...relines.flatMap((reline) => [reline.origin, reline.liner]),
  ];
}
