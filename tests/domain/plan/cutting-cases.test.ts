// Cutting stock by cases worked by hand, and small problems against trying everything.

import { describe, expect, it, test } from 'vitest';
import { cuttingStock, type CuttingProblem } from '../../../src/domain/plan/cutting-stock.js';
import { faults, planned } from './cut-faults.js';

/** Pieces as `length × count`. */
const pieces = (...list: readonly (readonly [number, number])[]): CuttingProblem['pieces'] =>
  list.map(([length, count]) => ({ length, count }));

describe('by hand', () => {
  it('cuts that are alike are told once, with how often; what is left of each stick', () => {
    // 2 × 400 and 2 mm of saw from 1000: 198 left; three times.
    expect(planned({ stock: [{ length: 1000 }], pieces: pieces([400, 6]), kerf: 2 })).toMatchObject({
      sticks: [{ stock: 0, pieces: [0, 0], times: 3, rest: 198 }],
      cost: 3000,
      lowerBound: 3000,
      optimal: true,
      used: 3000,
      got: 2400,
      waste: 600,
      wasteRatio: 0.2,
    });
  });
  it('pieces of one length given in several rows keep their rows', () => {
    const { sticks } = planned({ stock: [{ length: 1000 }], pieces: pieces([300, 1], [500, 1], [300, 2]) });
    expect(
      sticks
        .flatMap((stick) => Array.from({ length: stick.times }, () => stick.pieces))
        .flat()
        .sort(),
    ).toEqual([0, 1, 2, 2]);
    for (const stick of sticks) {
      const lengths = stick.pieces.map((i) => [300, 500, 300][i] ?? 0);
      expect(lengths).toEqual([...lengths].sort((a, b) => b - a));
    }
  });
  it('rows of none are no pieces', () => {
    expect(
      planned({ stock: [{ length: 1000 }], pieces: pieces([2000, 0], [500, -1], [400, 1]) }).sticks,
    ).toEqual([{ stock: 0, pieces: [2], times: 1, rest: 600 }]);
  });
  it('the cheaper of two kinds by what they cost, not by their length', () => {
    const cheap = {
      stock: [
        { length: 1000, cost: 10 },
        { length: 500, cost: 4 },
      ],
      pieces: pieces([450, 4]),
    };
    expect(planned(cheap)).toMatchObject({ cost: 16, used: 2000 });
    const dear = {
      ...cheap,
      stock: [
        { length: 1000, cost: 10 },
        { length: 500, cost: 6 },
      ],
    };
    expect(planned(dear)).toMatchObject({ cost: 20, used: 2000 });
  });
  it('limited stock first where it is free, no more than there is', () => {
    const plan = planned({
      stock: [{ length: 1000 }, { length: 450, count: 2, cost: 0 }],
      pieces: pieces([450, 4]),
    });
    expect(plan.sticks).toEqual([
      { stock: 0, pieces: [0, 0], times: 1, rest: 100 },
      { stock: 1, pieces: [0], times: 2, rest: 0 },
    ]);
    expect([plan.cost, plan.lowerBound, plan.wasteRatio]).toEqual([
      1000,
      1000,
      expect.closeTo(100 / 1900, 9),
    ]);
  });
  it('a piece as long as the stick, with or without a saw', () => {
    for (const kerf of [0, 5])
      expect(planned({ stock: [{ length: 700 }], pieces: pieces([700, 2]), kerf }).sticks).toEqual([
        { stock: 0, pieces: [0], times: 2, rest: 0 },
      ]);
    expect(cuttingStock({ stock: [{ length: 700 }], pieces: pieces([701, 1]), kerf: 5 })).toEqual({
      kind: 'too long',
      piece: 0,
    });
  });
  it('too long for all of several kinds, by the row in which it stands', () => {
    expect(
      cuttingStock({
        stock: [{ length: 700 }, { length: 900 }],
        pieces: pieces([900, 1], [901, 1], [950, 2]),
      }),
    ).toEqual({ kind: 'too long', piece: 2 });
  });
  it('what is missing: by length, as many as the stock does not yield', () => {
    // Two of 600 and two of 300 want two sticks of 1000; there is one: it takes 600 and 300.
    expect(cuttingStock({ stock: [{ length: 1000, count: 1 }], pieces: pieces([300, 2], [600, 2]) })).toEqual(
      {
        kind: 'not enough stock',
        missing: [
          { piece: 1, count: 1 },
          { piece: 0, count: 1 },
        ],
      },
    );
    // The shorter stick is used for what fits it.
    expect(
      cuttingStock({
        stock: [
          { length: 1000, count: 1 },
          { length: 300, count: 1 },
        ],
        pieces: pieces([900, 2], [300, 1]),
      }),
    ).toEqual({
      kind: 'not enough stock',
      missing: [{ piece: 0, count: 1 }],
    });
    expect(cuttingStock({ stock: [], pieces: pieces([300, 1]) })).toEqual({ kind: 'too long', piece: 0 });
  });
  test.each([0, -1, NaN])('a length of %d cannot be cut', (length) => {
    expect(() => cuttingStock({ stock: [{ length }], pieces: [] })).toThrow(
      `A length of ${length} cannot be cut.`,
    );
    expect(() => cuttingStock({ stock: [{ length: 100 }], pieces: pieces([length, 1]) })).toThrow(RangeError);
  });
  it('where the work runs out the list is whole all the same, and the gap is stated', () => {
    const problem = {
      stock: [{ length: 5600 }],
      pieces: pieces([1380, 22], [1520, 25], [1560, 12], [1710, 14], [1820, 18], [1930, 20], [2150, 18]),
    };
    const plan = cuttingStock(problem, 10);
    if (plan.kind !== 'plan') throw new Error(plan.kind);
    expect(faults(problem, plan)).toEqual([]);
    expect(plan.lowerBound).toBeLessThanOrEqual(planned(problem).cost);
    expect(plan.cost).toBeGreaterThanOrEqual(planned(problem).cost);
  });
});

/** The least cost by putting every piece on every stick that is open, or on a new one. */
function least({ stock, pieces: rows, kerf = 0 }: CuttingProblem): number {
  const all = rows
    .flatMap(({ length, count }) => Array.from({ length: count }, () => length))
    .sort((a, b) => b - a);
  let best = Infinity;
  const open: { kind: number; room: number }[] = [];
  const used = stock.map(() => 0);
  const place = (i: number, cost: number): void => {
    if (cost >= best) return;
    const length = all[i];
    if (length === undefined) {
      best = cost;
      return;
    }
    const tried = new Set<string>();
    for (const stick of open) {
      const key = `${stick.kind} ${stick.room}`;
      if (stick.room < length + kerf || tried.has(key)) continue;
      tried.add(key);
      stick.room -= length + kerf;
      place(i + 1, cost);
      stick.room += length + kerf;
    }
    stock.forEach(({ length: whole, cost: price = whole, count = Infinity }, kind) => {
      if (whole < length || (used[kind] ?? 0) >= count) return;
      used[kind] = (used[kind] ?? 0) + 1;
      open.push({ kind, room: whole - length });
      place(i + 1, cost + price);
      open.pop();
      used[kind] = (used[kind] ?? 0) - 1;
    });
  };
  place(0, 0);
  return best;
}

/** Numbers that look drawn and are the same every time. */
function* numbers(seed: number): Generator<number, never> {
  for (let x = seed; ;) {
    x = (x * 48_271) % 2_147_483_647;
    yield x;
  }
}

describe('as cheap as trying everything', () => {
  const cases = Array.from({ length: 60 }, (_, k): CuttingProblem => {
    const draw = numbers(k + 1);
    const between = (from: number, to: number): number => from + (draw.next().value % (to - from + 1));
    const kinds = between(1, 3);
    const stock = Array.from({ length: kinds }, (__, i) => ({
      length: between(18, 40),
      ...(i > 0 && between(0, 1) === 1 ? { count: between(1, 2) } : {}),
      ...(between(0, 2) === 0 ? { cost: between(0, 30) } : {}),
    }));
    const rows = Array.from({ length: between(1, 4) }, () => ({
      length: between(4, 18),
      count: between(1, 3),
    }));
    return { stock, pieces: rows, kerf: between(0, 2) };
  });
  test.each(cases.map((problem, k) => [k + 1, problem] as const))('problem %d', (_, problem) => {
    const plan = planned(problem);
    expect(faults(problem, plan)).toEqual([]);
    expect(plan.cost).toBe(least(problem));
    expect([plan.optimal, plan.lowerBound]).toEqual([true, plan.cost]);
    // What was used is what was got and what was wasted, and each stick's rest is its own.
    const length = (i: number): number => problem.pieces[i]?.length ?? NaN;
    const kerf = problem.kerf ?? 0;
    for (const stick of plan.sticks)
      expect(stick.rest).toBeCloseTo(
        (problem.stock[stick.stock]?.length ?? NaN) -
          stick.pieces.reduce((sum, i) => sum + length(i), 0) -
          kerf * (stick.pieces.length - 1),
        9,
      );
    expect(plan.used).toBe(
      plan.sticks.reduce((sum, { stock, times }) => sum + times * (problem.stock[stock]?.length ?? NaN), 0),
    );
    expect(plan.waste).toBe(plan.used - plan.got);
  });
});
