// How a run is divided where its liner changes along it: a panel is of one liner, so that a joint lies at each change and every
// stretch is laid from its own lengths, all from the same end. A change is known from a tape: where whole panels end within a joint's
// reach of it, the joint lies where they end, and nothing is cut for the difference.

import { layPanels, type Panel, type PanelLayout } from './panel-layout.js';

/** A stretch of one liner. */
export interface LaidStretch {
  /** By the tape, mm. */
  readonly length: number;
  /** Lengths on offer, mm; at least one. */
  readonly panelLengths: readonly number[];
  /** Left open at its joints, mm; 0 where panels are butted. */
  readonly gap: number;
}

export interface MixedLayoutInput {
  /** In order from the run's tail end; at least one. */
  readonly stretches: readonly LaidStretch[];
  /** The end at which fitting starts. */
  readonly start: 'tail' | 'head';
  /** No cut piece is shorter than this, mm, where its stretch allows it. */
  readonly minimumClosingPiece: number;
}

/** What a joint may be off on site, mm (judgement). */
export const jointReach = 20;

/** Offsets in mm from the run's tail end, as layPanels gives them; at a change the wider gap of the two is left open. */
export function layMixed({ stretches, start, minimumClosingPiece }: MixedLayoutInput): PanelLayout {
  const whole = stretches.reduce((sum, { length }) => sum + length, 0);
  const order = start === 'tail' ? stretches : [...stretches].reverse();
  const laid: { readonly layout: PanelLayout; readonly from: number }[] = [];
  let change = 0; // by the tape, from the end at which fitting starts
  let at = 0; // where the joint lies
  order.forEach((stretch, i) => {
    change += stretch.length;
    const [before, next] = [order[i - 1], order[i + 1]];
    const from = at + (before ? openAt(before, stretch) / 2 : 0);
    const tape = (next ? change - openAt(stretch, next) / 2 : whole) - from;
    const lay = (length: number): PanelLayout =>
      layPanels({ ...stretch, length, start, minimumClosingPiece });
    const length = next ? wholeWithin(stretch, tape, lay) : tape;
    laid.push({ layout: lay(length), from: start === 'tail' ? from : whole - from - length });
    at = from + length + (next ? openAt(stretch, next) / 2 : 0);
  });
  return joined(start === 'tail' ? laid : laid.reverse(), whole, start);
}

function openAt(a: LaidStretch, b: LaidStretch): number {
  return Math.max(a.gap, b.gap);
}

/** The length that whole panels fill, where that is the length by the tape within a joint's reach; else that one. */
function wholeWithin({ gap }: LaidStretch, tape: number, lay: (length: number) => PanelLayout): number {
  if (tape <= 2 * jointReach) return tape;
  const { panels } = lay(tape - jointReach);
  const filled = panels.reduce((sum, { cutFrom }) => sum + cutFrom, gap * (panels.length - 1));
  return Math.abs(filled - tape) <= jointReach ? filled : tape;
}

function joined(
  laid: readonly { readonly layout: PanelLayout; readonly from: number }[],
  length: number,
  start: 'tail' | 'head',
): PanelLayout {
  const panels = laid.flatMap(({ layout, from }) =>
    layout.panels.map((panel) => ({ ...panel, from: panel.from + from, to: panel.to + from })),
  );
  const last = start === 'tail' ? panels.length - 1 : 0;
  return {
    joints: jointsOf(panels, length),
    panels: panels.map((panel, i) => ({ ...panel, number: i + 1, closing: i === last })),
    waste: laid.reduce((sum, { layout }) => sum + layout.waste, 0),
    unavoidable: [],
    extraPieces: 0,
    belowMinimum: laid.some(({ layout }) => layout.belowMinimum),
  };
}

function jointsOf(panels: readonly Panel[], length: number): readonly number[] {
  const inner = panels.slice(1).map(({ from }, i) => ((panels[i]?.to ?? from) + from) / 2);
  return [0, ...inner, length];
}
