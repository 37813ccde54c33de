// How the panels lay on the first day: as the conveyor says (`fitted run 1 panels …`), or else as they would be laid out, each
// stretch from the lengths of the liner that it came with.

import { jointReach } from '../geometry/mixed-layout.js';
import type { PanelLayout } from '../geometry/panel-layout.js';
import type { PanelsFitted } from './conveyor.js';
import { firstLinerOf, firstPieces } from './first-liner.js';
import { gapOf, mixedPanelsOf, recordedPanels, type LinedPiece } from './run-layout.js';
import { findRun, runsOf, type Run } from './runs.js';
import type { LinerSpecification } from './specifications.js';
import type { Stretch } from './stretch.js';

export interface FirstPanels {
  /** Chainages, mm. */
  readonly layout: PanelLayout;
  /** False where they are worked out. */
  readonly recorded: boolean;
}

export function firstPanels(run: Run): FirstPanels {
  const found = known.get(run) ?? lay(run);
  known.set(run, found);
  return found;
}
const known = new WeakMap<Run, FirstPanels>();

/** Joints of a run on the first day, chainages in mm, first its tail end and last its head end. */
export function panelEnds(run: Run): readonly number[] {
  return firstPanels(run).layout.joints;
}

/** What lay in a run on the first day, in chainage order, mm; an end of a stretch within a joint's reach of the run's end is that end. */
export function firstPiecesOf(run: Run): readonly LinedPiece[] {
  const inside = firstPieces(run.conveyor).filter(
    ({ from, to }) => Math.min(to, run.to) - Math.max(from, run.from) > jointReach,
  );
  return inside.map(({ liner }, i) => ({
    liner,
    from: i === 0 ? run.from : (inside[i]?.from ?? run.from),
    to: inside[i + 1]?.from ?? run.to,
  }));
}

/** Lengths that such lines give the panels of a run, mm; undefined where none does. */
export function lengthsFitted(rows: readonly PanelsFitted[], run: Run): readonly number[] | undefined {
  const own = rows.filter(({ run: stretch }) => stretch.kind === 'run' && isRun(stretch, run));
  const lengths = own.flatMap((row) => row.lengths.map((length) => length.value));
  return lengths.length > 0 && lengths.every((length) => length > 0) ? lengths : undefined;
}

/** Recorded panels fill a run where their total is within a twentieth of it; otherwise they are only some of its panels. */
export function fillsRun(run: Run, lengths: readonly number[], liner: LinerSpecification): boolean {
  const total = lengths.reduce((sum, length) => sum + length, 0) + gapOf(liner) * (lengths.length - 1);
  return Math.abs(total - run.length) <= run.length / 20;
}

/** True where a stretch names this run. */
export function isRun(
  { run: use }: Extract<Stretch, { readonly kind: 'run' | 'panels' }>,
  run: Run,
): boolean {
  const found = findRun(run.conveyor, use);
  return found !== undefined && runsOf(run.conveyor).includes(found) && found.number === run.number;
}

function lay(run: Run): FirstPanels {
  const lengths = lengthsFitted(run.conveyor.panelsFitted, run);
  const liner = firstLinerOf(run);
  return lengths && fillsRun(run, lengths, liner)
    ? { layout: recordedPanels(run, lengths, liner), recorded: true }
    : { layout: mixedPanelsOf(run, firstPiecesOf(run)), recorded: false };
}
