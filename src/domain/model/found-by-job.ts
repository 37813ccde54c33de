// What does a job find there? The screw of the changes before it, and, where it names no liner, what lies at the middle of
// each stretch: it brings the same again. Asked when the texts are put together, and again for a day on which less was known.

import type { CalendarDay } from '../units/calendar.js';
import type { Job } from './job.js';
import type { Moment } from './liner-sets.js';
import { linersOf } from './liners-there.js';
import { panelEnds } from './first-panels.js';
import type { Reline, ScrewChange } from './records.js';
import { intervalOf } from './runs.js';
import { mostOf, screwsNow } from './lying-screw.js';
import { screwSetsOf } from './screw-sets.js';
import type { LinerSpecification, ScrewSpecification } from './specifications.js';
import type { Stretch } from './stretch.js';

/** Of all conveyors, in order of date. */
export interface JobsBefore {
  readonly relines: readonly Reline[];
  readonly screwChanges: readonly ScrewChange[];
}

type AnyJob = Pick<Job, 'conveyor' | 'window'>;

/** The screw of most of the length; undefined where no change came before: the conveyor's own turns there. */
export function screwFound(
  { conveyor, window }: AnyJob,
  { screwChanges }: JobsBefore,
): ScrewSpecification | undefined {
  const before = screwChanges.filter(
    (change) => change.conveyor === conveyor && change.date.day < startOf(window),
  );
  if (before.length === 0) return undefined;
  // Of a spiral in several lengths the one with most of it: a spare length at the tail is not the screw of the machine.
  const day = (change: ScrewChange): Moment => ({
    day: change.date.day,
    hours: undefined,
    turned: undefined,
    tonnes: undefined,
  });
  return mostOf(screwsNow({ screwSets: screwSetsOf(conveyor, undefined, before, day) }));
}

export function linerFound(
  { conveyor, window }: AnyJob,
  stretch: Stretch,
  { relines }: JobsBefore,
): LinerSpecification {
  const interval = intervalOf(conveyor, stretch, panelEnds);
  if (!interval) return conveyor.liner;
  const lying = linersOf(
    conveyor,
    relines.filter((reline) => reline.conveyor === conveyor),
  );
  return lying((interval.from + interval.to) / 2, startOf(window), 'after all work')[0] ?? conveyor.liner;
}

/** The job as it stands by these records; the same object where nothing of it changes. */
export function jobBy(job: Job, records: JobsBefore): Job {
  const { screwLying: found, ...rest } = job;
  const screwLying = screwFound(job, records);
  const relines = job.relines.map((each) =>
    each.linerUse ? each : { ...each, liner: linerFound(job, each.stretch, records) },
  );
  if (screwLying === found && relines.every(({ liner }, i) => liner === job.relines[i]?.liner)) return job;
  const { screwChange } = job;
  return {
    ...rest,
    relines,
    ...(screwLying && { screwLying }),
    ...(screwChange &&
      !screwChange.screwUse && {
        screwChange: { ...screwChange, screw: screwLying ?? job.conveyor.screw },
      }),
  };
}

/** A job without a window comes after all that is recorded. */
function startOf(window: Job['window']): CalendarDay {
  return window?.from.day ?? (Infinity as CalendarDay);
}
