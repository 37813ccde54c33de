// Is what a step needs there? Where it is not, the slip is told once and the walk goes on as if it had been. And what a step
// changes: the state of a piece, with who changed it.

import type { Need } from './demands/demand.js';
import { areasOf, touches } from './ground.js';
import type { Area, Piece } from './ground.js';
import { broughtBy, holds } from './states.js';
import type { States } from './states.js';
import { blame, changedBy, stateOf, type OrderSlip, type Walk } from './walk-state.js';
import { stepAt, walkedAt } from './sequence.js';

/**
 * Looks at one need, notes it, and where it is not met tells so. What opens the way is then taken as done; a step that closes
 * up too early is put off instead: the answer is the position it should have waited for, −1 for none. A step that comes too
 * late is told once, however many others need it.
 */
export function check(w: Walk, i: number, position: number, need: Need): number {
  const { number } = need.piece;
  const found = stateOf(w, need.piece);
  if (changedBy(w, need.piece) !== i)
    w.touches.push({ step: i, piece: number, allowed: need.allowed, kind: need.kind, grade: need.grade });
  if (holds(need.allowed, found)) return -1;
  if (need.keep) {
    const slip = slipAt(w, i, need, found);
    slip.pieces.push(need.piece);
    blame(w, slip.others, need.piece);
    return -1;
  }
  const later = laterStep(w, position, need.piece, need.allowed);
  if (need.stays) return tellAsItIs(w, i, need, found, later);
  if (later === undefined) {
    if (need.orMissing && (w.excused.has(number) || w.assumed[number])) return -1;
    if (!need.onlyIfLater || need.orMissing) tellMissing(w, i, need, found);
    return -1;
  }
  const late = walkedAt(w.sequence, later);
  const mine = w.slips.find(
    (slip) => slip.step === i && [...slip.others.values()].includes('comes too late'),
  );
  const root = w.slips.find((slip) => slip.others.get(late) === 'comes too late');
  if (mine) {
    mine.others.set(late, 'comes too late');
    if (sameKind(mine, need)) mine.pieces.push(need.piece);
  } else if (!root) {
    const slip = slipAt(w, i, need, found);
    slip.pieces.push(need.piece);
    slip.others.set(late, 'comes too late');
  }
  if (need.onlyIfLater) return later;
  countChainAsDone(w, position, later, need.piece, found);
  assume(w, need.piece, need.good);
  return -1;
}

/** One slip for all that is in the way of a step that is wrong in itself; what would clear it later is named. */
function tellAsItIs(w: Walk, i: number, need: Need, found: number, later: number | undefined): number {
  const known = w.slips.find((slip) => slip.step === i && slip.kind === need.kind);
  const slip = known ?? slipAt(w, i, need, found);
  slip.pieces.push(need.piece);
  if (later !== undefined) slip.others.set(walkedAt(w.sequence, later), 'comes too late');
  return -1;
}

/** No step brings it about: told for everything of its kind in the step's stretch, as one step to be added would. */
export function tellMissing(w: Walk, i: number, need: Need, found: number): void {
  const slip = slipAt(w, i, need, found, true);
  const areas = areasOf(w.ground, i);
  const alike =
    need.kind === 'not contiguous' || need.piece.kind === 'gate'
      ? [need.piece]
      : w.ground.pieces.filter(
          (piece) =>
            piece.kind === need.piece.kind &&
            (need.orMissing
              ? !w.excused.has(piece.number) && !holds(need.allowed, stateOf(w, piece))
              : stateOf(w, piece) === found &&
                (piece === need.piece || piece.kind === 'air' || areas.some((area) => touches(piece, area)))),
        );
  for (const piece of alike) {
    slip.pieces.push(piece);
    blame(w, slip.others, piece);
    assume(w, piece, need.good);
  }
}

/** Every step of the chain that leads to the wanted state counts as done: isolate with prove dead, strip with clean. */
export function countChainAsDone(
  w: Walk,
  position: number,
  later: number,
  piece: Piece,
  found: number,
): void {
  const last = walkedAt(w.sequence, later);
  countAsDone(w, last, piece);
  const wanted = stepAt(w.sequence, last).action;
  for (const state of [1, 2]) {
    const chain = broughtBy(piece.kind, found, state);
    if (chain.length < 2 || chain.at(-1) !== wanted) continue;
    for (let p = position + 1; p < later; p++) {
      const j = walkedAt(w.sequence, p);
      if (stepAt(w.sequence, j).action === chain[0] && reaches(w, j, piece, areasOf(w.ground, j)))
        countAsDone(w, j, piece);
    }
  }
}

export function sameKind(slip: OrderSlip, need: Need): boolean {
  return (
    slip.kind === need.kind &&
    (need.onlyIfLater
      ? aboutParts(slip.pieces[0]) && aboutParts(need.piece)
      : slip.pieces[0]?.kind === need.piece.kind)
  );
}

export function countAsDone(w: Walk, step: number, piece: Piece): void {
  const told = w.told.get(step);
  if (told) told.add(piece.number);
  else w.told.set(step, new Set([piece.number]));
}

export function assume(w: Walk, piece: Piece, state: number): void {
  w.state[piece.number] = state;
  w.assumed[piece.number] = 1;
}

export function change(w: Walk, i: number, piece: Piece, to: number): void {
  const from = stateOf(w, piece);
  w.touches.push({
    step: i,
    piece: piece.number,
    allowed: -1,
    change: { from, to },
    kind: 'done twice',
    grade: 'incomplete',
  });
  if (from === to) return;
  w.state[piece.number] = to;
  w.assumed[piece.number] = 0;
  w.lastChange[piece.number] = i;
}

/** A slip of this step, kind and kind of piece (what is still open counts as one kind); a new one where there is none yet. */
export function slipAt(w: Walk, i: number, need: Need, found: number, missing = false): OrderSlip {
  const known = w.slips.find(
    (slip) =>
      slip.step === i &&
      (slip.missing ?? false) === missing &&
      (missing
        ? slip.kind === need.kind && slip.pieces[0]?.kind === need.piece.kind
        : sameKind(slip, need)) &&
      ((need.onlyIfLater && !missing) || slip.found === found),
  );
  if (known) return known;
  const slip: OrderSlip = {
    kind: need.kind,
    grade: need.grade,
    step: i,
    pieces: [],
    found,
    wanted: need.good,
    others: new Map(),
    ...(missing ? { missing } : {}),
  };
  w.slips.push(slip);
  return slip;
}

export function aboutParts(piece: Piece | undefined): boolean {
  return piece !== undefined && piece.kind !== 'isolation' && piece.kind !== 'running';
}

/** Position in the walk of the first step further on that brings the piece into one of the states. */
export function laterStep(w: Walk, position: number, piece: Piece, allowed: States): number | undefined {
  const found = stateOf(w, piece);
  for (let p = position + 1; p < w.sequence.order.length; p++) {
    const j = walkedAt(w.sequence, p);
    const { action } = stepAt(w.sequence, j);
    const areas = w.ground.areas[j];
    if (!areas) continue;
    for (let state = 0; state < 4; state++) {
      if (!holds(allowed, state) || state === found) continue;
      if (broughtBy(piece.kind, found, state).at(-1) === action && reaches(w, j, piece, areas)) return p;
    }
  }
  return undefined;
}

export function reaches(w: Walk, j: number, piece: Piece, areas: readonly Area[]): boolean {
  if (
    piece.kind === 'isolation' ||
    piece.kind === 'restraint' ||
    piece.kind === 'drive' ||
    piece.kind === 'running' ||
    piece.kind === 'content'
  )
    return true;
  return areas.some((area) => touches(piece, area));
}
