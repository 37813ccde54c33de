// The repeated tests of the air as rows of the plan: who tests, when, and why. They follow from `every` and from the ends of
// shifts, so they are no steps of the order as it is written.

import type { Job, Step } from '../model/job.js';
import type { JobPlan, PlannedStep } from './job-plan.js';
import type { LaidOver } from './lay-over.js';
import type { WorkCalendar } from './work-calendar.js';

export interface WithTests {
  readonly steps: readonly PlannedStep[];
  /** Where each of the steps given now stands. */
  readonly position: readonly number[];
}

export function withRepeatedTests(
  job: Job,
  planned: readonly PlannedStep[],
  { tests }: Pick<LaidOver, 'tests'>,
  calendar: WorkCalendar,
): WithTests {
  const rows = tests.flatMap((test): { row: PlannedStep; at: number }[] => {
    const [from, to] = [test.from / 60, test.to / 60];
    const before = planned.flatMap((each, p) =>
      each.step.action === 'gas test' && each.finish <= from + 1e-9 ? [p] : [],
    );
    const last = planned[before.at(-1) ?? -1];
    if (!last) return [];
    const { every: _, name: __, ...step } = last.step;
    const repeat: Step = { ...step, after: [], ...(before.length > 1 ? { stretch: everywhere(job) } : {}) };
    // Late by so much delays the end: no more than the steps that wait for it can bear.
    const waiting = planned.filter((each) => each.finish > to + 1e-9);
    const float = Math.min(...waiting.map((each) => each.float), Infinity);
    const crews = whoTests(job, planned, last, from, to);
    const row: PlannedStep = {
      step: { ...repeat, crews: job.crews.filter(({ use }) => crews.includes(use.name)) },
      crews,
      people: last.people,
      unit: undefined,
      work: {
        ...last.work,
        basis:
          test.why === 'break'
            ? 'again before work goes on'
            : `again after ${last.step.every?.text ?? 'its interval'}`,
      },
      start: from,
      finish: to,
      from: calendar.startAt(from),
      to: calendar.finishAt(to),
      float: Number.isFinite(float) ? float : 0,
      critical: !(float > 0),
      after: before.slice(-1),
      repeat: test.why,
    };
    return [{ row, at: from }];
  });
  // A test goes before what begins with it; all else stays as it came.
  const all = [
    ...rows.map(({ row, at }) => ({ row, at, p: -1 })),
    ...planned.map((row, p) => ({ row, at: row.start, p })),
  ].sort((a, b) => a.at - b.at);
  const position: number[] = [];
  all.forEach(({ p }, k) => {
    if (p >= 0) position[p] = k;
  });
  return {
    position,
    steps: all.map(({ row }) => ({ ...row, after: row.after.map((p) => position[p] ?? p) })),
  };
}

/** Who tested first, unless they are all watching for fire then; then another crew of the job. */
function whoTests(
  job: Job,
  planned: readonly PlannedStep[],
  first: PlannedStep,
  from: number,
  to: number,
): readonly string[] {
  const free = (name: string): boolean => {
    const size = job.crews.find(({ use }) => use.name === name)?.crew?.size.count ?? Infinity;
    const watching = planned.filter(
      ({ step, crews, start, finish }) =>
        step.action === 'fire watch' && crews.includes(name) && start < to - 1e-9 && finish > from + 1e-9,
    );
    return watching.reduce((sum, { people }) => sum + people, 0) < size;
  };
  if (first.crews.every(free)) return first.crews;
  const other = job.crews.find(({ use }) => free(use.name));
  return other ? [other.use.name] : first.crews;
}

function everywhere(job: Job): NonNullable<Step['stretch']> {
  return { kind: 'all', origin: job.nameOrigin };
}

/** Tests of the air beyond the first, as the plan has them. */
export function repeatsOf(job: Job, steps: readonly PlannedStep[]): JobPlan['repeatGasTests'] {
  const times = steps.filter(({ repeat }) => repeat !== undefined).length;
  if (times === 0) return undefined;
  const stated = steps.flatMap(({ step }) => step.every?.value ?? []);
  const every = stated.length > 0 ? Math.min(...stated) : undefined;
  return { times, ...(every === undefined ? {} : { every }) };
}
