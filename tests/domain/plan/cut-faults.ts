// A cutting plan as a test asks for it, and what is wrong with one: counted from its sticks alone.

import {
  cuttingStock,
  type CuttingPlan,
  type CuttingProblem,
} from '../../../src/domain/plan/cutting-stock.js';

export type Planned = Extract<CuttingPlan, { kind: 'plan' }>;

export function planned(problem: CuttingProblem): Planned {
  const result = cuttingStock(problem);
  if (result.kind !== 'plan') throw new Error(result.kind);
  return result;
}

export function faults({ stock, pieces, kerf = 0 }: CuttingProblem, { sticks }: Planned): string[] {
  const wrong: string[] = [];
  const got = pieces.map(() => 0);
  const used = stock.map(() => 0);
  for (const stick of sticks) {
    used[stick.stock] = (used[stick.stock] ?? 0) + stick.times;
    for (const piece of stick.pieces) got[piece] = (got[piece] ?? 0) + stick.times;
    const length =
      stick.pieces.reduce((sum, piece) => sum + (pieces[piece]?.length ?? 0), 0) +
      kerf * (stick.pieces.length - 1);
    if (length + stick.rest > (stock[stick.stock]?.length ?? 0) + 1e-9) wrong.push('a stick too full');
  }
  pieces.forEach((piece, i) => {
    if (got[i] !== piece.count) wrong.push(`${got[i]} of ${piece.count} of ${piece.length}`);
  });
  stock.forEach((kind, k) => {
    if (kind.count !== undefined && (used[k] ?? 0) > kind.count) wrong.push(`too many of ${kind.length}`);
  });
  return wrong;
}
