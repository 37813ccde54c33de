// Does a job reline the spot that reaches its limit first? Hand arithmetic; silent where that spot lasts until the outage after
// the job, because then somebody may well have chosen to leave it.

import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { relinedBy } from '../../../domain/decision/jobs-written.js';
import type { Estate } from '../../../domain/model/estate.js';
import { dayAt } from '../../../domain/model/history.js';
import type { Job } from '../../../domain/model/job.js';
import { addDays, formatDay } from '../../../domain/units/calendar.js';
import { firstToGo } from '../../evidence/hand-lives.js';
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
    for (const job of jobs) {
      const life = first.get(job.conveyor);
      const [reline] = job.relines;
      if (!life || !reline || !job.window) continue;
      const { window } = job;
      const limit = dayAt(life.history, life.end);
      const next =
        job.conveyor.plant.outages
          .map(({ from }) => from.day)
          .filter((day) => day > window.to.day)
          .sort((a, b) => a - b)[0] ?? addDays(window.to.day, 365);
      const areas = relinedBy(job, estate);
      const { at, name } = life.place;
      if (limit === undefined || limit > next || areas.length === 0) continue;
      if (areas.some(({ from, to }) => from <= at && at <= to)) continue;
      if (goesEarlier(estate, job, at)) continue;
      const relined = areas
        .map(({ from, to }) => `${chainageOn(job.conveyor, from)} to ${chainageOn(job.conveyor, to)}`)
        .join(' and ');
      yield {
        origin: reline.origin,
        message:
          `Job ${job.name} relines ${relined} of ${job.conveyor.name}; ` +
          `${name} at ${chainageOn(job.conveyor, at)} is outside and reaches its limit first, ` +
          `by hand about ${formatDay(Math.floor(limit) as typeof next)}.`, // a whole day
        related: [{ origin: life.place.conveyor.nameOrigin, message: `conveyor ${job.conveyor.name}` }],
      };
    }
  },
};

/** Another job of that conveyor renews the spot before: the pack says that it is planned and not done. */
function goesEarlier(estate: Estate, job: Job, at: number): boolean {
  const begins = job.window?.from.day ?? -Infinity;
  return estate.jobs.some(
    (other) =>
      other !== job &&
      other.conveyor === job.conveyor &&
      other.window !== undefined &&
      other.window.from.day <= begins &&
      relinedBy(other, estate).some(({ from, to }) => from <= at && at <= to),
  );
}
