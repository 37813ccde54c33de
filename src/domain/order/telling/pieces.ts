// Pieces as a reader counts them: panels by ranges, other parts by count and extent.

import { unitOfMachine } from '../../model/unit-of-machine.js';
import { type LengthUnit, chainageWords } from '../../units/length-words.js';
import { sayPiece, type Piece, type PieceKind } from '../ground.js';
import { gateShut, laidScrew } from '../states.js';
import type { OrderSlip, Walk } from '../walk-state.js';
import { listing, ranges } from '../words.js';

/** Pieces of one kind in few words: panels by ranges, others by count and extent. */
export function sayPieces(pieces: readonly Piece[], unit: LengthUnit): string {
  const first = pieces[0];
  if (!first) return 'nothing';
  const sorted = [...pieces].sort((a, b) => a.from - b.from);
  if (first.kind === 'panel') {
    const runs = [...new Set(sorted.map((piece) => piece.run))];
    return listing(
      runs.map((run) => {
        const numbers = sorted.filter((piece) => piece.run === run).map((piece) => piece.panel ?? 0);
        return `${numbers.length === 1 ? 'panel' : 'panels'} ${ranges(numbers)} of run ${run?.run.number}`;
      }),
    );
  }
  if (pieces.length === 1) return `the ${sayPiece(first, unit)}`;
  const from = Math.min(...pieces.map((piece) => piece.from));
  const to = Math.max(...pieces.map((piece) => piece.to));
  const name = along[first.kind];
  const extent = `from ${chainageWords(from, unit)} to ${chainageWords(to, unit)}`;
  return name === undefined ? `${pieces.length} ${first.kind}s ${extent}` : `${name} ${extent}`;
}

/** What lies all along the trough is not counted. */
const along: Partial<Record<PieceKind, string>> = {
  air: 'the air',
  screw: 'the spiral',
  heat: 'the place',
  litter: 'the tools and litter',
};

/** Each kind of thing that is not back, in its own words. */
export function stillOpen(w: Walk, slip: OrderSlip): string {
  const unit = unitOfMachine(w.ground.job.conveyor);
  const kinds = [...new Set(slip.pieces.map((piece) => piece.kind))];
  return listing(
    kinds.map((kind) => {
      const pieces = slip.pieces.filter((piece) => piece.kind === kind);
      const verb = pieces.length === 1 ? 'is' : 'are';
      if (kind === 'drive') return 'the drive plate is unbolted';
      if (kind === 'screw')
        return `${sayPieces(pieces, unit)} is ${slip.found === laidScrew ? 'not joined' : 'out'}`;
      if (kind === 'gate')
        return `${sayPieces(pieces, unit)} ${verb} ${slip.found === gateShut ? 'pinned shut' : 'stripped'}`;
      return `${sayPieces(pieces, unit)} ${verb} ${kind === 'panel' ? 'not fitted' : 'off'}`;
    }),
  );
}

export function are(slip: OrderSlip): string {
  return slip.pieces.length === 1 ? 'is' : 'are';
}
