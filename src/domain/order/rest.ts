// How long a place is left alone once a step there has ended: what was washed, glued or painted dries, what was welded cools.
// By the clock, so a night counts. A hot patch cools for half an hour unless its step says otherwise (judgement: polyethylene
// softens at about 80 °C, and a plate of 4 to 6 mm is below that well within the half hour).

import type { Step } from '../model/job.js';
import { areasOf, overlaps, type Ground } from './ground.js';
import { isHot } from './heat.js';
import { atTheMachine } from './side-by-side.js';
import type { Walk } from './walk-state.js';

/** Hours. */
export const usualCooling = 0.5;

export interface Rest {
  readonly kind: 'dries' | 'cools';
  readonly hours: number;
  readonly assumed: boolean;
}

/** Undefined where the place can be worked on at once. */
export function restAfter(ground: Pick<Ground, 'job' | 'joins'>, step: Step): Rest | undefined {
  if (step.rest) return { kind: step.rest.kind, hours: step.rest.time.value, assumed: false };
  if (step.action === 'patch' && isHot(ground, step))
    return { kind: 'cools', hours: usualCooling, assumed: true };
  return undefined;
}

/** True where the step lays hands on the place; air is tested and embers are watched from beside it. */
export function disturbs(step: Step): boolean {
  return atTheMachine(step) && step.action !== 'gas test' && step.action !== 'fire watch';
}

/** Whether two steps work on a length of trough in common. */
export function meet(ground: Pick<Ground, 'areas'>, i: number, j: number): boolean {
  return areasOf(ground, i).some((a) => areasOf(ground, j).some((b) => overlaps(a, b)));
}

/** Pairs that may go on at the same time although one works where the other's place has to dry or cool. */
export function dryingPairs(
  w: Walk,
): { readonly step: number; readonly other: number; readonly rest: Rest }[] {
  const { steps, before } = w.sequence;
  return steps.flatMap((first, i) => {
    const rest = restAfter(w.ground, first);
    if (!rest) return [];
    return steps.flatMap((second, j) =>
      i !== j && disturbs(second) && !before(i, j) && !before(j, i) && meet(w.ground, i, j)
        ? [{ step: Math.max(i, j), other: Math.min(i, j), rest }]
        : [],
    );
  });
}
