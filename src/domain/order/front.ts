// Fits the panels of a step one by one, as the hands would: the front starts at an end of the run (or at a panel that is
// in place), every panel is pushed against the one before it, and the last must end where a break takes up the error.
// A panel can be fitted only where its seat is stripped and clean, something to butt against is on the starting side, and
// there is room on the other side: a gap with a fixed panel at either side matches no panel, whatever its nominal length.

import type { Break } from '../model/conveyor.js';
import type { Step } from '../model/job.js';
import { closingError } from './closing-error.js';
import { areasOf, touches, within, type Area, type RunPanel, type Piece, type RunGround } from './ground.js';
import { canStartAt, startOf, type End } from './start.js';
import { stepAt } from './sequence.js';
import { cleaned, holds, newPanel, oldPanel, states, stripped } from './states.js';
import type { ClosingError } from './violation.js';
import { blame, changedBy, noState, stateOf, type OrderSlip, type Walk } from './walk-state.js';
import { assume, change, check } from './needs.js';

const inPlace = states(oldPanel, newPanel);
const open = states(stripped, cleaned);

export function fitPanels(w: Walk, i: number, position: number, step: Step, areas: readonly Area[]): void {
  for (const run of w.ground.runs) {
    const { start } = startOf(step, run.run);
    const panels = within(run.panels, areas);
    if (meetsOtherFront(w, i, run, panels, start)) continue;
    for (const panel of start === 'tail' ? panels : [...panels].reverse())
      fitOne(w, i, position, { panel, start, mine: new Set(panels) });
  }
}

/** A panel as it goes in: from which end, and with which others in one step. */
interface Fit {
  readonly panel: RunPanel;
  readonly start: End;
  readonly mine: ReadonlySet<Piece>;
}

/** From one panel number to the next, away from the starting end. */
function stepFrom(start: End): 1 | -1 {
  return start === 'tail' ? 1 : -1;
}

/** The panel so many places further on from the starting end; undefined beyond the run. */
function neighbour({ panel, start }: Fit, places: 1 | -1): RunPanel | undefined {
  return panel.run.panels[panel.panel - 1 + places * stepFrom(start)];
}

function fitOne(w: Walk, i: number, position: number, fit: Fit): void {
  const { panel, start, mine } = fit;
  const seat = stateOf(w, panel);
  if (seat === newPanel) {
    fittedAlready(w, i, panel, start);
    return;
  }
  check(w, i, position, {
    piece: panel,
    allowed: states(cleaned),
    good: cleaned,
    ...(seat === oldPanel
      ? { kind: 'liner not stripped', grade: 'cannot be built' }
      : { kind: 'trough not cleaned', grade: 'incomplete' }),
  });
  const behind = neighbour(fit, -1);
  if (behind)
    check(w, i, position, {
      piece: behind,
      allowed: inPlace,
      good: newPanel,
      kind: 'not contiguous',
      grade: 'cannot be built',
    });
  else startAtBreak(w, i, fit);
  const ahead = neighbour(fit, 1);
  // What is cut to the gap as measured closes it wherever it lies.
  const cut = stepAt(w.sequence, i).cutToFit === true;
  if (ahead && !cut) {
    if (changedBy(w, ahead) !== i) w.touches.push({ ...closesInside, step: i, piece: ahead.number });
    const state = stateOf(w, ahead);
    // An old panel that this step itself is to replace is told as not stripped, when its turn comes.
    if ((state === newPanel || (state === oldPanel && !mine.has(ahead))) && !w.assumed[ahead.number])
      closeInside(w, i, position, fit, ahead);
  } else if (!cut) closeAtBreak(w, i, fit);
  change(w, i, panel, newPanel);
  w.fronts.set(panel.number, { start, step: i });
}

const closesInside = { allowed: open, kind: 'closes inside the run', grade: 'cannot be built' } as const;

/** Told, unless it only counts as fitted since an earlier slip said that it should have been; now it is so in fact. */
function fittedAlready(w: Walk, i: number, panel: Piece, start: End): void {
  if (w.assumed[panel.number]) w.fronts.set(panel.number, { start, step: i });
  else
    tell(w, {
      kind: 'done twice',
      grade: 'incomplete',
      step: i,
      pieces: [panel],
      ...noState,
      others: madeSo(w, panel),
    });
  w.assumed[panel.number] = 0;
  w.lastChange[panel.number] = i;
}

/** Two fronts in one gap: told once, at the step that opens the second, and the panels then count as fitted. */
function meetsOtherFront(
  w: Walk,
  i: number,
  run: RunGround,
  panels: readonly RunPanel[],
  start: End,
): boolean {
  const first = start === 'tail' ? panels[0] : panels.at(-1);
  if (!first) return false;
  const free = inARow(first, start, (panel) => holds(open, stateOf(w, panel)));
  const last = free.at(-1) ?? first;
  const met = free.length === 0 ? first : neighbour({ panel: last, start, mine: new Set() }, 1);
  const front = met && !w.assumed[met.number] ? w.fronts.get(met.number) : undefined;
  if (!met || !front || front.start === start) return false;
  const known = w.slips.some(
    (slip) => slip.kind === 'two fronts' && slip.pieces[0]?.run === run && slip.others.has(front.step),
  );
  if (!known) {
    const fitted = inARow(met, start, (panel) => stateOf(w, panel) === newPanel);
    w.slips.push({
      kind: 'two fronts',
      grade: 'cannot be built',
      step: i,
      pieces: [last, ...panels.filter((panel) => panel !== last)],
      ...noState,
      others: new Map([[front.step, 'other front']]),
      closing: closingOf(w, last, [...free, ...fitted], undefined),
    });
  }
  for (const each of panels) {
    assume(w, each, newPanel);
    w.fronts.set(each.number, { start, step: i });
  }
  return true;
}

/** Panels from one on, away from the starting end, as long as each of them is so. */
function inARow(first: RunPanel, start: End, is: (panel: RunPanel) => boolean): RunPanel[] {
  const on = first.run.panels;
  const row = start === 'tail' ? on.slice(first.panel - 1) : on.slice(0, first.panel).reverse();
  const end = row.findIndex((panel) => !is(panel));
  return end < 0 ? row : row.slice(0, end);
}

function startAtBreak(w: Walk, i: number, { panel, start }: Fit): void {
  if (canStartAt(panel.run.run, start)) return;
  tell(w, {
    kind: 'panel would slide',
    grade: 'unsafe',
    step: i,
    pieces: [panel],
    ...noState,
    others: new Map(),
  });
}

function closeInside(w: Walk, i: number, position: number, fit: Fit, ahead: Piece): void {
  const others = madeSo(w, ahead);
  const late = w.sequence.order
    .slice(position + 1)
    .find(
      (j) =>
        stepAt(w.sequence, j).action === 'strip' && areasOf(w.ground, j).some((area) => touches(ahead, area)),
    );
  if (late !== undefined) others.set(late, 'comes too late');
  tell(w, {
    kind: 'closes inside the run',
    grade: 'cannot be built',
    step: i,
    pieces: [fit.panel],
    ...noState,
    others,
    closing: closingOf(w, fit.panel, chainFitted(w, fit), undefined),
  });
}

function closeAtBreak(w: Walk, i: number, fit: Fit): void {
  const { run } = fit.panel.run;
  const place = fit.start === 'tail' ? run.headBreak : run.tailBreak;
  const closing = closingOf(w, fit.panel, chainFitted(w, fit), place);
  if (closing.worst <= place.allowance.value + 1e-9) return;
  tell(w, {
    kind: 'closing error too large',
    grade: 'cannot be built',
    step: i,
    pieces: [fit.panel],
    ...noState,
    others: new Map(),
    closing,
  });
}

/** The panel and those behind it that the same front fitted: their tolerances add up. */
function chainFitted(w: Walk, { panel, start }: Fit): RunPanel[] {
  const back = start === 'tail' ? 'head' : 'tail';
  const [, ...behind] = inARow(
    panel,
    back,
    (each) => each === panel || (stateOf(w, each) === newPanel && w.fronts.get(each.number)?.start === start),
  );
  return [panel, ...behind];
}

/** Of a row of panels whose lengths add up to the closing one. */
function closingOf(
  w: Walk,
  panel: RunPanel,
  row: readonly RunPanel[],
  place: Break | undefined,
): ClosingError {
  const { run, liner } = panel.run;
  const length = row.reduce((sum, each) => sum + each.to - each.from, 0);
  const at = place && { allowance: place.allowance.value, name: place.name };
  return closingError(w.ground.job, run, liner, panel.panel, row.length, length, at);
}

function madeSo(w: Walk, piece: Piece): OrderSlip['others'] {
  const others: OrderSlip['others'] = new Map();
  blame(w, others, piece);
  return others;
}

/** Panels of one run with one thing wrong are one slip; a closing panel is told for itself. */
function tell(w: Walk, slip: OrderSlip): void {
  const known = w.slips.find(
    (other) =>
      !slip.closing &&
      other.step === slip.step &&
      other.kind === slip.kind &&
      other.pieces[0]?.run === slip.pieces[0]?.run,
  );
  if (known) known.pieces.push(...slip.pieces);
  else w.slips.push(slip);
}
