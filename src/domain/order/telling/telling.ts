// A slip as it is about to be told: the step that does it, what it finds, and what the other steps have to do with it.

import { unitOfMachine, lengthOn } from '../../model/unit-of-machine.js';
import type { Step } from '../../model/job.js';
import type { Piece } from '../ground.js';
import { stepAt } from '../sequence.js';
import type { ViolationKind } from '../violation.js';
import type { OrderSlip, StepRole, Walk } from '../walk-state.js';
import { sayStep } from '../words.js';
import { sayPieces } from './pieces.js';

export interface ViolationWords {
  readonly message: string;
  readonly reason: string;
}

export interface Telling {
  readonly w: Walk;
  readonly slip: OrderSlip;
  readonly step: Step | undefined;
  /** The first of what it is about. */
  readonly piece: Piece;
  /** The step in quotes, or "The order". */
  readonly doing: string;
  /** The pieces it is about. */
  readonly what: string;
  /** The step that comes too late, and the one that brought about what is wrong. */
  readonly late: Step | undefined;
  readonly cause: Step | undefined;
  /** What these two have to do with it, as a sentence of its own with a space before it, or nothing. */
  readonly when: string;
  /** Said where no step puts it right; else nothing. */
  readonly never: string;
}

export type WordsByKind<K extends ViolationKind> = Readonly<Record<K, (telling: Telling) => ViolationWords>>;

export function tellingOf(w: Walk, slip: OrderSlip): Telling {
  const step = slip.step === undefined ? undefined : stepAt(w.sequence, slip.step);
  const late = otherStep(w, slip, 'comes too late');
  const cause = otherStep(w, slip, 'made it so');
  return {
    w,
    slip,
    step,
    piece: known(slip.pieces[0]),
    doing: step ? `"${sayStep(step)}"` : 'The order',
    what: sayPieces(slip.pieces, unitOfMachine(w.ground.job.conveyor)),
    late,
    cause,
    when: whenSaid(late, cause),
    never: slip.missing ? ' No step puts it right before then.' : '',
  };
}

/** What every slip of a kind has. @throws RangeError where it has not. */
export function known<T>(value: T | undefined): T {
  if (value === undefined) throw new RangeError('A slip lacks what it is told by.');
  return value;
}

function whenSaid(late: Step | undefined, cause: Step | undefined): string {
  if (late) return ` "${sayStep(late)}" comes only later.`;
  if (!cause) return '';
  return ` "${sayStep(cause)}" left it so.`;
}

export function otherStep(w: Walk, slip: OrderSlip, role: StepRole): Step | undefined {
  for (const [i, as] of slip.others) if (as === role) return stepAt(w.sequence, i);
  return undefined;
}

/** To the tenth of a millimetre. */
export function mm({ w }: Telling, value: number): string {
  return lengthOn(w.ground.job.conveyor, Math.round(value * 10) / 10);
}
