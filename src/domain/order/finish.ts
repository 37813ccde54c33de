// What is still open when the order is done: parts that were taken off and are not back, scope that was not relined, a
// machine that was never handed back or never run. Nothing that an earlier slip has told already.

import type { Piece } from './ground.js';
import { within } from './ground.js';
import {
  bolted,
  dead,
  free,
  gateOff,
  gateOpen,
  isolated,
  live,
  newPanel,
  newScrew,
  noScrew,
  notRun,
  off,
  on,
  oldPanel,
  oldScrew,
  restrained,
  runEmpty,
  runLoaded,
  unbolted,
  cleaned,
  stripped,
} from './states.js';
import type { ViolationKind } from './violation.js';
import { blame, stateOf, type OrderSlip, type Walk } from './walk-state.js';

export function tellWhatIsOpen(w: Walk): void {
  const { ground } = w;
  const tell = (
    kind: ViolationKind,
    pieces: readonly Piece[],
    wanted: number,
    open: readonly number[],
  ): void => {
    const left = pieces.filter(
      (piece) => open.includes(stateOf(w, piece)) && !w.assumed[piece.number] && !w.excused.has(piece.number),
    );
    const first = left[0];
    if (!first) return;
    const others: OrderSlip['others'] = new Map();
    for (const piece of left) blame(w, others, piece);
    w.slips.push({
      kind,
      grade: kind === 'not put back' || kind === 'screw still restrained' ? 'unsafe' : 'incomplete',
      step: undefined,
      pieces: [...left],
      found: stateOf(w, first),
      wanted,
      others,
    });
  };
  for (const run of ground.runs) tell('not put back', run.panels, newPanel, [stripped, cleaned]);
  tell('not put back', ground.screw, newScrew, [noScrew]);
  tell('not put back', [ground.drive], bolted, [unbolted]);
  tell('screw still restrained', [ground.restraint], free, [restrained]);
  tell('not put back', ground.gates, gateOpen, [gateOff]);
  for (const parts of [ground.holdDowns, ground.braces, ground.covers])
    tell('not put back', parts, on, [off]);
  for (const run of ground.runs)
    tell('scope not done', within(run.panels, ground.scope), newPanel, [oldPanel]);
  if (ground.job.screwChange) tell('scope not done', ground.screw, newScrew, [oldScrew]);
  tell('not put back', [ground.isolation], live, [isolated, dead]);
  // A machine that is still isolated cannot be run: told as not handed back.
  if (stateOf(w, ground.isolation) !== live) return;
  tell('no trial run', [ground.running], stateOf(w, ground.running) === runEmpty ? runLoaded : runEmpty, [
    notRun,
    runEmpty,
  ]);
}
