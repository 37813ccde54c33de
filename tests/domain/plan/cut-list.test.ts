import { describe, expect, test } from 'vitest';
import type { Job } from '../../../src/domain/model/job.js';
import { groundOf } from '../../../src/domain/order/ground.js';
import { cutLists, type CutList } from '../../../src/domain/plan/cut-list.js';
import { boltsOf, materialsOf } from '../../../src/domain/plan/materials.js';
import { formatDay } from '../../../src/domain/units/calendar.js';
import {
  conveyor,
  estate,
  gap,
  liner,
  mm,
  on,
  origin,
  plant,
  reline,
  screw,
  stated,
} from '../../kit/estate.js';
import { brace, crew, everywhere, holdDown, job, line } from '../order/stories.js';

const spec = liner({
  panelLengths: [mm(1200)],
  panelTolerance: mm(1),
  stockLengths: [mm(3000)],
  bolt: { size: 'M10', rows: { count: 4, origin: origin() }, pitch: mm(300), origin: origin() },
});
/** Runs of 2800 mm and 5600 mm: two panels and 400 left, four panels and 800 left. */
const machine = conveyor({
  length: mm(8500),
  incline: stated('angle', 0),
  liner: spec,
  access: [everywhere],
  points: [],
  breaks: [
    gap('Tail', 'end plate', 0, 0, 10),
    gap('Gate', 'slide gate', 2800, 2900, 10),
    gap('Head', 'end plate', 8500, 8500, 10),
  ],
});
const offcut = (length: number, count = 1): Job['stock'][number] => ({
  length: mm(length),
  count: { count, origin: origin() },
  offcut: true,
  origin: origin(),
});
const stock = (length: number, count?: number): Job['stock'][number] => ({
  length: mm(length),
  offcut: false,
  origin: origin(),
  ...(count === undefined ? {} : { count: { count, origin: origin() } }),
});
const lists = (of: Job, records = {}): readonly CutList[] => {
  const world = estate({ conveyors: [of.conveyor], ...records });
  return cutLists(of, world, groundOf(of, [], world));
};
function only(of: Job, records = {}): CutList {
  const [list, ...more] = lists(of, records);
  if (!list || more.length > 0) throw new Error('one list expected');
  return list;
}

test('every panel is cut once, closing pieces from what is left beside whole panels', () => {
  const list = only(job(machine, ['all']));
  expect(list.pieces.map((piece) => [piece.run, piece.length, piece.closing])).toEqual([
    [1, 400, true],
    [1, 1200, false],
    [1, 1200, false],
    [2, 800, true],
    [2, 1200, false],
    [2, 1200, false],
    [2, 1200, false],
    [2, 1200, false],
  ]);
  // 8400 mm of panels; two panels, 3 mm of saw and 597 mm left on a sheet: the 400 fits there, the 800 needs its own.
  expect([list.toBuy, list.optimal, list.newStock]).toEqual([[{ length: 3000, count: 4 }], true, 12_000]);
  expect(list.pieces.every((piece) => piece.stick !== undefined)).toBe(true);
  for (const stick of list.sticks)
    expect(
      stick.cuts.reduce((sum, i) => sum + (list.pieces[i]?.length ?? 0), 0) +
        3 * (stick.cuts.length - 1) +
        stick.rest,
    ).toBeCloseTo(stick.length, 6);
});

test('an offcut of an earlier job serves the closing piece it is long enough for', () => {
  const list = only(job(machine, ['all'], { stock: [offcut(850)] }));
  const from = list.sticks.find((stick) => stick.offcut);
  expect(from?.name).toBe('O1');
  expect(from?.cuts.map((i) => list.pieces[i]?.length)).toEqual([800]);
  expect(list.toBuy).toEqual([{ length: 3000, count: 3 }]);
});

test('stock in hand that does not suffice: what is missing is counted, and the list goes on', () => {
  const list = only(job(machine, ['all'], { stock: [stock(3000, 2)] }));
  expect(list.missing.length).toBeGreaterThan(0);
  expect(list.toBuy).toEqual([{ length: 3000, count: 4 }]);
});

test('a panel longer than every sheet is named', () => {
  const list = only(job(machine, ['all'], { stock: [stock(1000)] }));
  expect(list.tooLong.map((piece) => piece.length)).toEqual([1200, 1200, 1200, 1200, 1200, 1200]);
});

test('sheets a saw cut too short are told by what would do without the saw', () => {
  const halves = liner({ panelLengths: [mm(1500)], panelTolerance: mm(1), stockLengths: [mm(3000)] });
  const list = only(job({ ...line([6], [10, 0]), liner: halves }, ['all']));
  expect([list.newStock, list.newStockWithoutKerf]).toEqual([12_000, 6000]);
});

test('without stock lengths the liner is bought as panels', () => {
  const list = only(
    job({ ...machine, liner: liner({ panelLengths: [mm(1200)], panelTolerance: mm(1) }) }, ['all']),
  );
  // Six whole ones, and one each for 400 and 800: with the saw's 3 mm the two do not come from one of 1200.
  expect(list.toBuy).toEqual([{ length: 1200, count: 8 }]);
  expect(list.sticks.length).toBe(list.toBuy[0]?.count);
});

test('a gap between panels is taken from them: half at either side of a joint, none at the ends of a run', () => {
  const gapped = {
    ...machine,
    liner: { ...spec, joint: { policy: 'gap' as const, gap: mm(4), origin: origin() } },
  };
  // Run 1 is 2800 mm: two whole panels as bought, two gaps of 4 mm, and 392 mm are left.
  expect(only(job(gapped, ['run 1'])).pieces.map((piece) => piece.length)).toEqual([392, 1200, 1200]);
  // What is cut, and the gaps, fill the run.
  const list = only(job(gapped, ['all']));
  for (const [run, length, joints] of [
    [1, 2800, 2],
    [2, 5600, 4],
  ])
    expect(
      list.pieces.filter((piece) => piece.run === run).reduce((sum, piece) => sum + piece.length, 0),
    ).toBe((length ?? 0) - 4 * (joints ?? 0));
  // A run of one panel has no joint.
  expect(
    only(job({ ...line([1], [10, 0]), liner: gapped.liner }, ['all'])).pieces.map((each) => each.length),
  ).toEqual([1000]);
});

test('stock of two lengths: each is counted by itself, the longest first', () => {
  // 2 × 1200 and the saw's 3 mm on a sheet of 2410; 400 and 800 on one of 1210.
  const list = only(job(machine, ['all'], { stock: [stock(1210), stock(2410)] }));
  expect(list.toBuy).toEqual([
    { length: 2410, count: 3 },
    { length: 1210, count: 1 },
  ]);
  expect(list.newStock).toBe(3 * 2410 + 1210);
  expect(list.toBuy.reduce((sum, { length, count }) => sum + length * count, 0)).toBe(list.newStock);
  for (const { length, count } of list.toBuy)
    expect(list.sticks.filter((each) => each.length === length)).toHaveLength(count);
  expect([list.optimal, list.lowerBound]).toEqual([true, list.newStock]);
});

test('sheets that are cut alike: every piece is on one sheet, and every sheet says which', () => {
  const list = only(job(line([6], [10, 0]), ['all'], { stock: [stock(2003)] }));
  expect(list.sticks.map((each) => [each.name, each.cuts.length, each.rest])).toEqual([
    ['S1', 2, 0],
    ['S2', 2, 0],
    ['S3', 2, 0],
  ]);
  expect(list.sticks.flatMap((each) => each.cuts).sort((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5]);
  list.sticks.forEach((each, i) => {
    for (const cut of each.cuts) expect(list.pieces[cut]?.stick).toBe(i);
  });
});

test('offcuts and new sheets are numbered each by themselves', () => {
  const list = only(job(machine, ['all'], { stock: [offcut(850, 2), stock(2403)] }));
  expect(list.sticks.map((each) => each.name).sort()).toEqual(['O1', 'O2', 'S1', 'S2', 'S3']);
  expect(list.sticks.filter((each) => each.offcut).map((each) => each.length)).toEqual([850, 850]);
  expect(list.toBuy).toEqual([{ length: 2403, count: 3 }]);
});

test('what is left over is kept from the least closing piece on, and is scrap below it', () => {
  const rests = (least: number): readonly (readonly [number, boolean])[] =>
    only(job(machine, ['run 1'], { stock: [stock(3000)], minimumClosingPiece: mm(least) })).sticks.map(
      (each) => [each.rest, each.keep],
    );
  // 3000 − 2 × 1200 − 400 − 2 × 3 of saw = 194.
  expect(rests(194)).toEqual([[194, true]]);
  expect(rests(194.5)).toEqual([[194, false]]);
});

test('stock in hand that does not suffice: bought in the lengths in hand and on offer, and both are counted', () => {
  const list = only(job(machine, ['all'], { stock: [stock(3000, 1)] }));
  expect(list.missing).not.toEqual([]);
  expect(list.pieces.every((piece) => piece.stick !== undefined)).toBe(true);
  expect(list.toBuy).toEqual([{ length: 3000, count: 4 }]);
});

test('offcuts in the records that the job does not list are offered', () => {
  const before = reline(machine, '2024-05-06', 2100, {
    offcuts: [{ length: mm(850), count: 2, origin: origin() }],
  });
  expect(only(job(machine, ['all']), { relines: [before] }).recordedOffcuts).toEqual([
    { length: 850, count: 2, date: '2024-05-06' },
  ]);
});

describe('materials', () => {
  const works = plant({
    leadTimes: [{ item: 'liner', time: stated('duration', 10 * 7 * 24), origin: origin() }],
  });
  const of = job(
    { ...machine, plant: works, holdDowns: [holdDown(1000), holdDown(4000)], braces: [brace(2000)] },
    ['run 1'],
    { crews: [crew('Alpha')], window: { from: on('2027-04-12'), to: on('2027-04-16'), origin: origin() } },
  );
  const world = estate({ conveyors: [of.conveyor] });
  const ground = groundOf(of, [], world);
  const rows = materialsOf(of, ground, cutLists(of, world, ground));

  test('bolts: one near either end of a row, none further apart than the pitch', () => {
    expect(boltsOf(1200, 300, 4)).toBe(16);
    expect(boltsOf(400, 300, 4)).toBe(8);
    expect(boltsOf(100, 300, 1)).toBe(2);
  });
  test('counts of what lies in the stretch, with spares, ordered in time', () => {
    const sheet = rows.find((row) => row.for === 'liner');
    expect([sheet?.needed, sheet?.spares]).toEqual([1, 1]);
    // Ten weeks before 2027-04-12.
    expect(sheet?.orderBy !== undefined && formatDay(sheet.orderBy)).toBe('2027-02-01');
    const bolts = rows.find((row) => row.what.includes('M10'));
    expect([bolts?.needed, bolts?.spares]).toEqual([40, 4]);
    expect(bolts?.orderBy).toBeUndefined();
    // They come off and go back as they are.
    expect(rows.filter(({ what }) => /hold-down|brace/.test(what))).toEqual([]);
  });
  test('a new screw by the metre', () => {
    const spiral = screw({
      drivePlate: { bolts: { count: 8, origin: origin() }, size: 'M20', origin: origin() },
    });
    const change = job(machine, [], { screwChange: { screw: spiral, origin: origin() } });
    const found = materialsOf(change, groundOf(change, [], world), []);
    expect(
      found.filter((row) => row.for !== 'consumable').map((row) => [row.what, row.needed, row.spares]),
    ).toEqual([
      ['screw Spiral400', 8.5, 0],
      ['M20 drive-plate bolt with nut and washer', 8, 1],
    ]);
  });
});

test('panels in inches, no whole thousandths of a millimetre, are cut from panels of just that length', () => {
  const inches = { ...spec, panelLengths: [mm(47.244 * 25.4)], stockLengths: [] };
  const of = job({ ...machine, liner: inches }, [], {
    relines: [{ stretch: { kind: 'all', origin: origin() }, liner: inches, origin: origin() }],
  });
  const world = estate({ conveyors: [of.conveyor] });
  const [list] = cutLists(of, world, groundOf(of, [], world));
  expect(list?.tooLong).toEqual([]);
  expect(list?.toBuy).toEqual([{ length: 47.244 * 25.4, count: 8 }]);
});
