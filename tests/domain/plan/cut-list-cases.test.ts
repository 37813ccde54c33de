// Cut lists at their borders: which end closes, what a job has in hand, what is short, and what other jobs left over.

import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import type { Job } from '../../../src/domain/model/job.js';
import type { Reline } from '../../../src/domain/model/records.js';
import type { LinerSpecification } from '../../../src/domain/model/specifications.js';
import { groundOf } from '../../../src/domain/order/ground.js';
import {
  closingBeyondStock,
  cutLists,
  sheetToOrder,
  type CutList,
} from '../../../src/domain/plan/cut-list.js';
import { materialsOf } from '../../../src/domain/plan/materials.js';
import { estate, gap, liner, mm, origin, reline } from '../../kit/estate.js';
import { job, line } from '../order/stories.js';

const spec = (facts: Partial<LinerSpecification> = {}): LinerSpecification =>
  liner({ panelLengths: [mm(1000)], panelTolerance: mm(1), stockLengths: [mm(3000)], ...facts });
const made = (facts: Partial<Conveyor> = {}): Conveyor =>
  line([2, 3], [0, 60, 60], { liner: spec(), ...facts });
const stock = (length: number, count?: number): Job['stock'][number] => ({
  length: mm(length),
  offcut: false,
  origin: origin(),
  ...(count === undefined ? {} : { count: { count, origin: origin() } }),
});
const offcut = (length: number, count?: number): Job['stock'][number] => ({
  ...stock(length, count),
  offcut: true,
});
function lists(of: Job, relines: readonly Reline[] = []): readonly CutList[] {
  const world = estate({ conveyors: [of.conveyor], relines });
  return cutLists(of, world, groundOf(of, [], world));
}
function only(of: Job, relines: readonly Reline[] = []): CutList {
  const [list, ...more] = lists(of, relines);
  if (!list || more.length > 0) throw new Error('one list expected');
  return list;
}

it('the last panel that goes in closes: at the head where work starts at the tail, at the tail where it starts at the head', () => {
  // 2.4 m and 2.4 m: only the end with an allowance takes up the error, so there is the piece that is cut to the hole.
  const ends = (tail: number, head: number): Conveyor =>
    line([2], [0, 0], {
      liner: spec(),
      length: mm(2400),
      breaks: [gap('Tail', 'end plate', 0, 0, tail), gap('Head', 'end plate', 2400, 2400, head)],
    });
  const rows = (of: Conveyor): unknown =>
    only(job(of, ['all'])).pieces.map(({ run, panel, length, closing }) => [run, panel, length, closing]);
  expect(rows(ends(0, 60))).toEqual([
    [1, 1, 1000, false],
    [1, 2, 1000, false],
    [1, 3, 400, true],
  ]);
  expect(rows(ends(60, 0))).toEqual([
    [1, 1, 400, true],
    [1, 2, 1000, false],
    [1, 3, 1000, false],
  ]);
});

it('what is cut, counted: sheets, new stock, and waste over all that is used', () => {
  // Run 2: three panels of 1 m from 2 sheets of 3 m: two with 3 mm of saw, and one. 3000 of 6000 are used.
  const list = only(job(made(), ['run 2']));
  expect(list).toMatchObject({
    toBuy: [{ length: 3000, count: 2 }],
    missing: [],
    tooLong: [],
    optimal: true,
    newStock: 6000,
    // Without the saw all three come from one.
    newStockWithoutKerf: 3000,
    lowerBound: 6000,
    wasteRatio: 0.5,
  });
  expect(list.sticks.map(({ name, cuts, rest, keep }) => [name, cuts.length, rest, keep])).toEqual([
    ['S1', 2, 997, true],
    ['S2', 1, 2000, true],
  ]);
});

it('an offcut in hand is used first, and is no new stock, with the saw or without', () => {
  const list = only(job(made(), ['run 2'], { stock: [offcut(1000)] }));
  expect(list.sticks.map(({ name, offcut: old, length }) => [name, old, length])).toEqual(
    [
      ['S1', false, 3000],
      ['O1', true, 1000],
    ].sort(
      (a, b) =>
        list.sticks.findIndex(({ name }) => name === a[0]) -
        list.sticks.findIndex(({ name }) => name === b[0]),
    ),
  );
  expect([list.newStock, list.newStockWithoutKerf]).toEqual([3000, 3000]);
  // 3000 of 4000.
  expect(list.wasteRatio).toBe(0.25);
  // Every panel says which stick it is cut from, and the stick says the panel.
  list.pieces.forEach(({ stick }, i) => expect(list.sticks[stick ?? -1]?.cuts).toContain(i));
  expect(list.sticks.flatMap(({ cuts }) => cuts).sort()).toEqual([0, 1, 2]);
});

describe('stock that is too little or too short', () => {
  it('what is missing is told in length and number, and bought in the lengths in hand, never in those of offcuts', () => {
    // One sheet of 2003 yields two panels, the offcut one: of five two are missing.
    const list = only(job(made(), ['all'], { stock: [stock(2003, 1), offcut(1000)] }));
    expect(list.missing).toEqual([{ length: 1000, count: 2 }]);
    expect(list.toBuy).toEqual([{ length: 2003, count: 2 }]);
    expect(list.pieces.every(({ stick }) => stick !== undefined)).toBe(true);
  });
  it('bought too in the lengths the liner is sold in', () => {
    // Four panels are missing; a sheet of 4012 yields all four, two of 2003 would be cheaper by 6 mm.
    const list = only(
      job(made({ liner: spec({ stockLengths: [mm(1000)] }) }), ['all'], { stock: [stock(1500, 1)] }),
    );
    expect(list.missing).toEqual([{ length: 1000, count: 4 }]);
    expect(list.toBuy).toEqual([{ length: 1000, count: 5 }]);
  });
  it('a panel longer than every stick is named, and all others are cut', () => {
    const of = line([2], [0, 0], {
      liner: spec(),
      length: mm(2400),
      breaks: [gap('Tail', 'end plate', 0, 0, 60), gap('Head', 'end plate', 2400, 2400, 0)],
    });
    const list = only(job(of, ['all'], { stock: [stock(999)] }));
    expect(list.tooLong.map(({ panel, length, stick }) => [panel, length, stick])).toEqual([
      [2, 1000, undefined],
      [3, 1000, undefined],
    ]);
    expect(list.pieces.map(({ stick }) => stick)).toEqual([0, undefined, undefined]);
    expect(list.toBuy).toEqual([{ length: 999, count: 1 }]);
    // Just long enough is.
    expect(only(job(of, ['all'], { stock: [stock(1000)] })).tooLong).toEqual([]);
  });
  it('where only an offcut is long enough and there is but one, nothing is claimed', () => {
    const list = only(
      job(made({ liner: spec({ stockLengths: [mm(900)] }) }), ['run 1'], { stock: [offcut(1000, 1)] }),
    );
    expect(list).toMatchObject({
      missing: [{ length: 1000, count: 1 }],
      sticks: [],
      toBuy: [],
      optimal: false,
      newStock: 0,
      newStockWithoutKerf: 0,
      lowerBound: 0,
      wasteRatio: 0,
    });
    expect(list.pieces.map(({ stick }) => stick)).toEqual([undefined, undefined]);
  });
});

it('an offcut without a number is one', () => {
  const list = only(job(made(), ['run 1'], { stock: [offcut(1000)] }));
  expect(list.sticks.filter((each) => each.offcut)).toHaveLength(1);
});

describe('two liners', () => {
  const of = (...stock: Job['stock']): Job => {
    const base = job(made(), ['run 1', 'run 2'], { stock });
    const thin = spec({ name: 'Thin', stockLengths: [mm(1010)] });
    return { ...base, relines: base.relines.map((each, i) => (i === 0 ? { ...each, liner: thin } : each)) };
  };
  const told = (...stock: Job['stock']): unknown =>
    lists(of(...stock)).map((list) => [
      list.liner.name,
      list.toBuy.map(({ length, count }) => `${count} × ${length}`).join(),
      list.sticks.filter((each) => each.offcut).map(({ length }) => length),
    ]);
  it('new stock in hand is of nobody knows which, so each is bought in its own lengths', () => {
    expect(told(stock(2003))).toEqual([
      ['Thin', '2 × 1010', []],
      ['TwoLayer12', '2 × 3000', []],
    ]);
  });
  it('an offcut that one has used is gone for the other', () => {
    expect(told(offcut(1000, 1))).toEqual([
      ['Thin', '1 × 1010', [1000]],
      ['TwoLayer12', '2 × 3000', []],
    ]);
    // Two panels from three offcuts of one length: one is left. Listed in one row or in two is the same.
    for (const rows of [[offcut(1000, 3)], [offcut(1000, 1), offcut(1000, 2)]])
      expect(told(...rows)).toEqual([
        ['Thin', '', [1000, 1000]],
        ['TwoLayer12', '1 × 3000', [1000]],
      ]);
    expect(told(offcut(1000, 2), offcut(1001, 1))).toEqual([
      ['Thin', '', [1000, 1000]],
      ['TwoLayer12', '1 × 3000', [1001]],
    ]);
  });
});

test('stock that is bought in several lengths at once, each once', () => {
  const list = only(job(made({ liner: spec({ stockLengths: [mm(1000), mm(1000), mm(2003)] }) }), ['run 2']));
  // Three of 1000; a 2003 would waste the 3 mm of the saw.
  expect(list.toBuy).toEqual([{ length: 1000, count: 3 }]);
});

describe('offcuts in the records', () => {
  const offcuts = (...lengths: readonly number[]) => ({
    offcuts: lengths.map((length) => ({ length: mm(length), count: 2, origin: origin() })),
  });
  it('of this liner, that the job does not list', () => {
    const of = job(made(), ['all'], { stock: [offcut(850), stock(700)] });
    const before = [
      reline(of.conveyor, '2024-05-06', 2100, offcuts(850, 700, 600)),
      { ...reline(of.conveyor, '2023-05-06', 1100, offcuts(500)), liner: spec({ name: 'Other' }) },
    ];
    // 850 is listed; the 700 on the list is new stock, not an offcut.
    expect(only(of, before).recordedOffcuts).toEqual([
      { length: 700, count: 2, date: '2024-05-06' },
      { length: 600, count: 2, date: '2024-05-06' },
    ]);
  });
});

it('a gap at a joint is taken in halves to a thousandth of a millimetre', () => {
  const of = made({ liner: spec({ joint: { policy: 'gap', gap: mm(0.333), origin: origin() } }) });
  const lengths = only(job(of, ['run 2'])).pieces.map(({ length }) => length);
  // What is left of each is a whole number of thousandths, and gaps and panels fill the run of 3 m.
  for (const length of lengths) expect(length).toBe(Number(length.toFixed(3)));
  const gaps = lengths.length - 1;
  expect(Math.abs(lengths.reduce((sum, length) => sum + length, 0) + gaps * 0.333 - 3000)).toBeLessThan(
    0.001 * lengths.length,
  );
});

describe('a closing panel may have to be longer than it is drawn', () => {
  // Eight panels of 1.5 m ± 2 mm and a tape of ± 2 mm: 18 mm at worst, of which the tail takes some.
  const of = (takes: number, facts: Partial<Job> = {}, lengths: Partial<LinerSpecification> = {}): Job =>
    job(
      line([12], [takes, 0], {
        liner: spec({
          panelLengths: [mm(1500)],
          panelTolerance: mm(2),
          stockLengths: [],
          ...lengths,
        }),
      }),
      ['run 1'],
      facts,
    );
  const closing = (list: CutList): unknown =>
    list.pieces
      .filter((piece) => piece.closing)
      .map(({ panel, length, longest, stick }) => [panel, length, longest, stick]);

  it('by what its end does not take, and no sheet of its own length covers that', () => {
    const list = only(of(5));
    expect(closing(list)).toEqual([[1, 1500, 1513, undefined]]);
    expect(list.tooLong.map(({ run, panel, longest }) => [run, panel, longest])).toEqual([[1, 1, 1513]]);
    expect(list.toBuy).toEqual([{ length: 1500, count: 7 }]);
    expect(
      list.pieces.filter((piece) => !piece.closing).every(({ length, longest }) => longest === length),
    ).toBe(true);
  });
  it.each([
    [17, 1501],
    [18, 1500],
    [40, 1500],
  ])('%s mm at the tail: %s mm', (takes, longest) => {
    const list = only(of(takes));
    expect(list.pieces.find((piece) => piece.closing)?.longest).toBe(longest);
    expect(list.tooLong).toHaveLength(longest > 1500 ? 1 : 0);
  });
  it('a longer sheet is taken for it, and only as many as cover it', () => {
    // 3 m less a cut of 3 mm leaves 1.497 m beside a panel: one panel a sheet. 3.02 m takes 1.513 + 3 + 1.5 m.
    expect(only(of(5, {}, { stockLengths: [mm(1500), mm(1510)] })).tooLong).toHaveLength(1);
    const list = only(of(5, {}, { stockLengths: [mm(1500), mm(1513)] }));
    expect(list.toBuy).toEqual([
      { length: 1513, count: 1 },
      { length: 1500, count: 7 },
    ]);
    expect(only(of(5, {}, { stockLengths: [mm(3016)] })).toBuy).toEqual([{ length: 3016, count: 4 }]);
    expect(only(of(5, {}, { stockLengths: [mm(3015)] })).toBuy).toEqual([{ length: 3015, count: 5 }]);
  });
  it('also an offcut has to be as long', () => {
    expect(only(of(5, { stock: [offcut(1512)] })).tooLong).toHaveLength(1);
    const list = only(of(5, { stock: [offcut(1513)] }));
    expect(list.sticks.filter((stick) => stick.offcut).map(({ cuts }) => cuts)).toEqual([[0]]);
  });
  it('of a part that ends inside the run nothing takes any of it', () => {
    const list = only({ ...of(5), relines: job(of(5).conveyor, ['panels 5 to 6 of run 1']).relines });
    // Two panels and the tape: 6 mm.
    expect(closing(list)).toEqual([[5, 1500, 1506, undefined]]);
  });
  it('is told as what to order, to the next whole centimetre', () => {
    const it = of(5);
    const world = estate({ conveyors: [it.conveyor] });
    const ground = groundOf(it, [], world);
    expect(closingBeyondStock(it, ground).map(({ piece, stock: most }) => [piece.panel, most])).toEqual([
      [1, 1500],
    ]);
    expect([1510, 1510.1, 1513, 1520].map((longest) => sheetToOrder({ longest }))).toEqual([
      1510, 1520, 1520, 1520,
    ]);
    const rows = materialsOf(it, ground, cutLists(it, world, ground)).filter(
      ({ for: kind }) => kind === 'liner',
    );
    expect(rows.map(({ what, needed }) => [what, needed])).toEqual([
      ['TwoLayer12 sheet, 1.50 m', 7],
      ['TwoLayer12 sheet of at least 1.52 m', 1],
    ]);
  });
  it('whatever the panels turn out to be, it covers the gap', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 7, maxLength: 7 }),
        fc.constantFrom(-1, 1),
        (short, tape) => {
          const { longest = 0 } = only(of(5)).pieces.find((piece) => piece.closing) ?? {};
          const fitted = short.reduce((sum, share) => sum + 1500 - 2 * share, 0);
          const gapLeft = 12_000 + 2 * tape - fitted - 5;
          expect(gapLeft).toBeLessThanOrEqual(longest + 1e-9);
        },
      ),
      { numRuns: 40, seed: 7 },
    );
  });
});
