// What repairs are made of: a step put before or after another, so that it is sure to be done in that order, and steps that
// have no place in the text yet.

import type { Step, StepAction } from '../model/job.js';
import type { Stretch } from '../model/stretch.js';
import { worksInside } from './people.js';
import { stepAt } from './sequence.js';
import type { Repair, StepChange } from './violation.js';
import type { OrderSlip, StepRole, Walk } from './walk-state.js';
import { sayStep } from './words.js';

/** A slip at a step: what most repairs look at. */
export interface SlipAt {
  readonly w: Walk;
  readonly slip: OrderSlip;
  /** Position of the step. */
  readonly at: number;
  readonly here: Step;
}

/** Positions of the steps that have that to do with a slip. */
export function inRole(slip: OrderSlip, role: StepRole): number[] {
  return [...slip.others].flatMap(([i, as]) => (as === role ? [i] : []));
}

/** A step that waits for steps it names is to wait for one more; one that waits for all above it does so anyway. */
export function waits(step: Step, after: Step): StepChange[] {
  return step.after.length > 0 ? [{ change: 'add after', step, after }] : [];
}

/** What the second waits for, once the first is to come before it: no longer the other way round. */
export function inOrder(first: Step, then: Step): StepChange[] {
  const { name } = then;
  return [
    ...(name !== undefined && first.after.some((use) => use.name === name)
      ? [{ change: 'drop after', step: first, name } as const]
      : []),
    ...waits(then, first),
  ];
}

/** Changes after which step a is sure to be done before step b, by moving or naming a. */
export function makeBefore(w: Walk, a: number, b: number): Repair[] {
  const first = stepAt(w.sequence, a);
  const then = stepAt(w.sequence, b);
  const wait = inOrder(first, then);
  if (a < b)
    return wait.length > 0
      ? [{ title: `Let "${sayStep(then)}" wait for "${sayStep(first)}"`, changes: wait }]
      : [];
  return [
    {
      title: `Move "${sayStep(first)}" before "${sayStep(then)}"`,
      changes: [{ change: 'move', step: first, place: 'before', other: then }, ...wait],
    },
  ];
}

/** Changes after which step b comes after step a, by moving b. */
export function makeAfter(w: Walk, b: number, a: number): Repair[] {
  const moved = stepAt(w.sequence, b);
  const first = stepAt(w.sequence, a);
  return [
    {
      title: `Move "${sayStep(moved)}" after "${sayStep(first)}"`,
      changes: [{ change: 'move', step: moved, place: 'after', other: first }, ...inOrder(first, moved)],
    },
  ];
}

/** Has no place in the text yet: its origin is empty. */
export function newStep(
  action: StepAction,
  like: Pick<Step, 'origin' | 'actionOrigin' | 'crews' | 'attendants' | 'aboard'>,
  stretch: Stretch | undefined,
  gate?: string,
): Step {
  const origin = { source: like.origin.source, start: like.origin.start, end: like.origin.start };
  return {
    action,
    crews: [],
    after: [],
    origin,
    actionOrigin: origin,
    ...(stretch ? { stretch } : {}),
    ...(gate === undefined ? {} : { gate: { name: gate, origin } }),
    // Who stays outside there stays outside here too.
    ...(worksInside(action) && like.attendants ? { attendants: like.attendants } : {}),
    ...(worksInside(action) && like.aboard ? { aboard: like.aboard } : {}),
  };
}

export function needsStretch(action: StepAction): boolean {
  switch (action) {
    case 'isolate':
    case 'prove dead':
    case 'remove isolation':
    case 'run empty':
    case 'run loaded':
    case 'restrain screw':
    case 'unbolt drive':
    case 'bolt drive':
    case 'release screw':
    case 'empty':
    case 'pause':
    case 'other work':
    case 'gate off':
    case 'gate on':
    case 'gate shut':
    case 'gate open':
      return false;
    default:
      return true;
  }
}
