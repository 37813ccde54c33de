// Which steps of a list bind one another, and which may not overlap: what the checker demands, turned round for a planner.
// The list is walked once in the order given; two steps bind when one changes what the other needs, so every order that
// keeps the bound pairs as they are is accepted by the checker, and the others are free.

import type { Estate } from '../model/estate.js';
import type { Job, Step } from '../model/job.js';
import { groundOf, type Ground } from './ground.js';
import { sequenceOf } from './sequence.js';
import { atTheMachine, handlesLooseParts, meets, unsettledPairs, zonesOf } from './side-by-side.js';
import { walk } from './walk.js';
import type { Walk } from './walk-state.js';

export interface Precedence {
  readonly ground: Ground;
  /** Positions: the first before the second. */
  readonly bound: readonly (readonly [number, number])[];
  /** Positions of steps of which one has loose parts above where people are at the other: never at the same time. */
  readonly apart: readonly (readonly [number, number])[];
}

/** `steps` in an order that can be built; their own `after` is not looked at. */
export function precedenceOf(job: Job, steps: readonly Step[], estate: Estate): Precedence {
  const inLine = steps.map((step) => ({ ...step, after: [] }));
  const ground = groundOf(job, inLine, estate);
  const w = walk(ground, sequenceOf(inLine));
  const unordered: Walk = { ...w, sequence: { ...w.sequence, before: () => false } };
  const bound = unsettledPairs(unordered).map(({ step, other }): readonly [number, number] => [other, step]);
  return { ground, bound, apart: apartPairs(job, steps, ground) };
}

export function apartPairs(
  job: Job,
  steps: readonly Step[],
  ground: Ground,
): readonly (readonly [number, number])[] {
  if (job.conveyor.incline.value === 0) return [];
  const zones = zonesOf({ ground });
  const up = job.conveyor.incline.value > 0;
  const pairs: (readonly [number, number])[] = [];
  const falls = (above: number, below: number): boolean => {
    const a = steps[above];
    const b = steps[below];
    return (
      a !== undefined &&
      b !== undefined &&
      handlesLooseParts(a) &&
      atTheMachine(b) &&
      meets(ground.areas[above] ?? [], ground.areas[below] ?? [], zones, up) !== undefined
    );
  };
  for (let j = 1; j < steps.length; j++)
    for (let i = 0; i < j; i++) if (falls(i, j) || falls(j, i)) pairs.push([i, j]);
  return pairs;
}
