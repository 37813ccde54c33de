// The plans of the jobs ahead as two tables: one row a job with its length and proven bound, one row a step with who, when and
// how much later it may be.

import type { Job } from '../../domain/model/job.js';
import type { Estate } from '../../domain/model/estate.js';
import type { JobPlan, PlannedStep } from '../../domain/plan/job-plan.js';
import { planJob } from '../../domain/plan/plan-job.js';
import { sayStep } from '../../domain/order/words.js';
import type { CalendarDay } from '../../domain/units/calendar.js';
import { day, number, text, whole, yesNo, type DataColumn } from '../remaining-life/columns.js';
import { tableOf, type Kind, type EstateTable } from './table.js';

/** Jobs whose window has not ended on the day, or that have none yet. */
export function jobsAhead({ jobs }: Estate, asOf: CalendarDay | undefined): readonly Job[] {
  return jobs.filter(({ window }) => window === undefined || asOf === undefined || window.to.day >= asOf);
}

export function planTables(
  estate: Estate,
  asOf: CalendarDay | undefined,
): readonly [jobs: EstateTable, steps: EstateTable] {
  const plans = jobsAhead(estate, asOf).map((job) => planJob(job, estate, { quick: true }));
  const steps = plans.flatMap((plan) => plan.steps.map((step, i) => ({ plan, step, number: i + 1 })));
  return [tableOf(jobsKind, plans), tableOf(stepsKind, steps)];
}

const jobColumns: readonly DataColumn<JobPlan>[] = [
  ...named<JobPlan>((plan) => plan),
  text('title', 'what it is called', ({ job }) => job.title),
  text('outage', 'outage it is done in', ({ job }) => job.window?.outage?.name),
  day('window_from', 'first day of its window', ({ job }) => job.window?.from.day),
  day('window_to', 'last day of its window', ({ job }) => job.window?.to.day),
  text('order_of_work', 'as written or proposed', ({ order }) => order, { always: true }),
  yesNo('buildable', 'no check speaks against it', ({ buildable }) => buildable, { always: true }),
  text(
    'obstacles',
    'what is to be settled first',
    ({ problems }) =>
      problems
        .filter(({ stops }) => stops)
        .map(({ message }) => message)
        .join(' ') || undefined,
  ),
  whole('steps', 'steps of the plan', ({ steps }) => steps.length, { always: true }),
  number('duration_h', 'working hours from the first step to the last', 2, ({ duration }) => duration),
  number(
    'shortest_h',
    'no plan with these steps and crews can be shorter',
    2,
    ({ lowerBound }) => lowerBound,
  ),
  yesNo('proven_shortest', 'the two are equal', ({ optimal }) => optimal, { always: true }),
  number('available_h', 'working hours in the window', 2, ({ available }) => available),
  day('finishes_on', 'day the last step ends', ({ finish }) => finish?.day),
  number('finishes_at_h', 'hours after midnight on that day', 2, ({ finish }) => finish?.hour),
];

interface StepRow {
  readonly plan: JobPlan;
  readonly step: PlannedStep;
  readonly number: number;
}

const stepColumns: readonly DataColumn<StepRow>[] = [
  ...named<StepRow>(({ plan }) => plan),
  whole('step', 'by start, from 1', ({ number }) => number, { always: true }),
  text('action', 'what is done', ({ step }) => step.step.action, { always: true }),
  text('what', 'what is done where', ({ step }) => sayStep(step.step), { always: true }),
  text('crews', 'by whom', ({ step }) => step.crews.join(' and ') || undefined),
  whole('people', 'how many of them', ({ step }) => step.people, { always: true }),
  text('access_unit', 'from where', ({ step }) => step.unit),
  number('start_h', 'working hours since the first shift', 2, ({ step }) => step.start, { always: true }),
  number('finish_h', 'the same, of its end', 2, ({ step }) => step.finish, { always: true }),
  day('starts_on', 'day it begins', ({ step }) => step.from?.day),
  number('starts_at_h', 'hours after midnight on that day', 2, ({ step }) => step.from?.hour),
  day('ends_on', 'day it ends', ({ step }) => step.to?.day),
  number('ends_at_h', 'hours after midnight on that day', 2, ({ step }) => step.to?.hour),
  number('person_hours', 'work in it', 2, ({ step }) => step.work.personHours, { always: true }),
  number('float_h', 'working hours it may be late', 2, ({ step }) => step.float, { always: true }),
  yesNo('critical', 'a delay of it delays the end', ({ step }) => step.critical, { always: true }),
  text('repeat', 'of a test of the air that is no step of the order: why', ({ step }) => step.repeat),
];

function named<Row>(planOf: (row: Row) => JobPlan): readonly DataColumn<Row>[] {
  return [
    text('plant', 'name of the plant', (row) => planOf(row).job.conveyor.plant.name, { always: true }),
    text('conveyor', 'name of the conveyor', (row) => planOf(row).job.conveyor.name, { always: true }),
    text('job', 'name of the job', (row) => planOf(row).job.name, { always: true }),
  ];
}

export const jobsKind: Kind<JobPlan> = {
  name: 'jobs',
  about: 'a job ahead, with its plan',
  columns: jobColumns,
};

export const stepsKind: Kind<StepRow> = {
  name: 'steps',
  about: 'a step of a job ahead, by its start',
  columns: stepColumns,
};
