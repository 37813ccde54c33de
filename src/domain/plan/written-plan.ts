// Is a job written already for just this work on that day? Then its hours are those of its own plan, with the crews, platforms
// and limits that it names, because that is what its pack prints.

import type { Estate } from '../model/estate.js';
import type { Job } from '../model/job.js';
import { groundOf, within, type Ground } from '../order/ground.js';
import type { JobPlan } from './job-plan.js';
import { planJob } from './plan-job.js';
import type { CalendarDay } from '../units/calendar.js';

/**
 * The plan of the job of a conveyor that begins on a day and renews what a trial renews, with the same liners. Undefined where
 * there is none, where it does more (a screw), is a part of another, or cannot be done as it is written.
 */
export function writtenPlan(trial: JobPlan, day: CalendarDay, estate: Estate): JobPlan | undefined {
  const { conveyor } = trial.job;
  const wanted = renewedIn(trial.ground);
  const job = estate.jobs.find(
    (each) =>
      each.conveyor === conveyor &&
      each.window?.from.day === day &&
      !each.screwChange &&
      !each.partOf &&
      each.crews.length > 0 &&
      renewedIn(groundOf(each, [], estate)) === wanted,
  );
  const plan = job && planOf(job, estate);
  return plan?.buildable ? plan : undefined;
}

/** Asked once for every scope and option of a conveyor: the same job in the same estate has one plan. */
function planOf(job: Job, estate: Estate): JobPlan {
  const plans = planned.get(estate) ?? new WeakMap<Job, JobPlan>();
  planned.set(estate, plans);
  const plan = plans.get(job) ?? planJob(job, estate, { quick: true });
  plans.set(job, plan);
  return plan;
}

const planned = new WeakMap<Estate, WeakMap<Job, JobPlan>>();

/** Panels by run and liner; a whole run is one however its panels are cut. */
function renewedIn({ runs, scope }: Ground): string {
  return runs
    .flatMap(({ run, liner, panels }) => {
      const renewed = within(panels, scope);
      const which = renewed.length === panels.length ? 'all' : renewed.map(({ panel }) => panel).join();
      return renewed.length === 0 ? [] : [`${run.number}: ${which} of ${liner.name}`];
    })
    .join('; ');
}
