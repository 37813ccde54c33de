// Walks an order step by step with the state of every piece, and collects what does not hold. Where something is missing
// the walk goes on as if it had been there, so that one slip is told once and everything independent of it still shows.
// For steps that may go on side by side the walk follows one possible order; side-by-side.ts then looks at every pair
// that could swap.

import { demandsOf, type Demands, type Effect } from './demands.js';
import { fitPanels } from './front.js';
import { type Ground } from './ground.js';
import type { Sequence } from './sequence.js';
import { holds, off, on, states } from './states.js';
import type { OrderSlip, Walk } from './walk-state.js';
import { check, change, laterStep } from './needs.js';

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
