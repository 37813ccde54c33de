import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cuttingStock, type CuttingProblem } from '../../../src/domain/plan/cutting-stock.js';
import { minimise, type Row } from './highs.js';

function planned(problem: CuttingProblem) {
  const result = cuttingStock(problem);
  if (result.kind !== 'plan') throw new Error(result.kind);
  return result;
}

// The paper-mill example of the encyclopaedia article on cutting stock: rolls of 5600 mm, 13 widths; the article gives 73
// rolls and 0.401 % of waste.
const mill = {
  stock: [{ length: 5600 }],
  pieces: [
    [1380, 22],
    [1520, 25],
    [1560, 12],
    [1710, 14],
    [1820, 18],
    [1880, 18],
    [1930, 20],
    [2000, 10],
    [2050, 12],
    [2100, 14],
    [2140, 16],
    [2150, 18],
    [2200, 20],
  ].map(([length = 0, count = 0]) => ({ length, count })),
};

test('the paper mill: 73 rolls, 0.4012 % waste, proven', () => {
  const plan = planned(mill);
  expect(plan.sticks.reduce((sum, stick) => sum + stick.times, 0)).toBe(73);
  expect((plan.wasteRatio * 100).toFixed(4)).toBe('0.4012');
  expect(plan.optimal).toBe(true);
  expect(faults(mill, plan)).toEqual([]);
});

test('a kerf lies between pieces, not after the last: 1000 + 3 + 1000 from 2003', () => {
  expect(
    planned({ stock: [{ length: 2003 }], pieces: [{ length: 1000, count: 2 }], kerf: 3 }).sticks,
  ).toEqual([{ stock: 0, pieces: [0, 0], times: 1, rest: 0 }]);
  expect(
    planned({ stock: [{ length: 2002 }], pieces: [{ length: 1000, count: 2 }], kerf: 3 }).sticks,
  ).toEqual([{ stock: 0, pieces: [0], times: 2, rest: 1002 }]);
});

test('offcuts that cost nothing are used before new stock', () => {
  const plan = planned({
    stock: [{ length: 700, count: 1, cost: 0 }, { length: 3000 }],
    pieces: [
      { length: 1200, count: 2 },
      { length: 650, count: 1 },
    ],
    kerf: 3,
  });
  expect(plan.sticks.map((stick) => [stick.stock, stick.pieces])).toEqual([
    [0, [1]],
    [1, [0, 0]],
  ]);
  expect([plan.cost, plan.optimal]).toEqual([3000, true]);
});

test('what cannot be cut is said', () => {
  expect(
    cuttingStock({
      stock: [{ length: 1000 }],
      pieces: [
        { length: 900, count: 1 },
        { length: 1200, count: 1 },
      ],
    }),
  ).toEqual({ kind: 'too long', piece: 1 });
  expect(cuttingStock({ stock: [{ length: 1000, count: 1 }], pieces: [{ length: 900, count: 2 }] })).toEqual({
    kind: 'not enough stock',
    missing: [{ piece: 0, count: 1 }],
  });
  expect(planned({ stock: [{ length: 1000 }], pieces: [] })).toMatchObject({
    sticks: [],
    cost: 0,
    waste: 0,
    wasteRatio: 0,
    optimal: true,
  });
  expect(() => cuttingStock({ stock: [{ length: NaN }], pieces: [] })).toThrow(RangeError);
});

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

function faults(
  { stock, pieces, kerf = 0 }: CuttingProblem,
  { sticks }: ReturnType<typeof planned>,
): string[] {
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
