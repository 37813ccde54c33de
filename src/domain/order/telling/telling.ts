// A slip as it is about to be told: the step that does it, what it finds, and what the other steps have to do with it.

import { formatLength } from '../../units/format.js';
import type { Step } from '../../model/job.js';
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
  const step = slip.step === undefined ? undefined : w.sequence.steps[slip.step];
  const late = otherStep(w, slip, 'comes too late');
  const cause = otherStep(w, slip, 'made it so');
  return {
    w,
    slip,
    step,
    doing: step ? `"${sayStep(step)}"` : 'The order',
    what: sayPieces(slip.pieces),
    late,
    cause,
    when: whenSaid(slip, late, cause),
    never: slip.missing ? ' No step puts it right before then.' : '',
  };
}

function whenSaid(slip: OrderSlip, late: Step | undefined, cause: Step | undefined): string {
  if (late) return ` "${sayStep(late)}" comes only later.`;
  if (!cause) return '';
  return slip.unsettled
    ? ` "${sayStep(cause)}" may go on at the same time, and nothing says which is first.`
    : ` "${sayStep(cause)}" left it so.`;
}

export function otherStep(w: Walk, slip: OrderSlip, role: StepRole): Step | undefined {
  for (const [i, as] of slip.others) if (as === role) return w.sequence.steps[i];
  return undefined;
}

/** To the tenth of a millimetre. */
export function mm(value: number): string {
  return formatLength(Math.round(value * 10) / 10);
}
