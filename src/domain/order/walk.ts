// Walks an order step by step with the state of every piece, and collects what does not hold. Where something is missing
// the walk goes on as if it had been there, so that one slip is told once and everything independent of it still shows.
// For steps that may go on side by side the walk follows one possible order; side-by-side.ts then looks at every pair
// that could swap.

import { demandsOf, type Demands, type Effect, type Need } from './demands.js';
import { fitPanels } from './front.js';
import { touches, type Area, type Ground, type Piece } from './ground.js';
import type { Sequence } from './sequence.js';
import { broughtBy, holds, off, on, states, type States } from './states.js';
import type { ClosingError, Grade, ViolationKind } from './violation.js';

/** A need that was not met, or met only by luck; several pieces of one kind make one slip. */
export interface OrderSlip {
  readonly kind: ViolationKind;
  readonly grade: Grade;
  /** Position of the step; undefined for the order as a whole. */
  readonly step: number | undefined;
  readonly pieces: Piece[];
  /** State of the first piece as found, and the state wanted. */
  readonly found: number;
  readonly wanted: number;
  /** Steps that conflict: what brought the wrong state, what would bring the right one later, the other front. */
  readonly others: Map<number, 'made it so' | 'comes too late' | 'other front' | 'same time'>;
  readonly closing?: ClosingError;
  /** True where the steps may run in either order and only one of them works. */
  readonly unsettled?: boolean;
}

export interface Touch {
  readonly step: number;
  readonly piece: number;
  /** What a reader can do with, or all states. */
  readonly allowed: States;
  /** Set where the step changes the piece, or would. */
  readonly from?: number;
  readonly to?: number;
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

export function walk(ground: Ground, sequence: Sequence): Walk {
  const w: Walk = {
    ground,
    sequence,
    slips: [],
    touches: [],
    fronts: new Map(),
    told: new Map(),
    excused: new Set(),
    state: new Int8Array(ground.pieces.length),
    lastChange: new Int32Array(ground.pieces.length).fill(-1),
    assumed: new Uint8Array(ground.pieces.length),
  };
  // Steps that close up too early, by the position of the last step they should have waited for: they take effect after it.
  const waiting = new Map<number, number[]>();
  sequence.order.forEach((i, position) => {
    const step = sequence.steps[i];
    const areas = ground.areas[i];
    if (step && areas) {
      const demands = demandsOf(ground, step, areas);
      const told = w.told.get(i);
      const allTold =
        told !== undefined &&
        demands.effects.length > 0 &&
        demands.effects.every(({ piece }) => told.has(piece.number));
      let until = -1;
      if (!allTold) {
        for (const need of demands.needs) until = Math.max(until, check(w, i, position, need));
        if (!w.slips.some((slip) => slip.step === i)) tellIfDone(w, i, position, demands);
      }
      if (until > position) waiting.set(until, [...(waiting.get(until) ?? []), i]);
      else takeEffect(w, i, demands.effects);
      if (step.action === 'fit') fitPanels(w, i, position, step, areas);
    }
    for (const late of waiting.get(position) ?? []) {
      const held = sequence.steps[late];
      const area = ground.areas[late];
      if (held && area) takeEffect(w, late, demandsOf(ground, held, area).effects);
    }
  });
  return w;
}

/** What an earlier slip has counted as done by this step is done already. */
function takeEffect(w: Walk, i: number, effects: readonly Effect[]): void {
  const told = w.told.get(i);
  for (const { piece, to } of effects) if (!told?.has(piece.number)) change(w, i, piece, to);
}

/**
 * Looks at one need, notes it, and where it is not met tells so. What opens the way is then taken as done; a step that closes
 * up too early is put off instead: the answer is the position it should have waited for, −1 for none. A step that comes too
 * late is told once, however many others need it.
 */
export function check(w: Walk, i: number, position: number, need: Need): number {
  const { number } = need.piece;
  const found = w.state[number] ?? 0;
  if (w.lastChange[number] !== i)
    w.touches.push({ step: i, piece: number, allowed: need.allowed, kind: need.kind, grade: need.grade });
  if (holds(need.allowed, found)) return -1;
  if (need.keep) {
    const slip = slipAt(w, i, need, found);
    slip.pieces.push(need.piece);
    const culprit = w.lastChange[number] ?? -1;
    if (culprit >= 0) slip.others.set(culprit, 'made it so');
    return -1;
  }
  const later = laterStep(w, position, need.piece, need.allowed);
  if (later === undefined) {
    if (!need.onlyIfLater) tellMissing(w, i, need, found);
    return -1;
  }
  const late = w.sequence.order[later] ?? -1;
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

/** No step brings it about: told for everything of its kind in the step's stretch, as one step to be added would. */
function tellMissing(w: Walk, i: number, need: Need, found: number): void {
  const slip = slipAt(w, i, need, found);
  const culprit = w.lastChange[need.piece.number] ?? -1;
  if (culprit >= 0) slip.others.set(culprit, 'made it so');
  const areas = w.ground.areas[i] ?? [];
  const alike =
    need.kind === 'not contiguous'
      ? [need.piece]
      : w.ground.pieces.filter(
          (piece) =>
            piece.kind === need.piece.kind &&
            !holds(need.allowed, w.state[piece.number] ?? 0) &&
            (piece === need.piece || piece.kind === 'air' || areas.some((area) => touches(piece, area))),
        );
  for (const piece of alike) {
    slip.pieces.push(piece);
    assume(w, piece, need.good);
  }
}

/** Every step of the chain that leads to the wanted state counts as done: isolate with prove dead, strip with clean. */
function countChainAsDone(w: Walk, position: number, later: number, piece: Piece, found: number): void {
  const last = w.sequence.order[later] ?? -1;
  countAsDone(w, last, piece);
  const wanted = w.sequence.steps[last]?.action;
  for (const state of [1, 2]) {
    const chain = broughtBy(piece.kind, found, state);
    if (chain.length < 2 || chain.at(-1) !== wanted) continue;
    for (let p = position + 1; p < later; p++) {
      const j = w.sequence.order[p] ?? -1;
      if (w.sequence.steps[j]?.action === chain[0] && reaches(w, j, piece, w.ground.areas[j] ?? []))
        countAsDone(w, j, piece);
    }
  }
}

function sameKind(slip: OrderSlip, need: Need): boolean {
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
  const from = w.state[piece.number] ?? 0;
  w.touches.push({
    step: i,
    piece: piece.number,
    allowed: -1,
    from,
    to,
    kind: 'done twice',
    grade: 'incomplete',
  });
  if (from === to) return;
  w.state[piece.number] = to;
  w.assumed[piece.number] = 0;
  w.lastChange[piece.number] = i;
}

/** A slip of this step, kind and kind of piece (what is still open counts as one kind); a new one where there is none yet. */
function slipAt(w: Walk, i: number, need: Need, found: number): OrderSlip {
  const known = w.slips.find(
    (slip) => slip.step === i && sameKind(slip, need) && (need.onlyIfLater || slip.found === found),
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
  };
  w.slips.push(slip);
  return slip;
}

function aboutParts(piece: Piece | undefined): boolean {
  return piece !== undefined && piece.kind !== 'isolation' && piece.kind !== 'running';
}

/** Tells that there is nothing left to do; or, where the step undoes what only a later one does, that it comes too early. */
function tellIfDone(w: Walk, i: number, position: number, { done, effects }: Demands): void {
  if (done.pieces.length === 0) return;
  const before = done.pieces.filter((piece) => holds(done.states, w.state[piece.number] ?? 0));
  const twice = done.by === 'all' ? (before.length === done.pieces.length ? before : []) : before;
  const real = twice.filter((piece) => !w.assumed[piece.number]);
  const first = real[0];
  if (!first || (done.by === 'all' && real.length < twice.length)) return;
  const others: OrderSlip['others'] = new Map();
  for (const piece of real) {
    const last = w.lastChange[piece.number];
    if (last !== undefined && last >= 0) others.set(last, 'made it so');
  }
  const found = w.state[first.number] ?? 0;
  const back =
    effects[0]?.to === 0 && (first.kind === 'cover' || first.kind === 'brace' || first.kind === 'hold-down');
  const later = back && others.size === 0 ? laterStep(w, position, first, states(off)) : undefined;
  if (later === undefined) {
    w.slips.push({
      kind: 'done twice',
      grade: 'incomplete',
      step: i,
      pieces: real,
      found,
      wanted: -1,
      others,
    });
    return;
  }
  w.slips.push({
    kind: 'closed up too early',
    grade: 'cannot be built',
    step: i,
    pieces: real,
    found: on,
    wanted: off,
    others: new Map([[w.sequence.order[later] ?? -1, 'comes too late']]),
  });
  for (const piece of real) w.excused.add(piece.number);
}

/** Position in the walk of the first step further on that brings the piece into one of the states. */
function laterStep(w: Walk, position: number, piece: Piece, allowed: States): number | undefined {
  const found = w.state[piece.number] ?? 0;
  for (let p = position + 1; p < w.sequence.order.length; p++) {
    const j = w.sequence.order[p] ?? -1;
    const action = w.sequence.steps[j]?.action;
    const areas = w.ground.areas[j];
    if (!action || !areas) continue;
    for (let state = 0; state < 4; state++) {
      if (!holds(allowed, state) || state === found) continue;
      if (broughtBy(piece.kind, found, state).at(-1) === action && reaches(w, j, piece, areas)) return p;
    }
  }
  return undefined;
}

function reaches(w: Walk, j: number, piece: Piece, areas: readonly Area[]): boolean {
  if (
    piece.kind === 'isolation' ||
    piece.kind === 'restraint' ||
    piece.kind === 'drive' ||
    piece.kind === 'running'
  )
    return true;
  if (piece.from === piece.to) return areas.some((area) => piece.from >= area.from && piece.from <= area.to);
  const middle = (piece.from + piece.to) / 2;
  return piece.kind === 'panel'
    ? areas.some((area) => middle > area.from && middle < area.to)
    : areas.some((area) => Math.min(piece.to, area.to) - Math.max(piece.from, area.from) > 1);
}
