// The schedule of a problem that was scheduled a moment ago: while a record or another machine is edited, a job's plan is asked
// for again and again with not a minute of it changed. Known by all that the schedule follows from, so what comes back is what
// a new search would find.

import { scheduleJobs, type Effort, type Schedule, type ScheduleProblem } from './schedule-jobs.js';

/** Problems remembered; those asked for last: a report with its earlier day asks for some fifty, and for most of them twice. */
const most = 64;

/** Of longer ones the pairs alone would be megabytes of text. */
const mostActivities = 250;

const known = new Map<string, Schedule>();

/** As `scheduleJobs`; `effort.cost` must follow from the problem and the timing alone. */
export function scheduledBefore(problem: ScheduleProblem, effort: Effort): Schedule {
  if (problem.activities.length > mostActivities) return scheduleJobs(problem, effort);
  const key = JSON.stringify([problem, effort, effort.cost !== undefined]);
  const schedule = known.get(key) ?? scheduleJobs(problem, effort);
  known.delete(key);
  known.set(key, schedule);
  for (const oldest of known.size > most ? known.keys() : []) {
    known.delete(oldest);
    break;
  }
  return schedule;
}
