// Does a job reline the spot that reaches its limit first? Spots seen past it before those that are reckoned, as the report has
// them; then hand arithmetic, silent where that spot lasts until the outage after
// the job, because then somebody may well have chosen to leave it.

import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { relinedBy } from '../../../domain/decision/jobs-written.js';
import type { Estate } from '../../../domain/model/estate.js';
import { dayAt } from '../../../domain/model/history.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Place } from '../../../domain/model/records.js';
import type { Job } from '../../../domain/model/job.js';
import { addDays, formatDay, type CalendarDay } from '../../../domain/units/calendar.js';
import { isAtLimit } from '../../evidence/at-the-limit.js';
import { firstToGo, type RatedLife } from '../../evidence/hand-lives.js';
import { latestRows } from '../../evidence/latest-rows.js';
import type { Rule } from '../../rule.js';

export const jobMissesWhatGoverns: Rule = {
  code: 'TL544',
  title: 'Job that leaves out the spot that governs',
  severity: 'warning',
  restsOn: ['looks', 'history', 'jobs'],
  why: 'The crew opens the conveyor, relines what could have waited, and the spot that wears through first stays in.',
  todo: 'Take the run of that spot into the scope, or say in the job why it can wait.',
  given: 'estate',
  example: `
inspection DG1 2026-04-06 meter 9300 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 5.9 mm
  P2 thickness 9.8 mm
}
job J1 {
  conveyor DG1
  outage Spring27
  «reline run above Gate|reline all»
  crews Alpha, Bravo
  access units MP1
}`,
  cases: [
    {
      name: 'a spot that is past its limit goes before one that is reckoned',
      text: `
inspection DG1 2026-04-06 meter 9300 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 5.9 mm
  P2 thickness 2.8 mm
}
job J1 {
  conveyor DG1
  outage Spring27
  «reline run below Gate»
  crews Alpha, Bravo
  access units MP1
}`,
    },
    {
      name: 'an earlier job renews that spot',
      text: `
inspection DG1 2026-04-06 meter 9300 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 5.9 mm
  P2 thickness 9.8 mm
}
job J0 {
  conveyor DG1
  window 2027-01-11 to 2027-01-15
  reline run below Gate
  crews Alpha, Bravo
  access units MP1
}
job J1 {
  conveyor DG1
  outage Spring27
  reline run above Gate
  crews Alpha, Bravo
  access units MP1
}`,
    },
  ],
  *check({ estate }) {
    const jobs = estate.jobs.filter((job) => job.window && job.relines.length > 0);
    if (jobs.length === 0) return;
    const first = new Map([...firstToGo(estate)].map((life) => [life.place.conveyor, life]));
    const past = seenPast(estate);
    for (const job of jobs) {
      const [reline] = job.relines;
      if (!reline || !job.window) continue;
      const { window } = job;
      const next =
        job.conveyor.plant.outages
          .map(({ from }) => from.day)
          .filter((day) => day > window.to.day)
          .sort((a, b) => a - b)[0] ?? addDays(window.to.day, 365);
      const areas = relinedBy(job, estate);
      if (areas.length === 0) continue;
      const seen = (past.get(job.conveyor) ?? []).filter(({ day }) => day <= next);
      const suspects = [...seen, ...reckoned(first.get(job.conveyor), next, seen)];
      if (suspects.length === 0) continue;
      const renewed = [...areas, ...relinedEarlier(estate, job)];
      const left = suspects.find(
        ({ place: { at } }) => !renewed.some(({ from, to }) => from <= at && at <= to),
      );
      if (!left) continue;
      const { at, name } = left.place;
      const relined = areas
        .map(({ from, to }) => `${chainageOn(job.conveyor, from)} to ${chainageOn(job.conveyor, to)}`)
        .join(' and ');
      yield {
        origin: reline.origin,
        message:
          `Job ${job.name} relines ${relined} of ${job.conveyor.name}; ` +
          `${name} at ${chainageOn(job.conveyor, at)} is outside and ${left.words}.`,
        related: [{ origin: job.conveyor.nameOrigin, message: `conveyor ${job.conveyor.name}` }],
      };
    }
  },
};

interface Left {
  readonly place: Place;
  readonly words: string;
}

/** By conveyor, on which day each spot was found past its limit: bare steel first. */
function seenPast(
  estate: Estate,
): ReadonlyMap<Conveyor, readonly (Left & { readonly day: CalendarDay; readonly bare: boolean })[]> {
  const spots = latestRows(estate).flatMap((latest) => {
    const { row, place, bareSince } = latest;
    const day = estate.inspections[estate.readings.inspection[bareSince ?? row] ?? -1]?.date.day;
    const bare = bareSince !== undefined;
    if (day === undefined || !(bare || isAtLimit(estate, latest))) return [];
    const words = bare
      ? `shows bare steel since ${formatDay(day)}`
      : `was read at its limit or below it on ${formatDay(day)}`;
    return [{ place, day, bare, words }];
  });
  const by = new Map<Conveyor, (typeof spots)[number][]>();
  for (const spot of spots.sort((a, b) => Number(b.bare) - Number(a.bare)))
    by.set(spot.place.conveyor, [...(by.get(spot.place.conveyor) ?? []), spot]);
  return by;
}

/** None where it lasts until `next`. */
function reckoned(life: RatedLife | undefined, next: CalendarDay, past: readonly Left[]): readonly Left[] {
  const limit = life && dayAt(life.history, life.end);
  if (!life || limit === undefined || limit > next) return [];
  const day = formatDay(Math.floor(limit) as CalendarDay); // a whole day
  return [
    {
      place: life.place,
      words: `reaches its limit ${past.length > 0 ? 'next' : 'first'}, by hand about ${day}`,
    },
  ];
}

/** What other jobs of that conveyor renew before: the pack says that it is planned and not done. */
function relinedEarlier(estate: Estate, job: Job): ReturnType<typeof relinedBy> {
  const begins = job.window?.from.day ?? -Infinity;
  return estate.jobs
    .filter(
      (other) =>
        other !== job &&
        other.conveyor === job.conveyor &&
        other.window !== undefined &&
        other.window.from.day <= begins,
    )
    .flatMap((other) => relinedBy(other, estate));
}
