// What does a job find there? The screw of the changes before it, and, where it names no liner, what lies at the middle of
// each stretch: it brings the same again. Asked when the texts are put together, and again for a day on which less was known.

import type { CalendarDay } from '../units/calendar.js';
import type { Job } from './job.js';
import type { Moment } from './liner-sets.js';
import { panelEnds } from './first-panels.js';
import type { Origin } from './origin.js';
import type { Reline, ScrewChange } from './records.js';
import { intervalOf, type Run } from './runs.js';
import { linerAt, sameAgain } from './same-again.js';
import { mostOf, screwsNow } from './lying-screw.js';
import { screwSetsOf } from './screw-sets.js';
import type { LinerSpecification, ScrewSpecification } from './specifications.js';
import { millimetres, type Stated } from './stated.js';
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

/** A stretch of a job with what goes in there. */
interface Found {
  readonly stretch: Stretch;
  readonly liner: LinerSpecification;
  readonly unsure?: true;
}

/**
 * Of a stretch for which a job names no liner: the same again, run by run where these have several. A run in which several lie gets
 * the one of its middle, because a plan lines a run with one; TL499 asks.
 */
export function linersFound(
  { conveyor, window }: AnyJob,
  stretch: Stretch,
  { relines }: JobsBefore,
): readonly Found[] {
  const interval = intervalOf(conveyor, stretch, panelEnds);
  if (!interval) return [{ stretch, liner: conveyor.liner }];
  const before = relines.filter(
    (reline) => reline.conveyor === conveyor && reline.date.day <= startOf(window),
  );
  const { pieces, inRuns, settled } = sameAgain(conveyor, interval, before);
  const found = inRuns.map(({ run, from, to, pieces: own }): Found => ({
    stretch: partOf(run, from, to, stretch.origin),
    liner: linerAt(own, (from + to) / 2) ?? conveyor.liner,
    ...(settled && own.length === 1 ? {} : { unsure: true }),
  }));
  const liner = found[0]?.liner ?? pieces[0]?.liner ?? conveyor.liner;
  if (found.some((each) => each.liner !== liner)) return found;
  return [{ stretch, liner, ...(found.some(({ unsure }) => unsure) ? { unsure: true } : {}) }];
}

function partOf(run: Run, from: number, to: number, origin: Origin): Stretch {
  if (from === run.from && to === run.to)
    return { kind: 'run', run: { by: 'number', number: { count: run.number, origin } }, origin };
  const at = (value: number): Stated<'length'> => millimetres(value, origin);
  return { kind: 'chainage', from: at(from), to: at(to), origin };
}

/** The job as it stands by these records; the same object where nothing of it changes. */
export function jobBy(job: Job, records: JobsBefore): Job {
  const { screwLying: found, ...rest } = job;
  const screwLying = screwFound(job, records);
  const relines = job.relines.map((each) =>
    each.linerUse
      ? each
      : { ...each, liner: linersFound(job, each.stretch, records)[0]?.liner ?? each.liner },
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
