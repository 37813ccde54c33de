// Where the panels of a run lie, in chainages: as recorded when they were fitted, or else as they would be laid out from the
// liner's panel lengths (run-layout.ts), on the first day as the conveyor came (first-panels.ts).

import type { PanelLayout } from '../geometry/panel-layout.js';
import { formatDay, type CalendarDay } from '../units/calendar.js';
import { toCentimetre } from '../units/length-words.js';
import { list } from '../units/wording.js';
import type { Conveyor } from './conveyor.js';
import type { Estate } from './estate.js';
import { firstLinerOf } from './first-liner.js';
import { fillsRun, firstPanels, firstPiecesOf, isRun, lengthsFitted } from './first-panels.js';
import type { Reline } from './records.js';
import { linersOf } from './liners-there.js';
import { gapOf, mixedPanelsOf, recordedPanels, stretchPanelsOf, type LinedPiece } from './run-layout.js';
import { runAt, type Run } from './runs.js';
import { linersBrought, piecesBrought } from './same-again.js';
import type { LinerSpecification } from './specifications.js';
import type { Stretch } from './stretch.js';
import { chainageOn } from './unit-of-machine.js';

export interface InstalledPanels {
  readonly liner: LinerSpecification;
  readonly layout: PanelLayout;
  /** True where the lengths were written down; else the layout is worked out. */
  readonly recorded: boolean;
  /** The reline that put them in without writing their lengths down; undefined of the first liner too. */
  readonly reckonedFor?: Reline;
}

/** What to say where a line is held against a layout that nobody wrote down, with its joints (mm); empty where it was. */
export function reckonedWords(
  run: Run,
  { reckonedFor }: { readonly reckonedFor?: Reline | undefined },
  joints: readonly number[] = [],
): string {
  return reckonedFor
    ? reckonedFrom(
        run,
        namesOf(piecesBrought(reckonedFor, run)),
        `in the reline of ${formatDay(reckonedFor.date.day)}`,
        joints,
      )
    : '';
}

/** The same of the panels that the machine came with, which no reline brought. */
export function reckonedAtFirst(run: Run, joints: readonly number[]): string {
  return reckonedFrom(run, namesOf(firstPiecesOf(run)), `in \`conveyor ${run.conveyor.name}\``, joints);
}

function namesOf(pieces: readonly LinedPiece[]): string {
  return list([...new Set(pieces.map(({ liner }) => liner.name))], 'and');
}

function reckonedFrom(
  { number, from, to, conveyor }: Run,
  liners: string,
  where: string,
  joints: readonly number[],
): string {
  const inside = joints.filter((joint) => joint > from && joint < to);
  const at =
    inside.length === 0
      ? ''
      : ` (joints at ${list(
          inside.map((joint) => chainageOn(conveyor, toCentimetre(joint))),
          'and',
          8,
        )})`;
  const are = liners.includes(' and ') ? 'are' : 'is';
  return (
    `; how they lie is reckoned from the lengths that ${liners} ${are} bought in${at}, and \`fitted run ${number} panels …\` ` +
    `${where} says it as it is`
  );
}

/**
 * The panels that lie in a run at a date (the end of that day), by the records: the newest reline of the whole run decides;
 * a later one of some panels replaces their recorded lengths where their count and total length agree, and one from a chainage
 * to another leaves of the panels at its ends what it did not reach.
 */
export function installedPanels(
  estate: Pick<Estate, 'relines'>,
  run: Run,
  asOf?: CalendarDay,
): InstalledPanels {
  let installed: InstalledPanels = { liner: firstLinerOf(run), ...firstPanels(run) };
  const relines = estate.relines.filter(
    (reline) => reline.conveyor === run.conveyor && (asOf === undefined || reline.date.day <= asOf),
  );
  relines
    .sort((a, b) => a.date.day - b.date.day)
    .forEach((reline, i, all) => {
      installed = installedBy(reline, run, installed, all.slice(0, i));
    });
  return installed;
}

function installedBy(
  reline: Reline,
  run: Run,
  before: InstalledPanels,
  earlier: readonly Reline[],
): InstalledPanels {
  const lengths = lengthsFitted(reline.panelsFitted, run);
  if (coversRun(reline, run)) {
    const [liner = reline.liner] = linersBrought(reline, (run.from + run.to) / 2);
    return lengths && fillsRun(run, lengths, liner)
      ? { liner, layout: recordedPanels(run, lengths, liner), recorded: true }
      : {
          liner,
          layout: mixedPanelsOf(run, piecesBrought(reline, run)),
          recorded: false,
          reckonedFor: reline,
        };
  }
  const replaced = lengths && replacePanels(before.layout, reline, run, lengths);
  if (replaced)
    return { liner: before.liner, layout: recordedPanels(run, replaced, before.liner), recorded: true };
  const reckoned = lengths ? undefined : lengthsOfAnother(before.layout, reline, run, earlier);
  return reckoned
    ? { ...before, layout: recordedPanels(run, reckoned, before.liner), recorded: false, reckonedFor: reline }
    : before;
}

/** Of a stretch that got another liner: as its panels would be laid out there; undefined where the same liner went in again. */
function lengthsOfAnother(
  layout: PanelLayout,
  { scope, liner, conveyor, date }: Reline,
  run: Run,
  earlier: readonly Reline[],
): readonly number[] | undefined {
  const [stretch, ...others] = scope.filter((each) => liesIn(each, run));
  if (stretch?.kind !== 'chainage' || others.length > 0) return undefined;
  const from = Math.max(run.from, stretch.from.value);
  const to = Math.min(run.to, stretch.to.value);
  const [lay] = linersOf(conveyor, earlier)((from + to) / 2, date.day, 'after all work');
  if (lay === liner) return undefined;
  const lengths = stretchPanelsOf(run, liner, to - from).panels.map(({ length }) => length);
  return replaceStretch(layout, from, to, lengths, gapOf(liner));
}

/** The one at a chainage. */
export function panelIn({ panels }: PanelLayout, at: number): PanelLayout['panels'][number] | undefined {
  return panels.find(({ from, to }) => at >= from && at <= to);
}

/** The one at a chainage at a date; undefined where no run is. */
export function panelAt(
  estate: Estate,
  conveyor: Conveyor,
  at: number,
  asOf: CalendarDay,
): PanelLayout['panels'][number] | undefined {
  const run = runAt(conveyor, at);
  return run && panelIn(installedPanels(estate, run, asOf).layout, at);
}

/** Joints of what lies in a run at a date, as `intervalOf` of runs.ts wants them. */
export function installedPanelEnds(estate: Estate, asOf?: CalendarDay): (run: Run) => readonly number[] {
  const known = new Map<Run, readonly number[]>();
  return (run) => {
    const joints = known.get(run) ?? installedPanels(estate, run, asOf).layout.joints;
    known.set(run, joints);
    return joints;
  };
}

function coversRun(reline: Reline, run: Run): boolean {
  if (reline.scope.length === 0) return true;
  return reline.scope.some((stretch) => {
    switch (stretch.kind) {
      case 'all':
        return true;
      case 'run':
        return isRun(stretch, run);
      case 'panels':
        return false;
      case 'chainage':
        return stretch.from.value <= run.from && stretch.to.value >= run.to;
    }
  });
}

function replacePanels(
  layout: PanelLayout,
  reline: Reline,
  run: Run,
  lengths: readonly number[],
): readonly number[] | undefined {
  const [stretch, ...others] = reline.scope.filter((each) => liesIn(each, run));
  if (!stretch || others.length > 0) return undefined;
  if (stretch.kind === 'chainage')
    return replaceStretch(layout, stretch.from.value, stretch.to.value, lengths, gapOf(reline.liner));
  if (stretch.kind !== 'panels') return undefined;
  const [first, last] = [stretch.first.count, stretch.last.count];
  const old = layout.panels.slice(first - 1, last).reduce((sum, panel) => sum + panel.length, 0);
  const total = lengths.reduce((sum, length) => sum + length, 0);
  if (
    first < 1 ||
    lengths.length !== last - first + 1 ||
    last > layout.panels.length ||
    Math.abs(total - old) > old / 20
  )
    return undefined;
  return layout.panels.map((panel, i) =>
    i >= first - 1 && i < last ? (lengths[i - first + 1] ?? panel.length) : panel.length,
  );
}

function liesIn(stretch: Stretch, run: Run): boolean {
  switch (stretch.kind) {
    case 'panels':
      return isRun(stretch, run);
    case 'chainage':
      return stretch.from.value < run.to && stretch.to.value > run.from;
    case 'all':
    case 'run':
      return false;
  }
}

/** New panels between two chainages (mm), and of those that lay there what reaches beyond; undefined where the lengths do not fill it. */
function replaceStretch(
  layout: PanelLayout,
  from: number,
  to: number,
  lengths: readonly number[],
  gap: number,
): readonly number[] | undefined {
  const filled = lengths.reduce((sum, length) => sum + length, gap * (lengths.length - 1));
  if (Math.abs(filled - (to - from)) > (to - from) / 20) return undefined;
  // What is left of a panel is cut back by half the gap, and a sliver under a millimetre is a joint.
  const left = (low: number, high: number): readonly number[] => (high - low > 1 ? [high - low] : []);
  return [
    ...layout.panels.flatMap((panel) => left(panel.from, Math.min(panel.to, from - gap / 2))),
    ...lengths,
    ...layout.panels.flatMap((panel) => left(Math.max(panel.from, to + gap / 2), panel.to)),
  ];
}
