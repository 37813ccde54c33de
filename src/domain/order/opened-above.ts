// Is a slide gate opened while somebody has still to work below it? Told at the step that opens it, with everybody who is
// below; the gate then counts as shut until they are done, so that it is told once.

import { gatePiecesAbove } from './gates-above.js';
import { areasOf } from './ground.js';
import { stepAt, walkedAt } from './sequence.js';
import { gateOpen, gateShut } from './states.js';
import { stateOf, type OrderSlip, type Walk } from './walk-state.js';

/** The position of the last step that the opening should have waited for, −1 for none. */
export function openedAbove(w: Walk, i: number, position: number): number {
  const { gate } = stepAt(w.sequence, i);
  const piece = w.ground.gates.find(({ name }) => name === gate?.name);
  if (!piece || stateOf(w, piece) !== gateShut) return -1;
  const others: OrderSlip['others'] = new Map();
  let last = -1;
  for (let p = position + 1; p < w.sequence.order.length; p++) {
    const j = walkedAt(w.sequence, p);
    const step = stepAt(w.sequence, j);
    if (step.action === 'gate shut' && step.gate?.name === gate?.name) break;
    if (!gatePiecesAbove(w.ground, step, areasOf(w.ground, j)).includes(piece)) continue;
    others.set(j, 'works below');
    last = p;
  }
  if (last < 0) return -1;
  w.slips.push({
    kind: 'gate opened above people',
    grade: 'unsafe',
    step: i,
    pieces: [piece],
    found: gateOpen,
    wanted: gateShut,
    others,
  });
  return last;
}
