// How a run would be lined: in chainages, from the panel lengths of a liner and the end at which fitting starts. That is the upper
// end unless only the lower end could not close the run (its break takes no error while the upper one's does). Panels are numbered
// from the tail end of their run.

import { layMixed, type LaidStretch } from '../geometry/mixed-layout.js';
import type { KeepClear } from '../geometry/panel-piece.js';
import {
  layPanels,
  layRecorded,
  usualMinimumClosingPiece,
  type PanelLayout,
} from '../geometry/panel-layout.js';
import type { Run } from './runs.js';
import type { LinerSpecification } from './specifications.js';

/** A stretch of one liner; chainages, mm. */
export interface LinedPiece {
  readonly liner: LinerSpecification;
  readonly from: number;
  readonly to: number;
}

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
      ...lined(run.length, liner),
      start,
      minimumClosingPiece,
      avoid: avoid.map((place) => ({ ...place, at: place.at - run.from })),
    }),
    run.from,
  );
}

/** The same where the liner changes along it: pieces in chainage order that cover the run, mm. */
export function mixedPanelsOf(run: Run, pieces: readonly LinedPiece[]): PanelLayout {
  const [only] = pieces;
  if (only && pieces.length === 1) return panelsOf(run, only.liner);
  const stretches = pieces.map(({ liner, from, to }) => lined(to - from, liner));
  const start = usualStart(run);
  return shift(layMixed({ stretches, start, minimumClosingPiece: usualMinimumClosingPiece }), run.from);
}

/** A stretch of a run, mm long, as it would be lined; offsets from its lower end. */
export function stretchPanelsOf(run: Run, liner: LinerSpecification, length: number): PanelLayout {
  return layPanels({
    ...lined(length, liner),
    start: usualStart(run),
    minimumClosingPiece: usualMinimumClosingPiece,
  });
}

/** Panels of the lengths written down, from the run's tail end (chainages, mm). */
export function recordedPanels(run: Run, lengths: readonly number[], liner: LinerSpecification): PanelLayout {
  return shift(layRecorded(lengths, gapOf(liner), usualStart(run)), run.from);
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

function lined(length: number, liner: LinerSpecification): LaidStretch {
  const lengths = liner.panelLengths.map((each) => each.value).filter((each) => each > 0);
  // A specification without panel lengths is reported elsewhere; the run is then one piece, so that it still has a picture.
  return { length, panelLengths: lengths.length > 0 ? lengths : [length], gap: gapOf(liner) };
}

/** Left open at a joint, mm; 0 where panels are butted. */
export function gapOf(liner: LinerSpecification): number {
  return liner.joint.policy === 'gap' ? Math.max(0, liner.joint.gap.value) : 0;
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
