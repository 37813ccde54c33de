// Where the panels of a run lie, in chainages: as recorded when they were fitted, or else as they would be laid out from the
// liner's panel lengths. Fitting starts at the upper end unless only the lower end could not close the run (its break takes
// no error while the upper one's does). Panels are numbered from the tail end of their run.

import {
  layPanels,
  layRecorded,
  usualMinimumClosingPiece,
  type PanelLayout,
} from '../geometry/panel-layout.js';
import { formatDay, type CalendarDay } from '../units/calendar.js';
import { toCentimetre } from '../units/length-words.js';
import { list } from '../units/wording.js';
import type { Conveyor } from './conveyor.js';
import type { Estate } from './estate.js';
import { firstLinerOf } from './first-liner.js';
import type { Reline } from './records.js';
import type { Stretch } from './stretch.js';
import { findRun, runAt, runsOf, type Run } from './runs.js';
import type { LinerSpecification } from './specifications.js';
import { chainageOn } from './unit-of-machine.js';
import type { KeepClear } from '../geometry/panel-piece.js';

export interface PanelOptions {
  readonly start?: 'tail' | 'head';
  /** mm; the usual minimum where left out. */
  readonly minimumClosingPiece?: number;
  /** Chainages to keep joints away from; see placesToAvoid. */
  readonly avoid?: readonly KeepClear[];
}

/** The layout in chainages (mm) of a run lined to a specification, as it would be planned. */
export function panelsOf(
  run: Run,
  liner: LinerSpecification,
  options: PanelOptions | 'tail' | 'head' = {},
): PanelLayout {
  const {
    start = usualStart(run),
    minimumClosingPiece = usualMinimumClosingPiece,
    avoid = [],
  } = typeof options === 'string' ? { start: options } : options;
  return shift(
    layPanels({
      length: run.length,
      panelLengths: offered(run, liner),
      start,
      minimumClosingPiece,
      gap: gapOf(liner),
      avoid: avoid.map((place) => ({ ...place, at: place.at - run.from })),
    }),
    run.from,
  );
}

/** Joints of a run as planned for the liner named on its conveyor, chainages in mm, first its tail end and last its head end. */
export function panelEnds(run: Run): readonly number[] {
  const known = planned.get(run);
  if (known) return known;
  const { joints } = panelsOf(run, firstLinerOf(run));
  planned.set(run, joints);
  return joints;
}
const planned = new WeakMap<Run, readonly number[]>();

export interface InstalledPanels {
  readonly liner: LinerSpecification;
  readonly layout: PanelLayout;
  /** The reline that wrote the lengths down; undefined where the layout is worked out and not recorded. */
  readonly recordedBy?: Reline;
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
    ? reckonedFrom(run, reckonedFor.liner, `in the reline of ${formatDay(reckonedFor.date.day)}`, joints)
    : '';
}

/** The same of the liner that the machine came with, which no reline brought. */
export function reckonedAtFirst(run: Run, joints: readonly number[]): string {
  const { commissioned } = run.conveyor;
  const day = commissioned ? formatDay(commissioned.date.day) : 'the day it was lined';
  return reckonedFrom(
    run,
    firstLinerOf(run),
    `with \`scope run ${run.number}\` in a reline of ${day}`,
    joints,
  );
}

function reckonedFrom(
  { number, from, to, conveyor }: Run,
  { name }: LinerSpecification,
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
  return (
    `; how they lie is reckoned from the lengths that ${name} is bought in${at}, and \`fitted run ${number} panels …\` ` +
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
  let installed: InstalledPanels = { liner: firstLinerOf(run), layout: panelsOf(run, firstLinerOf(run)) };
  const relines = estate.relines.filter(
    (reline) => reline.conveyor === run.conveyor && (asOf === undefined || reline.date.day <= asOf),
  );
  for (const reline of relines.sort((a, b) => a.date.day - b.date.day)) {
    const lengths = recordedLengths(reline, run);
    if (coversRun(reline, run)) {
      installed =
        lengths && fills(run, lengths, reline.liner)
          ? { liner: reline.liner, layout: recorded(run, lengths, reline.liner), recordedBy: reline }
          : { liner: reline.liner, layout: panelsOf(run, reline.liner), reckonedFor: reline };
    } else if (lengths) {
      const replaced = replacePanels(installed.layout, reline, run, lengths);
      if (replaced)
        installed = {
          liner: installed.liner,
          layout: recorded(run, replaced, installed.liner),
          recordedBy: reline,
        };
    }
  }
  return installed;
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

/** Trough flanges and hold-downs inside a run, with the clearance (mm) that joints should keep from each; chainages in mm. */
export function placesToAvoid(run: Run, clearance: number): readonly KeepClear[] {
  const { sections, holdDowns } = run.conveyor;
  const flanges = sections.slice(1).map((section) => section.start);
  const bolts = holdDowns.flatMap((part) => [part.from.value, part.to.value]);
  const inside = [...new Set([...flanges, ...bolts])].filter((at) => at > run.from && at < run.to);
  return inside.sort((a, b) => a - b).map((at) => ({ at, clearance }));
}

/** The end at which fitting usually starts: the upper one, or the lower where only the upper break can take the error. */
export function usualStart(run: Run): 'tail' | 'head' {
  const upper = run.conveyor.incline.value < 0 ? 'tail' : 'head';
  const [lowerBreak, upperBreak] =
    upper === 'head' ? [run.tailBreak, run.headBreak] : [run.headBreak, run.tailBreak];
  const closesBelow = lowerBreak.allowance.value > 0 || upperBreak.allowance.value === 0;
  if (closesBelow) return upper;
  return upper === 'head' ? 'tail' : 'head';
}

function offered(run: Run, liner: LinerSpecification): readonly number[] {
  const lengths = liner.panelLengths.map((length) => length.value).filter((length) => length > 0);
  // A specification without panel lengths is reported elsewhere; the run is then one piece, so that it still has a picture.
  return lengths.length > 0 ? lengths : [run.length];
}

function gapOf(liner: LinerSpecification): number {
  return liner.joint.policy === 'gap' ? Math.max(0, liner.joint.gap.value) : 0;
}

function recorded(run: Run, lengths: readonly number[], liner: LinerSpecification): PanelLayout {
  return shift(layRecorded(lengths, gapOf(liner), usualStart(run)), run.from);
}

function shift(layout: PanelLayout, by: number): PanelLayout {
  return {
    ...layout,
    joints: layout.joints.map((joint) => joint + by),
    panels: layout.panels.map((panel) => ({ ...panel, from: panel.from + by, to: panel.to + by })),
    unavoidable: layout.unavoidable.map(({ place, joint }) => ({
      place: { ...place, at: place.at + by },
      joint: joint + by,
    })),
  };
}

function coversRun(reline: Reline, run: Run): boolean {
  if (reline.scope.length === 0) return true;
  return reline.scope.some((stretch) => {
    switch (stretch.kind) {
      case 'all':
        return true;
      case 'run':
        return sameRun(run.conveyor, findRun(run.conveyor, stretch.run), run);
      case 'panels':
        return false;
      case 'chainage':
        return stretch.from.value <= run.from && stretch.to.value >= run.to;
    }
  });
}

function recordedLengths(reline: Reline, run: Run): readonly number[] | undefined {
  const rows = reline.panelsFitted.filter(
    ({ run: stretch }) =>
      stretch.kind === 'run' && sameRun(run.conveyor, findRun(run.conveyor, stretch.run), run),
  );
  const lengths = rows.flatMap((row) => row.lengths.map((length) => length.value));
  return lengths.length > 0 && lengths.every((length) => length > 0) ? lengths : undefined;
}

/** Recorded panels fill a run where their total is within a twentieth of it; otherwise they are only some of its panels. */
function fills(run: Run, lengths: readonly number[], liner: LinerSpecification): boolean {
  const total = lengths.reduce((sum, length) => sum + length, 0) + gapOf(liner) * (lengths.length - 1);
  return Math.abs(total - run.length) <= run.length / 20;
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
      return sameRun(run.conveyor, findRun(run.conveyor, stretch.run), run);
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

function sameRun(conveyor: Conveyor, found: Run | undefined, run: Run): boolean {
  return found !== undefined && runsOf(conveyor).includes(found) && found.number === run.number;
}
