// Walks an order step by step with the state of every piece, and collects what does not hold. Where something is missing
// the walk goes on as if it had been there, so that one slip is told once and everything independent of it still shows.
// For steps that may go on side by side the walk follows one possible order; side-by-side.ts then looks at every pair
// that could swap.

import { demandsOf } from './demands.js';
import type { Demands, Effect } from './demands/demand.js';
import { fitPanels } from './front.js';
import { touches, type Area, type Ground, type Piece } from './ground.js';
import { openedAbove } from './opened-above.js';
import { walkedAt, type Sequence } from './sequence.js';
import { holds, off, oldScrew, on, states } from './states.js';
import { blame, stateOf, type OrderSlip, type Walk } from './walk-state.js';
import { check, change, laterStep } from './needs.js';
import { tellOfTheWatch } from './watched.js';

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
        // Isolating also ends a trial run, which is not what an earlier slip has counted.
        demands.effects.every(({ piece }) => piece.kind === 'running' || told.has(piece.number));
      let until = step.action === 'gate open' ? openedAbove(w, i, position) : -1;
      if (step.action === 'remove screw' && step.stretch) fromAnEnd(w, i, areas);
      if (step.action === 'fire watch') tellOfTheWatch(w, i, position, areas);
      const outOfTurn = demands.needs.some(
        (need) => need.keep && !need.goesOn && !holds(need.allowed, stateOf(w, need.piece)),
      );
      if (!allTold) {
        // What an earlier slip has counted as done by this step is not asked for again.
        for (const need of demands.needs)
          if (!told?.has(need.piece.number)) until = Math.max(until, check(w, i, position, need));
        if (!w.slips.some((slip) => slip.step === i)) tellIfDone(w, i, position, demands);
      }
      if (until > position) {
        waiting.set(until, [...(waiting.get(until) ?? []), i]);
        // Put off, and told so: not to be told as never done as well.
        for (const { piece } of demands.effects) w.excused.add(piece.number);
      } else if (!outOfTurn) takeEffect(w, i, demands.effects);
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

/** A piece of spiral is cut free where one side of it ends: between two that stay, it cannot be drawn clear. */
function fromAnEnd(w: Walk, i: number, areas: readonly Area[]): void {
  const cells = w.ground.screw;
  const mine = cells.filter((cell) => areas.some((area) => touches(cell, area)));
  const first = mine[0];
  const last = mine.at(-1);
  if (!first || !last) return;
  const before = cells[cells.indexOf(first) - 1];
  const after = cells[cells.indexOf(last) + 1];
  const stays = (cell: Piece | undefined): boolean => cell !== undefined && stateOf(w, cell) === oldScrew;
  if (!stays(before) || !stays(after) || mine.every((cell) => !stays(cell))) return;
  w.slips.push({
    kind: 'spiral from the middle',
    grade: 'unsafe',
    step: i,
    pieces: mine,
    found: oldScrew,
    wanted: -1,
    others: new Map(),
  });
}

/** What an earlier slip has counted as done by this step is done already. */
function takeEffect(w: Walk, i: number, effects: readonly Effect[]): void {
  const told = w.told.get(i);
  for (const { piece, to } of effects) if (!told?.has(piece.number)) change(w, i, piece, to);
}

function isPart(piece: Piece): boolean {
  return (
    piece.kind === 'cover' ||
    piece.kind === 'brace' ||
    piece.kind === 'hold-down' ||
    piece.kind === 'drive' ||
    piece.kind === 'restraint'
  );
}

/** Tells that there is nothing left to do; or, where the step undoes what only a later one does, that it comes too early. */
function tellIfDone(w: Walk, i: number, position: number, { done, effects }: Demands): void {
  const before = done.pieces.filter((piece) => holds(done.states, stateOf(w, piece)));
  const twice = done.by === 'all' ? (before.length === done.pieces.length ? before : []) : before;
  const real = twice.filter((piece) => !w.assumed[piece.number]);
  const first = real[0];
  if (!first || (done.by === 'all' && real.length < twice.length)) return;
  const others: OrderSlip['others'] = new Map();
  for (const piece of real) blame(w, others, piece);
  const found = stateOf(w, first);
  const back = effects[0]?.to === on && isPart(first);
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
    others: new Map([[walkedAt(w.sequence, later), 'comes too late']]),
  });
  for (const piece of real) w.excused.add(piece.number);
}
