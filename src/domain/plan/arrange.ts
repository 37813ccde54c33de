// A schedule as the rows of a plan: each step with its day and hour, its people, what it waits for and how much it can slip.

import type { Job, Step } from '../model/job.js';
import { floatsOf, type Placed } from './floats.js';
import type { PlannedStep } from './job-plan.js';
import { namedSteps, waitsOf } from './named-steps.js';
import type { PlanningBasis } from './planning-basis.js';
import type { LaidOver } from './lay-over.js';
import type { Way } from './teams.js';

const minutes = 60;

/** Positions of the steps by start, then by finish, then as listed. */
export function byStart({ start, finish }: LaidOver): number[] {
  return start
    .map((_, i) => i)
    .sort((a, b) => (start[a] ?? 0) - (start[b] ?? 0) || (finish[a] ?? 0) - (finish[b] ?? 0) || a - b);
}

/** The steps in the order they begin, with their hours, people and floats; `rename` gives them names to wait for. */
export function arrange(
  basis: PlanningBasis,
  schedule: LaidOver,
  order: readonly number[],
  rename: boolean,
): PlannedStep[] {
  const { job, steps, works, ways, waits, apart, calendar } = basis;
  const way = (i: number): Way | undefined => ways[i]?.[schedule.mode[i] ?? 0];
  const after = waitsOf(order, schedule.finish, schedule.start, waits, apart, (i) => way(i)?.teams ?? []);
  const named = rename
    ? namedSteps(
        order.map((i) => withTeam(steps[i], way(i), job)).filter((step) => step !== undefined),
        after,
      )
    : order.flatMap((i) => steps[i] ?? []);
  const float = floats(basis, schedule, order, after);
  return order.flatMap((i, p): PlannedStep[] => {
    const step = named[p];
    const work = works[i];
    if (!step || !work) return [];
    const start = (schedule.start[i] ?? 0) / minutes;
    const finish = (schedule.finish[i] ?? 0) / minutes;
    return [
      {
        step,
        work,
        start,
        finish,
        from: calendar.startAt(start),
        to: calendar.finishAt(finish),
        crews: way(i)?.crews ?? [],
        people: way(i)?.people ?? 0,
        unit: way(i)?.unit,
        float: (float[p] ?? 0) / minutes,
        critical: (float[p] ?? 0) === 0,
        after: after[p] ?? [],
      },
    ];
  });
}

/** In working time; a step that tests of the air interrupt begins earlier by them. */
function floats(
  { ways, rules }: PlanningBasis,
  schedule: LaidOver,
  order: readonly number[],
  after: readonly (readonly number[])[],
): number[] {
  const { axis, handBack, rests } = rules;
  const position = new Map(order.map((i, p) => [i, p]));
  const way = (i: number): Way | undefined => ways[i]?.[schedule.mode[i] ?? 0];
  const placed = order.map((i, p): Placed => {
    const length = way(i)?.minutes ?? 0;
    return {
      start: schedule.start[i] ?? 0,
      finish: schedule.finish[i] ?? 0,
      begins: handBack.includes(i)
        ? (finish) => finish - length
        : (finish) => axis.toWork(axis.toNet(finish) - length, 'start'),
      after: after[p] ?? [],
      whole: rules.whole[i] ?? false,
      unit: way(i)?.unit,
      extent: rules.extents[i],
      ...(rules.stands[i] ? { stands: rules.stands[i] } : {}),
      rests: rests.flatMap(({ first, then, leastClock = 0 }) => {
        const on = position.get(first);
        return then === i && on !== undefined ? [{ on, clock: leastClock }] : [];
      }),
    };
  });
  return floatsOf(placed, { nights: axis.nights, move: rules.move, craneMove: rules.craneMove });
}

function withTeam(step: Step | undefined, way: Way | undefined, job: Job): Step | undefined {
  if (!step) return undefined;
  const crews = job.crews.filter(({ use }) => way?.crews.includes(use.name));
  const standBy = job.crews.filter(({ use }) => way?.standBy?.includes(use.name));
  const unit = job.accessUnits.find(({ use }) => use.name === way?.unit);
  const aboard = way?.aboard === undefined ? undefined : { count: way.aboard, origin: job.nameOrigin };
  return {
    ...step,
    crews,
    ...(unit ? { unit } : {}),
    ...(aboard ? { aboard } : {}),
    ...(standBy.length > 0 ? { attendants: standBy } : {}),
  };
}

/** Back from the end, each time to the last of what was waited for; as far as a delay delays the end. */
export function chainOf(planned: readonly PlannedStep[]): number[] {
  const last = Math.max(0, ...planned.map((each) => each.finish));
  let at = planned.findIndex((each) => each.finish >= last - 1e-9);
  const chain: number[] = [];
  while (at >= 0) {
    chain.unshift(at);
    const before: readonly number[] = planned[at]?.after ?? [];
    at = before.reduce(
      (best, p) => (best < 0 || (planned[p]?.finish ?? 0) > (planned[best]?.finish ?? 0) ? p : best),
      -1,
    );
  }
  return chain.filter((p) => planned[p]?.critical);
}
