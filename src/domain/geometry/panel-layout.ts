// How a run is divided into panels: joints clear of the places to avoid first, then the fewest pieces, then the least waste,
// then the fewest cuts. Whole panels go in from the starting end; the closing panel is cut to fit, and where it would be
// shorter than the minimum, the panel before it is shortened instead. Derived; the search is exact on a grid that the panel
// lengths and the gap are multiples of. Offsets in mm from the run's tail end.

import { clearOf, searchClear } from './layout/clear-search.js';
import { fewestPieces, leastWaste } from './layout/least-waste.js';
import { notNegative, positive } from './demand.js';
import type { KeepClear, PanelPiece } from './panel-piece.js';

export interface LayoutInput {
  /** Lined length of the run, mm. */
  readonly length: number;
  /** Lengths on offer, mm; at least one. */
  readonly panelLengths: readonly number[];
  /** The end at which fitting starts; the closing panel lies at the other. */
  readonly start: 'tail' | 'head';
  /** No cut piece is shorter than this, mm, where the run's length allows it. */
  readonly minimumClosingPiece: number;
  /** Joints keep `clearance` from `at` where that is possible; both mm, `at` from the run's tail end. */
  readonly avoid?: readonly KeepClear[];
  /** Left open at every joint, mm; 0 where panels are butted. */
  readonly gap: number;
}

export interface PanelLayout {
  /** First the tail end, last the head end; a joint with a gap is given by the gap's middle. */
  readonly joints: readonly number[];
  /** In order from the tail, numbered from 1. */
  readonly panels: readonly Panel[];
  /** What is cut off, mm in all. */
  readonly waste: number;
  /** Places to avoid that no layout could keep clear of, with the joint nearest to each. */
  readonly unavoidable: readonly { readonly place: KeepClear; readonly joint: number }[];
  /** Pieces more than the run would need if joints could lie anywhere. */
  readonly extraPieces: number;
  /** True where the run's length leaves no way but a piece shorter than the minimum. */
  readonly belowMinimum: boolean;
}

export interface Panel {
  readonly number: number;
  readonly from: number;
  readonly to: number;
  readonly length: number;
  /** The last to go in. */
  readonly closing: boolean;
  /** Length of the panel it is cut from, or its own where it is whole. */
  readonly cutFrom: number;
}

/** Smallest closing piece where none is declared, mm: two bolts at the usual spacing (judgement, shown as such). */
export const usualMinimumClosingPiece = 200;

/** Pure; the last few hundred layouts are kept, because an editor asks for the same ones at every keystroke. */
export function layPanels(input: LayoutInput): PanelLayout {
  const key = JSON.stringify(input);
  const known = kept.get(key);
  if (known) return known;
  const layout = layOut(input);
  if (kept.size >= 500) kept.clear();
  kept.set(key, layout);
  return layout;
}
const kept = new Map<string, PanelLayout>();

function layOut(input: LayoutInput): PanelLayout {
  const length = positive('length of the run', input.length, 'mm');
  const gap = notNegative('joint gap', input.gap, 'mm');
  if (input.panelLengths.length === 0)
    throw new RangeError('A run needs at least one panel length to be laid out.');
  const offered = [...new Set(input.panelLengths.map((each) => positive('panel length', each, 'mm')))].sort(
    (a, b) => b - a,
  );
  const minimum = possibleMinimum(input.minimumClosingPiece, length, offered, gap);
  const mirrored = input.start === 'head';
  const avoid = (input.avoid ?? []).map((place) => (mirrored ? { ...place, at: length - place.at } : place));

  const plain = leastWaste(length, offered, gap, minimum);
  const pieces = clearOf(plain, avoid, gap)
    ? plain
    : (searchClear({ length, offered, gap, minimum, avoid }) ?? plain);
  const layout = fromPieces(mirrored ? [...pieces].reverse() : pieces, length, gap, input.start);
  return {
    ...layout,
    unavoidable: unavoidable(layout.joints, input.avoid ?? []),
    extraPieces: pieces.length - plain.length,
    belowMinimum: pieces.some((piece) => piece.length < input.minimumClosingPiece - 1e-6),
  };
}

/** Panels as they were recorded when fitted, in order from the tail; the last ends where the lengths say, not at the break. */
export function layRecorded(lengths: readonly number[], gap: number, start: 'tail' | 'head'): PanelLayout {
  const pieces = lengths.map((length) => ({
    length: positive('fitted length', length, 'mm'),
    cutFrom: length,
  }));
  const total = lengths.reduce((sum, length) => sum + length, 0) + gap * Math.max(0, lengths.length - 1);
  return { ...fromPieces(pieces, total, gap, start), unavoidable: [], extraPieces: 0, belowMinimum: false };
}

/** The declared minimum, or what the fewest pieces leave each where that is less: a run of 500 mm in panels of 300 is two of 250. */
function possibleMinimum(declared: number, length: number, offered: readonly number[], gap: number): number {
  const count = fewestPieces(length, offered, gap);
  return Math.min(
    notNegative('minimum closing piece', declared, 'mm'),
    (length - (count - 1) * gap) / count,
    ...offered,
  );
}

function fromPieces(
  pieces: readonly PanelPiece[],
  length: number,
  gap: number,
  start: 'tail' | 'head',
): Pick<PanelLayout, 'joints' | 'panels' | 'waste'> {
  const panels: Panel[] = [];
  const joints = [0];
  let at = 0;
  let waste = 0;
  pieces.forEach((piece, i) => {
    const last = i === pieces.length - 1;
    const to = last ? length : round(at + piece.length);
    panels.push({
      number: i + 1,
      from: at,
      to,
      length: round(to - at),
      cutFrom: piece.cutFrom,
      closing: start === 'tail' ? last : i === 0,
    });
    waste += piece.cutFrom - piece.length;
    joints.push(last ? length : round(to + gap / 2));
    at = round(to + gap);
  });
  return { joints, panels, waste: round(waste) };
}

function unavoidable(joints: readonly number[], avoid: readonly KeepClear[]): PanelLayout['unavoidable'] {
  const inner = joints.slice(1, -1);
  return avoid.flatMap((place) => {
    const near = inner.filter((joint) => Math.abs(joint - place.at) < place.clearance - 1e-6);
    near.sort((a, b) => Math.abs(a - place.at) - Math.abs(b - place.at) || a - b);
    const [joint] = near;
    return joint === undefined ? [] : [{ place, joint }];
  });
}

/** To a millionth of a mm, so that sums of decimal lengths print as the decimals they are. */
function round(mm: number): number {
  return Math.round(mm * 1e6) / 1e6;
}
