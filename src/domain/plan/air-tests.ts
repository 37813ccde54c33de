// When and how often is the air of an enclosed trough tested in this job? From the gas tests of the order (their time, their
// `every`), the times of what comes before the first of them, and the shifts.

import type { Step } from '../model/job.js';
import type { Ground } from '../order/ground.js';
import { pastBreak } from './scheduling/model.js';
import type { Way } from './teams.js';
import type { AirTests } from './work-axis.js';

/** Undefined where the trough is not enclosed or nothing tests it. `ends`: of shifts, in minutes. */
export function airTestsOf(
  ground: Ground,
  steps: readonly Step[],
  ways: readonly (readonly Way[])[],
  waits: readonly (readonly number[])[],
  whole: (step: Step) => boolean,
  ends: readonly number[],
): AirTests | undefined {
  if (!ground.job.conveyor.confinedSpace) return undefined;
  const shortest = steps.map((_, i) => Math.min(...(ways[i] ?? []).map((way) => way.minutes)));
  const known = new Map<number, number>();
  const finish = (i: number): number => {
    const found = known.get(i);
    if (found !== undefined) return found;
    known.set(i, 0); // a circle ends here
    const begun = Math.max(0, ...(waits[i] ?? []).map(finish));
    const length = shortest[i] ?? 0;
    const step = steps[i];
    const end = (step && whole(step) ? pastBreak(ends, begun, length) : begun) + length;
    known.set(i, end);
    return end;
  };
  const tests = steps.flatMap((step, i) => (step.action === 'gas test' ? [i] : []));
  const first = tests.map((i) => ({ i, end: finish(i) })).sort((a, b) => a.end - b.end)[0];
  if (!first) return undefined;
  const stated = tests.flatMap((i) => steps[i]?.every?.value ?? []).filter((hours) => hours > 0);
  return {
    first: first.end,
    length: shortest[first.i] ?? 0,
    every: stated.length > 0 ? Math.round(Math.min(...stated) * 60) : undefined,
  };
}

/**
 * The steps at the end that wait for everything else and reach into nothing (opening a gate, handing back, running): the air is
 * not tested for them. In their order.
 */
export function handBackOf(
  steps: readonly Step[],
  waits: readonly (readonly number[])[],
  inside: (step: Step) => boolean,
): readonly number[] {
  const followers = steps.map(() => 0);
  for (const list of waits) for (const i of new Set(list)) followers[i] = (followers[i] ?? 0) + 1;
  let ends = steps.flatMap((_, i) => (followers[i] === 0 ? [i] : []));
  const tail: number[] = [];
  for (;;) {
    // Where only one is left that nothing waits for, it waits for all the others.
    const [last = -1, ...others] = ends;
    const step = steps[last];
    if (!step || others.length > 0 || inside(step)) return tail;
    tail.unshift(last);
    ends = [];
    for (const i of new Set(waits[last])) {
      followers[i] = (followers[i] ?? 0) - 1;
      if (followers[i] === 0) ends.push(i);
    }
  }
}
