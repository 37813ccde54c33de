// What a walk through an order carries along: the state of every piece, who changed it last, and what did not hold.

import type { Ground, Piece } from './ground.js';
import type { Sequence } from './sequence.js';
import type { States } from './states.js';
import type { ClosingError, Grade, ViolationKind } from './violation.js';

/** What another step has to do with a slip. */
export type StepRole =
  'made it so' | 'comes too late' | 'other front' | 'same time' | 'works below' | 'comes between';

/** A need that was not met, or met only by luck; several pieces of one kind make one slip. */
export interface OrderSlip {
  readonly kind: ViolationKind;
  readonly grade: Grade;
  /** Position of the step; undefined for the order as a whole. */
  readonly step: number | undefined;
  readonly pieces: Piece[];
  /** State of the first piece as found, and the state wanted; −1 for none. */
  readonly found: number;
  readonly wanted: number;
  /** Steps that conflict: what brought the wrong state, what would bring the right one later, the other front. */
  readonly others: Map<number, StepRole>;
  readonly closing?: ClosingError;
  /** True where no step of the order brings about what is needed. */
  readonly missing?: boolean;
}

/** Of a slip about how panels go in: no state of a piece would mend it. */
export const noState = { found: -1, wanted: -1 } as const;

export interface Touch {
  readonly step: number;
  readonly piece: number;
  /** What a reader can do with, or all states. */
  readonly allowed: States;
  /** Set where the step changes the piece, or would; equal where it finds it so already. */
  readonly change?: { readonly from: number; readonly to: number };
  readonly kind: ViolationKind;
  readonly grade: Grade;
}

export interface Walk {
  readonly ground: Ground;
  readonly sequence: Sequence;
  readonly slips: OrderSlip[];
  readonly touches: Touch[];
  /** State of each piece at the end. */
  readonly state: Int8Array;
  /** Step that last changed a piece, −1 for none. */
  readonly lastChange: Int32Array;
  /** Pieces whose state was taken as mended. */
  readonly assumed: Uint8Array;
  /** The front that fitted a panel: where it started and which step opened it. */
  readonly fronts: Map<number, { readonly start: 'head' | 'tail'; readonly step: number }>;
  /** Pieces for which an earlier slip has already counted a step as done. */
  readonly told: Map<number, Set<number>>;
  /** Parts that a step puts back, though at the wrong place in the order: not to be told as left off. */
  readonly excused: Set<number>;
}

export function stateOf(w: Walk, piece: Piece): number {
  return w.state[piece.number] ?? 0;
}

/** The step that last changed a piece; undefined where it is as it was found. */
export function changedBy(w: Walk, piece: Piece): number | undefined {
  const step = w.lastChange[piece.number];
  return step === undefined || step < 0 ? undefined : step;
}

/** Names who left a piece as it is, where a step did. */
export function blame(w: Walk, others: OrderSlip['others'], piece: Piece): void {
  const culprit = changedBy(w, piece);
  if (culprit !== undefined) others.set(culprit, 'made it so');
}
