// Which liner goes in where a record or a job names none? The same again: in each run the one that lies there, and within a run where
// several came with the machine, each where it came. Where one of several runs, or one panel, was lined with another since, that is
// taken too, for want of better, and TL266 or TL499 asks.

import { jointReach } from '../geometry/mixed-layout.js';
import type { Conveyor } from './conveyor.js';
import { firstPieces, overlaid } from './first-liner.js';
import { firstPiecesOf, panelEnds } from './first-panels.js';
import type { Reline } from './records.js';
import type { LinedPiece } from './run-layout.js';
import { intervalOf, runsOf, type Run } from './runs.js';
import type { LinerSpecification } from './specifications.js';

export interface SameAgain {
  /** In chainage order, mm; neighbours differ in their liner. Never empty. */
  readonly pieces: readonly LinedPiece[];
  /** Run by run, as far as the stretch reaches into each. */
  readonly inRuns: readonly InRun[];
  /** False where several lie that did not come so with the machine. */
  readonly settled: boolean;
}

export interface InRun extends Stretch {
  readonly run: Run;
  /** What goes in, in chainage order. */
  readonly pieces: readonly LinedPiece[];
  /** One liner lies there. */
  readonly isOne: boolean;
  readonly asItCame: boolean;
}

type Stretch = Pick<LinedPiece, 'from' | 'to'>;

/** `relines`: those before it of the conveyor, in order of date. */
export function sameAgain(conveyor: Conveyor, { from, to }: Stretch, relines: readonly Reline[]): SameAgain {
  const lying = lyingPieces(conveyor, relines);
  const inRuns = runsOf(conveyor).flatMap((run) => {
    const [low, high] = [Math.max(from, run.from), Math.min(to, run.to)];
    return high - low > jointReach ? [inRun(run, { from: low, to: high }, lying)] : [];
  });
  const pieces = merged(inRuns.flatMap((each) => each.pieces));
  const [first] = pieces;
  // A stretch that no run has a part of: what lies at its middle.
  if (!first) {
    const liner = linerAt(lying, middleOf({ from, to })) ?? conveyor.liner;
    return { pieces: [{ liner, from, to }], inRuns, settled: true };
  }
  const settled = inRuns.every(({ isOne, asItCame }) => asItCame || (isOne && pieces.length === 1));
  return { pieces: met(pieces, { from, to }), inRuns, settled };
}

/** What a reline brought along a stretch, in chainage order, mm. */
export function piecesBrought(
  { liner, again }: Pick<Reline, 'liner' | 'again'>,
  { from, to }: Stretch,
): readonly LinedPiece[] {
  return again ? met(clipped(again, { from, to }), { from, to }) : [{ liner, from, to }];
}

/** What a reline brought, at a chainage (mm) where one is given; several only where it names none and several lay. */
export function linersBrought(
  { liner, again }: Pick<Reline, 'liner' | 'again'>,
  chainage?: number,
): readonly LinerSpecification[] {
  if (!again) return [liner];
  return chainage === undefined
    ? [...new Set(again.map((piece) => piece.liner))]
    : [linerAt(again, chainage) ?? liner];
}

/** What lay along a conveyor after these relines, in chainage order, mm. */
function lyingPieces(conveyor: Conveyor, relines: readonly Reline[]): readonly LinedPiece[] {
  return relines.reduce<readonly LinedPiece[]>((pieces, { scope, liner, again }) => {
    const whole = { from: 0, to: conveyor.length.value };
    const areas =
      scope.length === 0 ? [whole] : scope.flatMap((one) => intervalOf(conveyor, one, panelEnds) ?? []);
    return areas.reduce(
      (under, area) => piecesBrought({ liner, ...(again && { again }) }, area).reduce(overlaid, under),
      pieces,
    );
  }, firstPieces(conveyor));
}

function inRun(run: Run, stretch: Stretch, lying: readonly LinedPiece[]): InRun {
  const there = merged(clipped(lying, stretch));
  const came = merged(clipped(firstPiecesOf(run), stretch));
  const asItCame =
    there.length === came.length &&
    there.every(
      ({ liner, from }, i) => liner === came[i]?.liner && Math.abs(from - came[i].from) <= jointReach,
    );
  const isOne = there.length === 1;
  if (isOne || asItCame) return { run, ...stretch, pieces: there, isOne, asItCame };
  const liner = linerAt(there, middleOf(stretch)) ?? run.conveyor.liner;
  return { run, ...stretch, pieces: [{ liner, ...stretch }], isOne, asItCame };
}

function middleOf({ from, to }: Stretch): number {
  return (from + to) / 2;
}

function clipped(pieces: readonly LinedPiece[], { from, to }: Stretch): readonly LinedPiece[] {
  return pieces.flatMap((piece) => {
    const [low, high] = [Math.max(from, piece.from), Math.min(to, piece.to)];
    return high - low > jointReach ? [{ ...piece, from: low, to: high }] : [];
  });
}

/** Neighbours of one liner are one piece. */
function merged(pieces: readonly LinedPiece[]): readonly LinedPiece[] {
  return pieces.reduce<readonly LinedPiece[]>((all, piece) => {
    const before = all.at(-1);
    return before?.liner === piece.liner
      ? [...all.slice(0, -1), { ...before, to: piece.to }]
      : [...all, piece];
  }, []);
}

/** Over the breaks between them, too, where no liner lies. */
function met(pieces: readonly LinedPiece[], { from, to }: Stretch): readonly LinedPiece[] {
  return pieces.map((piece, i) => ({
    ...piece,
    from: i === 0 ? from : piece.from,
    to: pieces[i + 1]?.from ?? to,
  }));
}

/** Where two meet, that towards the head. */
export function linerAt(pieces: readonly LinedPiece[], chainage: number): LinerSpecification | undefined {
  return pieces.findLast(({ from, to }) => chainage >= from && chainage <= to)?.liner;
}
