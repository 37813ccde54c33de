// Which liner lay where before any reline? The conveyor's own, but for the stretches that name another; where two stretches speak
// of one place, the later line.

import type { Conveyor } from './conveyor.js';
import { intervalOf, type Run } from './runs.js';
import type { LinedPiece } from './run-layout.js';
import type { LinerSpecification } from './specifications.js';

const known = new WeakMap<Conveyor, readonly LinedPiece[]>();

/** Pieces in chainage order that cover the conveyor without a gap; neighbours differ in their liner. */
export function firstPieces(conveyor: Conveyor): readonly LinedPiece[] {
  const found = known.get(conveyor) ?? build(conveyor);
  known.set(conveyor, found);
  return found;
}

export function firstLinerAt(conveyor: Conveyor, chainage: number): LinerSpecification {
  const at = firstPieces(conveyor).findLast(({ from, to }) => chainage >= from && chainage <= to);
  return at?.liner ?? conveyor.liner;
}

/** Of a run, by its middle. */
export function firstLinerOf({ conveyor, from, to }: Run): LinerSpecification {
  return firstLinerAt(conveyor, (from + to) / 2);
}

/** Every liner of the beginning, each once. */
export function firstLiners(conveyor: Conveyor): readonly LinerSpecification[] {
  return [...new Set([conveyor.liner, ...conveyor.linersAlong.map(({ liner }) => liner)])];
}

function build(conveyor: Conveyor): readonly LinedPiece[] {
  const length = conveyor.length.value;
  let pieces: readonly LinedPiece[] = [{ liner: conveyor.liner, from: 0, to: length }];
  for (const { liner, stretch } of conveyor.linersAlong) {
    const interval = intervalOf(conveyor, stretch, () => []);
    if (!interval) continue;
    const from = Math.max(0, Math.min(interval.from, interval.to));
    const to = Math.min(length, Math.max(interval.from, interval.to));
    if (to > from) pieces = overlaid(pieces, { liner, from, to });
  }
  return pieces;
}

/** One more piece over those that lie there, in chainage order. */
export function overlaid(pieces: readonly LinedPiece[], over: LinedPiece): readonly LinedPiece[] {
  const left = pieces.flatMap((piece) => [
    { ...piece, to: Math.min(piece.to, over.from) },
    { ...piece, from: Math.max(piece.from, over.to) },
  ]);
  return [...left, over].filter(({ from, to }) => to > from).sort((a, b) => a.from - b.from);
}
