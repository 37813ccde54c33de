// A schedule in net time laid over the shifts: tests of the air come back in, handing back follows, and every step gets its
// working hours. Times in whole minutes of working time since the first shift began.

import type { Step } from '../model/job.js';
import { pastBreak } from './scheduling/model.js';
import type { Schedule } from './schedule-jobs.js';
import type { Way } from './teams.js';
import type { TimeRules } from './time-rules.js';
import type { RepeatedTest } from './work-axis.js';

export type Arranged = Extract<Schedule, { kind: 'schedule' }>;

export interface LaidOver {
  readonly start: readonly number[];
  readonly finish: readonly number[];
  readonly mode: readonly number[];
  readonly makespan: number;
  readonly lowerBound: number;
  /** Tests of the air beyond those that are steps of the order. */
  readonly tests: readonly RepeatedTest[];
}

export function layOver(
  arranged: Arranged,
  steps: readonly Step[],
  ways: readonly (readonly Way[])[],
  rules: TimeRules,
): LaidOver {
  const { axis, handBack } = rules;
  const last = new Set(handBack);
  const head = steps.flatMap((_, i) => (last.has(i) ? [] : [i]));
  const start = arranged.start.map((net, i) =>
    axis.toWork(net, goesOnDuring(steps[i], net, rules) ? 'finish' : 'start'),
  );
  const finish = arranged.finish.map((net) => axis.toWork(net, 'finish'));
  const mode = [...arranged.mode];
  const done = Math.max(0, ...head.map((i) => arranged.finish[i] ?? 0));
  let at = Math.max(0, ...head.map((i) => finish[i] ?? 0));
  for (const i of handBack) {
    const { way, begun, end } = soonest(ways[i] ?? [], rules.whole[i] ?? false, at, rules);
    [start[i], finish[i], mode[i]] = [begun, end, way];
    at = end;
  }
  const makespan = Math.max(0, ...finish);
  const bound = handBack.reduce(
    (time, i) => soonest(ways[i] ?? [], rules.whole[i] ?? false, time, rules).end,
    axis.toWork(arranged.lowerBound, 'finish'),
  );
  const firstTest = Math.min(
    Infinity,
    ...steps.flatMap((step, i) => (step.action === 'gas test' ? [finish[i] ?? 0] : [])),
  );
  return {
    start,
    finish,
    mode,
    makespan,
    lowerBound: arranged.optimal ? makespan : Math.min(bound, makespan),
    tests: axis.tests.filter(({ net, from }) => net < done && from >= firstTest),
  };
}

/** Whoever watches for fire stands outside and watches on while the air is tested. */
function goesOnDuring(step: Step | undefined, net: number, { axis }: TimeRules): boolean {
  return step?.action === 'fire watch' && !axis.breaks.includes(net);
}

/** The way that is finished first, begun no sooner than a time. */
function soonest(
  ways: readonly Way[],
  whole: boolean,
  from: number,
  { axis }: TimeRules,
): { readonly way: number; readonly begun: number; readonly end: number } {
  const ends = axis.nights.map(({ at }) => at);
  return ways
    .map(({ minutes }, way) => {
      const begun = whole ? pastBreak(ends, from, minutes) : from;
      return { way, begun, end: begun + minutes };
    })
    .reduce((best, each) => (each.end < best.end ? each : best), { way: 0, begun: from, end: Infinity });
}
