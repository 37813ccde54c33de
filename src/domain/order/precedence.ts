// Which steps of a list bind one another, and which may not overlap: what the checker demands, turned round for a planner.
// The list is walked once in the order given; two steps bind when one changes what the other needs, so every order that
// keeps the bound pairs as they are is accepted by the checker, and the others are free.

import type { Estate } from '../model/estate.js';
import type { Job, Step } from '../model/job.js';
import { areasOf, groundOf, type Ground } from './ground.js';
import { sequenceOf, type Sequence } from './sequence.js';
import { atTheMachine, fallsOnto, handlesLooseParts, isShutFor, unsettledPairs } from './side-by-side.js';
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
  const bound = [
    ...unsettledPairs(unordered).map(({ step, other }): readonly [number, number] => [other, step]),
    ...gateBounds(inLine),
  ];
  return { ground, bound, apart: apartPairs(job, steps, ground) };
}

/** What is shut as a barrier is shut before anything can fall and before isolation, and stays so until nothing can. */
function gateBounds(steps: readonly Step[]): (readonly [number, number])[] {
  const bound: (readonly [number, number])[] = [];
  steps.forEach((gate, g) => {
    if (gate.action !== 'gate shut' && gate.action !== 'gate open') return;
    steps.forEach((step, i) => {
      if (!handlesLooseParts(step) && step.action !== 'isolate') return;
      if (gate.action === 'gate shut' && g < i) bound.push([g, i]);
      if (gate.action === 'gate open' && g > i) bound.push([i, g]);
    });
  });
  return bound;
}

/**
 * Pairs of steps of which one may drop something onto the people of the other. A gate counts as shut where the sequence
 * says so for the pair; without a sequence (the order is still open) where the steps shut it at all.
 */
export function apartPairs(
  job: Job,
  steps: readonly Step[],
  ground: Ground,
  sequence?: Sequence,
): readonly (readonly [number, number])[] {
  if (job.conveyor.incline.value === 0) return [];
  const shut = new Set(
    steps.flatMap((step) => (step.action === 'gate shut' && step.gate ? [step.gate.name] : [])),
  );
  const loose = steps.map(handlesLooseParts);
  const there = steps.map(atTheMachine);
  const pairs: (readonly [number, number])[] = [];
  const falls = (above: number, below: number): boolean =>
    loose[above] === true &&
    there[below] === true &&
    fallsOnto(job.conveyor, areasOf(ground, above), areasOf(ground, below), (gate) =>
      sequence ? isShutFor(sequence, gate, above, below) : shut.has(gate),
    ) !== undefined;
  for (let j = 1; j < steps.length; j++)
    for (let i = 0; i < j; i++) if (falls(i, j) || falls(j, i)) pairs.push([i, j]);
  return pairs;
}
