// What a step asks of the pieces it finds and what it makes of them, as values.

import type { Piece } from '../ground.js';
import type { States } from '../states.js';
import type { Grade, ViolationKind } from '../violation.js';

export interface Need {
  readonly piece: Piece;
  readonly allowed: States;
  /** The state to go on with where the need is not met, so that one slip is told once. */
  readonly good: number;
  readonly kind: ViolationKind;
  readonly grade: Grade;
  /** Told only where a later step brings it about; otherwise the end of the order tells it as left out. */
  readonly onlyIfLater?: boolean;
  /** With `onlyIfLater`: told as well where no step brings it about at all. */
  readonly orMissing?: boolean;
  /** The step itself is in the wrong place: nothing is taken as mended, and no later step is waited for. */
  readonly keep?: boolean;
  /** With `keep`: the step takes effect all the same, so that what builds on it is not told as well. */
  readonly goesOn?: boolean;
  /** Told, and the piece stays as it is: what is wrong is how the step is done, not what came before it. */
  readonly stays?: boolean;
}

export interface Effect {
  readonly piece: Piece;
  readonly to: number;
}

export interface Demands {
  readonly needs: readonly Need[];
  readonly effects: readonly Effect[];
  /** Pieces that the step is about, with the states that say it was done before: `any` one of them, or `all`. */
  readonly done: { readonly pieces: readonly Piece[]; readonly states: States; readonly by: 'any' | 'all' };
}

export const nothing = { pieces: [], states: 0, by: 'all' } as const;

export function need(
  pieces: readonly Piece[],
  allowed: States,
  good: number,
  kind: ViolationKind,
  grade: Grade,
  onlyIfLater = false,
): Need[] {
  return pieces.map((piece) => ({ piece, allowed, good, kind, grade, onlyIfLater }));
}

export function to(pieces: readonly Piece[], state: number): Effect[] {
  return pieces.map((piece) => ({ piece, to: state }));
}

export function orMissing(needs: readonly Need[]): Need[] {
  return needs.map((each) => ({ ...each, orMissing: true }));
}

/** The same needs where the step itself is in the wrong place, so that nothing is taken as mended. */
export function inTurn(needs: readonly Need[]): Need[] {
  return needs.map((each) => ({ ...each, keep: true }));
}
