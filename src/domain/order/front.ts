// Fits the panels of a step one by one, as the hands would: the front starts at an end of the run (or at a panel that is
// in place), every panel is pushed against the one before it, and the last must end where a break takes up the error.
// A panel can be fitted only where its seat is stripped and clean, something to butt against is on the starting side, and
// there is room on the other side: a gap with a fixed panel at either side matches no panel, whatever its nominal length.

import type { Step } from '../model/job.js';
import { closingError } from './closing-error.js';
import { areasOf, touches, type Area, type Piece, type RunGround } from './ground.js';
import { canStartAt, startOf, type End } from './start.js';
import { cleaned, newPanel, oldPanel, states, stripped } from './states.js';
import type { OrderSlip, Walk } from './walk-state.js';
import { assume, change, check } from './needs.js';

const inPlace = states(oldPanel, newPanel);
const open = states(stripped, cleaned);

export function fitPanels(w: Walk, i: number, position: number, step: Step, areas: readonly Area[]): void {
  for (const run of w.ground.runs) {
    const { start } = startOf(step, run.run);
    const panels = run.panels.filter((panel) => areas.some((area) => touches(panel, area)));
    if (panels.length === 0) continue;
    if (meetsOtherFront(w, i, run, panels, start)) continue;
    const mine = new Set(panels);
    for (const panel of start === 'tail' ? panels : [...panels].reverse())
      fitOne(w, i, position, run, panel, start, mine);
  }
}

function fitOne(
  w: Walk,
  i: number,
  position: number,
  run: RunGround,
  panel: Piece,
  start: End,
  mine: ReadonlySet<Piece>,
): void {
  const step = start === 'tail' ? 1 : -1;
  const n = panel.panel ?? 1;
  const behind = run.panels[n - 1 - step];
  const ahead = run.panels[n - 1 + step];

  if (w.state[panel.number] === newPanel) {
    // Counted as fitted since an earlier slip said that it should have been: nothing more to say.
    if (w.assumed[panel.number]) w.fronts.set(panel.number, { start, step: i });
    else
      tell(w, {
        kind: 'done twice',
        grade: 'incomplete',
        step: i,
        pieces: [panel],
        found: newPanel,
        wanted: -1,
        others: madeSo(w, panel),
      });
    settle(w, i, panel);
    return;
  }
  const seat = w.state[panel.number] ?? 0;
  check(w, i, position, {
    piece: panel,
    allowed: states(cleaned),
    good: cleaned,
    kind: seat === oldPanel ? 'liner not stripped' : 'trough not cleaned',
    grade: seat === oldPanel ? 'cannot be built' : 'incomplete',
  });
  if (behind)
    check(w, i, position, {
      piece: behind,
      allowed: inPlace,
      good: newPanel,
      kind: 'not contiguous',
      grade: 'cannot be built',
    });
  else startAtBreak(w, i, run, panel, start);
  if (ahead) {
    const state = w.state[ahead.number] ?? 0;
    if (w.lastChange[ahead.number] !== i) {
      w.touches.push({
        step: i,
        piece: ahead.number,
        allowed: open,
        kind: 'closes inside the run',
        grade: 'cannot be built',
      });
    }
    // An old panel that this step itself is to replace is told as not stripped, when its turn comes.
    if ((state === newPanel || (state === oldPanel && !mine.has(ahead))) && !w.assumed[ahead.number])
      closeInside(w, i, position, run, panel, ahead, start);
  } else if (!w.sequence.steps[i]?.cutToFit) closeAtBreak(w, i, run, panel, start);
  change(w, i, panel, newPanel);
  w.fronts.set(panel.number, { start, step: i });
}

/** From here on the panel is in place in fact. */
function settle(w: Walk, i: number, panel: Piece): void {
  w.assumed[panel.number] = 0;
  w.lastChange[panel.number] = i;
}

/** Two fronts in one gap: told once, at the step that opens the second, and the panels then count as fitted. */
function meetsOtherFront(w: Walk, i: number, run: RunGround, panels: readonly Piece[], start: End): boolean {
  const step = start === 'tail' ? 1 : -1;
  const first = start === 'tail' ? panels[0] : panels.at(-1);
  if (!first) return false;
  let gap = 0;
  let last = first;
  for (let k = (first.panel ?? 1) - 1; k >= 0 && k < run.panels.length; k += step) {
    const panel = run.panels[k];
    if (!panel) break;
    const state = w.state[panel.number] ?? 0;
    const front = w.fronts.get(panel.number);
    if (state === newPanel && front && !w.assumed[panel.number]) {
      if (front.start === start || front.step === i) return false;
      const fitted = chainBehind(w, run, panel, start);
      const known = w.slips.some(
        (slip) => slip.kind === 'two fronts' && slip.pieces[0]?.run === run && slip.others.has(front.step),
      );
      if (!known) {
        const closing = closingError(
          w.ground.job,
          run.run,
          run.liner,
          last.panel ?? 1,
          gap + fitted.count,
          Math.abs(lengthBetween(first, fitted.last)),
          undefined,
        );
        tell(w, {
          kind: 'two fronts',
          grade: 'cannot be built',
          step: i,
          pieces: [last, ...panels.filter((p) => p !== last)],
          found: newPanel,
          wanted: -1,
          others: new Map([[front.step, 'other front']]),
          closing,
        });
      }
      for (const each of panels) {
        assume(w, each, newPanel);
        w.fronts.set(each.number, { start, step: i });
      }
      return true;
    }
    if (state === oldPanel || state === newPanel) return false;
    gap++;
    last = panel;
  }
  return false;
}

/** New panels in a row from one on, away from the front that met it. */
function chainBehind(
  w: Walk,
  run: RunGround,
  from: Piece,
  start: End,
): { readonly count: number; readonly last: Piece } {
  const step = start === 'tail' ? 1 : -1;
  let count = 0;
  let last = from;
  for (let k = (from.panel ?? 1) - 1; k >= 0 && k < run.panels.length; k += step) {
    const panel = run.panels[k];
    if (!panel || w.state[panel.number] !== newPanel) break;
    count++;
    last = panel;
  }
  return { count, last };
}

function startAtBreak(w: Walk, i: number, run: RunGround, panel: Piece, start: End): void {
  if (canStartAt(run.run, start)) return;
  tell(w, {
    kind: 'panel would slide',
    grade: 'unsafe',
    step: i,
    pieces: [panel],
    found: -1,
    wanted: -1,
    others: new Map(),
  });
}

function closeInside(
  w: Walk,
  i: number,
  position: number,
  run: RunGround,
  panel: Piece,
  ahead: Piece,
  start: End,
): void {
  const chain = chainFitted(w, run, panel, start);
  const closing = closingError(
    w.ground.job,
    run.run,
    run.liner,
    panel.panel ?? 1,
    chain.count,
    chain.length,
    undefined,
  );
  const others = madeSo(w, ahead);
  for (let p = position + 1; p < w.sequence.order.length; p++) {
    const j = w.sequence.order[p] ?? -1;
    const areas = areasOf(w.ground, j);
    if (w.sequence.steps[j]?.action !== 'strip' || !areas.some((area) => touches(ahead, area))) continue;
    others.set(j, 'comes too late');
    break;
  }
  tell(w, {
    kind: 'closes inside the run',
    grade: 'cannot be built',
    step: i,
    pieces: [panel],
    found: w.state[ahead.number] ?? 0,
    wanted: -1,
    others,
    closing,
  });
}

function closeAtBreak(w: Walk, i: number, run: RunGround, panel: Piece, start: End): void {
  const place = start === 'tail' ? run.run.headBreak : run.run.tailBreak;
  const chain = chainFitted(w, run, panel, start);
  const closing = closingError(
    w.ground.job,
    run.run,
    run.liner,
    panel.panel ?? 1,
    chain.count,
    chain.length,
    { allowance: place.allowance.value, name: place.name },
  );
  if (closing.worst > place.allowance.value + 1e-9) {
    tell(w, {
      kind: 'closing error too large',
      grade: 'cannot be built',
      step: i,
      pieces: [panel],
      found: -1,
      wanted: -1,
      others: new Map(),
      closing,
    });
  }
}

/** The panel and those behind it that the same front fitted: their tolerances add up. */
function chainFitted(
  w: Walk,
  run: RunGround,
  panel: Piece,
  start: End,
): { readonly count: number; readonly length: number } {
  const step = start === 'tail' ? 1 : -1;
  let count = 1;
  let length = panel.to - panel.from;
  for (let k = (panel.panel ?? 1) - 1 - step; k >= 0 && k < run.panels.length; k -= step) {
    const other = run.panels[k];
    if (!other || w.state[other.number] !== newPanel || w.fronts.get(other.number)?.start !== start) break;
    count++;
    length += other.to - other.from;
  }
  return { count, length };
}

function lengthBetween(a: Piece, b: Piece): number {
  return Math.max(a.to, b.to) - Math.min(a.from, b.from);
}

function madeSo(w: Walk, piece: Piece): OrderSlip['others'] {
  const last = w.lastChange[piece.number] ?? -1;
  return last >= 0 ? new Map([[last, 'made it so' as const]]) : new Map();
}

function tell(w: Walk, slip: OrderSlip): void {
  const known = w.slips.find(
    (other) =>
      other.step === slip.step &&
      other.kind === slip.kind &&
      other.pieces[0]?.run === slip.pieces[0]?.run &&
      !slip.closing,
  );
  if (known) known.pieces.push(...slip.pieces);
  else w.slips.push(slip);
}
