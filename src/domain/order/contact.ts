// Which pieces lie under or over which others, where some have a length and some stand at one chainage.

import { touches, type Area, type Ground, type Piece } from './ground.js';

export function panelsUnder(ground: Ground, over: readonly Piece[]): Piece[] {
  return piecesUnder(
    ground.runs.flatMap((run) => run.panels),
    over,
  );
}

/**
 * Pieces that share some length with others, or hold a chainage where one of them is. Where a part stands just where two covers
 * meet, the cover (or the part, seen from the cover) counts if it also lies in the step's own stretch.
 */
export function piecesUnder(
  pieces: readonly Piece[],
  over: readonly Piece[],
  areas?: readonly Area[],
): Piece[] {
  return pieces.filter((piece) =>
    over.some((other) => {
      const contact = meet(piece, other);
      return (
        contact === 'inside' || (contact === 'edge' && (!areas || areas.some((area) => touches(piece, area))))
      );
    }),
  );
}

function meet(a: Piece, b: Piece): 'inside' | 'edge' | 'apart' {
  if (a.from === a.to && b.from === b.to) return a.from === b.from ? 'inside' : 'apart';
  if (a.from !== a.to && b.from !== b.to)
    return Math.min(a.to, b.to) - Math.max(a.from, b.from) > 1 ? 'inside' : 'apart';
  const [span, at] = a.from === a.to ? [b, a.from] : [a, b.from];
  if (at < span.from - 1 || at > span.to + 1) return 'apart';
  return at > span.from + 1 && at < span.to - 1 ? 'inside' : 'edge';
}
