// Jobs that are written for a conveyor already: does the scope cover what governs, and can the liner be there in time?

import { chainageOn } from '../model/unit-of-machine.js';
import type { Estate } from '../model/estate.js';
import type { Job } from '../model/job.js';
import { installedPanelEnds } from '../model/panels.js';
import { intervalOf, type Interval } from '../model/runs.js';
import { formatDay, type CalendarDay } from '../units/calendar.js';
import type { ScopeWork } from './scope.js';
import { suppliesOfJob } from './supplies-of-a-job.js';
import type { Supplies } from './supply.js';

export interface JobState {
  readonly job: string;
  readonly outage: string | undefined;
  readonly from: CalendarDay | undefined;
  /** Undefined where nothing governs or the job relines nothing. */
  readonly covers: boolean | undefined;
  /** Undefined where the window or the lead time is not known. */
  readonly arrives: { readonly day: CalendarDay; readonly inTime: boolean } | undefined;
  /** A sentence without a full stop. */
  readonly words: string;
}

/** Chainages that a job relines, mm. */
export function relinedBy(
  job: Job,
  estate: Estate,
): readonly { readonly from: number; readonly to: number }[] {
  const ends = installedPanelEnds(estate);
  return job.relines.flatMap(({ stretch }) => intervalOf(job.conveyor, stretch, ends) ?? []);
}

export function jobState(
  job: Job,
  estate: Estate,
  governing: { readonly place: string; readonly at: number } | undefined,
  supply: { readonly scope: ScopeWork; readonly supplies: Supplies } | undefined,
  asOf: CalendarDay,
): JobState {
  const from = job.window?.from.day;
  const areas = relinedBy(job, estate);
  const covers =
    governing && areas.length > 0
      ? areas.some((area) => area.from <= governing.at && area.to >= governing.at)
      : undefined;
  // Its own panels: the whole conveyor may have to wait for what a part has on the shelf.
  const ways = (suppliesOfJob(job, estate, asOf) ?? supply?.supplies)?.ways ?? [];
  const usual = ways.find(({ by }) => by !== 'expedited');
  const fast = ways.find(({ by }) => by === 'expedited');
  const way = usual ?? fast;
  const arrives =
    from === undefined || !way || areas.length === 0 ? undefined : { day: way.day, inTime: way.day <= from };
  const head = `Job ${job.name}${from === undefined ? '' : ` from ${formatDay(from)}`}`;
  const scope =
    covers === undefined
      ? areas.length === 0
        ? 'relines nothing'
        : 'is written'
      : covers
        ? `covers ${governing?.place ?? ''}, which governs`
        : `relines ${areas.map((area) => areaText(job, area)).join(' and ')} and leaves out ` +
          `${governing?.place ?? ''} at ${chainageOn(job.conveyor, governing?.at ?? 0)}, which governs`;
  const liner =
    arrives === undefined
      ? ''
      : arrives.inTime
        ? `; its liner can be there by ${formatDay(arrives.day)}`
        : `; its ${way?.waitsForFixings ? 'bolts' : 'liner'} cannot be there before ` +
          `${formatDay(arrives.day)}${fast && from !== undefined && fast.day <= from ? `, expedited by ${formatDay(fast.day)}` : ''}`;
  return {
    job: job.name,
    outage: job.window?.outage?.name,
    from,
    covers,
    arrives,
    words: `${head} ${scope}${liner}`,
  };
}

function areaText({ conveyor }: Job, { from, to }: Interval): string {
  return `${chainageOn(conveyor, from)} to ${chainageOn(conveyor, to)}`;
}
