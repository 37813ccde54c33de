// Cutting problems drawn at random, against an integer programme with one column for every pattern.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CuttingProblem } from '../../../src/domain/plan/cutting-stock.js';
import { faults, planned } from './cut-faults.js';
import { minimise, type Row } from './highs.js';

const problems = fc.record({
  stock: fc.tuple(
    fc.record({ length: fc.integer({ min: 20, max: 40 }) }),
    fc.record({ length: fc.integer({ min: 10, max: 30 }), count: fc.integer({ min: 1, max: 2 }) }),
  ),
  pieces: fc.uniqueArray(
    fc.record({ length: fc.integer({ min: 4, max: 20 }), count: fc.integer({ min: 1, max: 4 }) }),
    { minLength: 1, maxLength: 4, selector: (piece) => piece.length },
  ),
  kerf: fc.integer({ min: 0, max: 2 }),
});

describe('small random problems', () => {
  test('as cheap as the integer programme says, and every piece is cut once', () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const plan = planned(problem);
        expect(faults(problem, plan)).toEqual([]);
        const least = byIntegerProgramme(problem);
        expect(plan.lowerBound).toBeLessThanOrEqual(least + 1e-6);
        expect(plan.cost).toBeCloseTo(least, 6);
        expect(plan.optimal).toBe(true);
      }),
      { numRuns: 100 },
    );
  });
});

/** One column for every pattern there is. */
function byIntegerProgramme({ stock, pieces, kerf = 0 }: CuttingProblem): number {
  const columns: { stock: number; counts: number[]; cost: number }[] = [];
  stock.forEach((kind, k) => {
    const visit = (i: number, room: number, counts: readonly number[]): void => {
      const piece = pieces[i];
      if (!piece) {
        if (counts.some((count) => count > 0))
          columns.push({ stock: k, counts: [...counts], cost: kind.cost ?? kind.length });
        return;
      }
      for (let n = 0; n <= piece.count && n * (piece.length + kerf) <= room + 1e-9; n++)
        visit(i + 1, room - n * (piece.length + kerf), [...counts, n]);
    };
    visit(0, kind.length + kerf, []);
  });
  const rows: Row[] = pieces.map((piece, i) => ({
    sum: columns.flatMap((column, c) => (column.counts[i] ? [{ by: column.counts[i], of: `p${c}` }] : [])),
    is: '>=',
    value: piece.count,
  }));
  stock.forEach((kind, k) => {
    if (kind.count !== undefined)
      rows.push({
        sum: columns.flatMap((column, c) => (column.stock === k ? [{ by: 1, of: `p${c}` }] : [])),
        is: '<=',
        value: kind.count,
      });
  });
  const least = minimise(
    columns.map((column, c) => ({ by: column.cost, of: `p${c}` })),
    rows.filter((row) => row.sum.length > 0),
    columns.map((_, c) => `p${c}`),
    20,
  );
  if (least === undefined) throw new Error('The integer programme found nothing.');
  return least;
}
