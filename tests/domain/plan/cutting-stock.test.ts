import { expect, test } from 'vitest';
import { cuttingStock } from '../../../src/domain/plan/cutting-stock.js';
import { faults, planned } from './cut-faults.js';

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
