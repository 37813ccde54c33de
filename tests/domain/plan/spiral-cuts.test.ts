// Where a spiral is cut, by hand and by trying every cut on the grid of 50 mm; and the pieces as an order has them.

import { describe, expect, it, test } from 'vitest';
import type { Conveyor } from '../../../src/domain/model/conveyor.js';
import type { Job } from '../../../src/domain/model/job.js';
import { supportLoad } from '../../../src/domain/plan/held-up.js';
import { cutSpiral, liftedInOne, writtenCuts } from '../../../src/domain/plan/spiral-cuts.js';
import { mm, origin, screw, stated } from '../../kit/estate.js';
import { everywhere, holdDown, job, line, withOrder } from '../order/stories.js';

const point = (name: string, at: number, limit: number) => ({
  name,
  at: mm(at),
  limit: stated('mass', limit),
  origin: origin(),
});

/** A conveyor of so many whole metres, without anything to keep clear of. */
function change(metres: number, facts: Partial<Conveyor> = {}, more: Partial<Job> = {}): Job {
  return job(line([metres], [0, 0], { access: [], ...facts }), [], {
    screwChange: { screw: screw(), origin: origin() },
    ...more,
  });
}
const cuts = (of: Job, massPerMetre: number): readonly number[] => {
  const pieces = cutSpiral(of, massPerMetre);
  // In order from the tail, each where the one before ends, over the whole length.
  expect(pieces[0]?.from).toBe(0);
  expect(pieces.at(-1)?.to).toBe(of.conveyor.length.value);
  pieces.slice(1).forEach((piece, k) => expect(piece.from).toBe(pieces[k]?.to));
  return pieces.slice(1).map(({ from }) => from);
};
const limited = (limit: number): Partial<Job> => ({ liftLimit: stated('mass', limit) });

describe('the fewest pieces within the limit, as even as they can be', () => {
  test.each<[string, number, number, number, readonly number[]]>([
    // 40 kg/m.
    ['12 m of 480 kg at 480 kg: none', 12, 40, 480, []],
    ['at 479 kg: two of 240', 12, 40, 479, [6000]],
    ['at 240 kg: two', 12, 40, 240, [6000]],
    ['at 239 kg: three of 160', 12, 40, 239, [4000, 8000]],
    ['5 m at 120 kg: two of 100', 5, 40, 120, [2500]],
    ['5 m at 80 kg: three, the odd 100 mm where the grid has them', 5, 40, 80, [1650, 3300]],
  ])('%s', (_, metres, mass, limit, expected) => {
    const found = cuts(change(metres, {}, limited(limit)), mass);
    expect(found).toHaveLength(expected.length);
    expected.forEach((at, k) => expect(Math.abs((found[k] ?? NaN) - at)).toBeLessThanOrEqual(50));
    const lengths = [...found, metres * 1000].map((at, k) => at - (k > 0 ? (found[k - 1] ?? 0) : 0));
    // As even as a grid of 50 mm allows.
    expect(Math.max(...lengths) - Math.min(...lengths)).toBeLessThanOrEqual(50);
  });

  test.each<[number, number]>([
    // No limit: at most 6 m a piece.
    [6, 0],
    [7, 1],
    [12, 1],
    [13, 2],
  ])('where no limit is stated %d m take %d cuts', (metres, count) => {
    expect(cuts(change(metres), 1000)).toHaveLength(count);
  });
});

describe('clear of what is in the way', () => {
  it('a hold-down by the clearance, which itself will do', () => {
    // 4 m, 160 kg at 80 kg: only the middle serves. 60 mm away from it is outside a clearance of 60 and inside one of 61.
    const near = (clearance: number): readonly number[] =>
      cuts(
        change(
          4,
          { holdDowns: [{ ...holdDown(2060), to: mm(2300) }] },
          { ...limited(80), jointClearance: mm(clearance) },
        ),
        40,
      );
    expect(near(59)).toEqual([2000]);
    expect(near(60)).not.toEqual([2000]);
    const behind = (clearance: number): readonly number[] =>
      cuts(
        change(
          4,
          { holdDowns: [{ ...holdDown(1700), to: mm(1940) }] },
          { ...limited(80), jointClearance: mm(clearance) },
        ),
        40,
      );
    expect(behind(59)).toEqual([2000]);
    expect(behind(60)).not.toEqual([2000]);
  });
  it('a hold-down that is clear on one side is in the way on the other', () => {
    const over = change(4, { holdDowns: [{ ...holdDown(1900), to: mm(2100) }] }, limited(80));
    expect(cuts(over, 40)).not.toContain(2000);
  });
  it('the end of an access zone, not the ends of the conveyor', () => {
    const zones = (...edges: readonly (readonly [number, number])[]): Conveyor['access'] =>
      edges.map(([from, to]) => ({ ...everywhere, from: mm(from), to: mm(to) }));
    const of = (access: Conveyor['access'], clearance = 100): readonly number[] =>
      cuts(change(4, { access }, { ...limited(80), jointClearance: mm(clearance) }), 40);
    expect(of(zones([0, 4000]))).toEqual([2000]);
    expect(of(zones([0, 2000], [2000, 4000]))).not.toContain(2000);
    expect(of(zones([0, 1900], [1900, 4000]))).toEqual([2000]);
    expect(of(zones([0, 1901], [1901, 4000]))).not.toContain(2000);
    expect(of(zones([2099, 4000]))).not.toContain(2000);
    // At 0 and at the end there is nothing to keep clear of: 4 m at 3.9 m of clearance.
    expect(of(zones([0, 4000]), 3900)).toEqual([2000]);
    // A zone that reaches beyond the conveyor ends outside of it.
    expect(of(zones([-100, 4100]), 3900)).toEqual([2000]);
  });
});

it('no piece at the head is shorter than half a step of the grid', () => {
  // Only at 4000 is room for a burner, and every piece is too heavy: 26 mm from the head it is cut, 25 mm from it it is not.
  const at = (length: number): readonly number[] =>
    cuts(
      change(
        4,
        { length: mm(length), holdDowns: [{ ...holdDown(0), to: mm(3990) }], breaks: [] },
        limited(40),
      ),
      40,
    );
  expect([at(4026), at(4025), at(4000)]).toEqual([[4000], [], []]);
});

it('the fewest pieces too, where one of them is too heavy whatever is done', () => {
  // The first 2 m cannot be cut: 80 kg at 40. The other two are cut once between them, at a metre.
  const of = change(4, { holdDowns: [{ ...holdDown(50), to: mm(1950) }] }, limited(40));
  expect(cuts(of, 40)).toEqual([2000, 3000]);
});

it('two pieces that each hang well enough go before one that is pulled aside', () => {
  // Whole it would hang 850 mm beside the nearer point; the halves hang 400 mm beside each its own.
  const points = [point('L1', 1650, 500), point('L2', 3350, 500)];
  expect(cuts(change(5, { liftingPoints: points }), 40)).toHaveLength(1);
});

it('overload goes before pull sideways, that before the number of pieces', () => {
  // One piece of 200 kg would hang right under the point at the middle, which bears 150 kg: two pieces, pulled sideways.
  const of = (limit: number): readonly number[] =>
    cuts(change(5, { liftingPoints: [point('L1', 2500, limit)] }), 40);
  expect(of(200)).toEqual([]);
  expect(of(150)).toHaveLength(1);
  // Two points, each over a half: one piece would hang a metre and a quarter beside the nearer.
  const two = change(5, { liftingPoints: [point('L1', 1250, 500), point('L2', 3750, 500)] });
  expect(cuts(two, 40)).toEqual([2500]);
  expect(cutSpiral(two, 40).map(({ liftingPoint, sidePull }) => [liftingPoint?.name, sidePull])).toEqual([
    ['L1', 0],
    ['L2', 0],
  ]);
});

it('where nothing is within the limit, the pieces exceed it least', () => {
  // Cuts are possible at 1000 only: 3 m of 120 kg hang too heavy, by 40 kg; uncut it would be 80.
  const all = { ...holdDown(1050), to: mm(4000) };
  const found = cuts(change(4, { holdDowns: [{ ...holdDown(0), to: mm(950) }, all] }, limited(80)), 40);
  expect(found).toEqual([1000]);
});

it('what a crane cannot reach is as bad as a pull along the whole conveyor', () => {
  const crane = {
    name: 'C1',
    origin: origin(),
    nameOrigin: origin(),
    chart: [{ load: stated('mass', 500), radius: mm(2000) }],
  };
  const place = {
    use: { name: 'C1', origin: origin() },
    crane,
    at: mm(1000),
    offset: mm(0),
    origin: origin(),
  };
  const [first, second, ...more] = cutSpiral(change(4, {}, { cranes: [place] }), 40);
  // One piece of 4 m has its middle a metre from the crane: it lifts all of it.
  expect([first?.to, first?.outOfReach, second, more]).toEqual([4000, false, undefined, []]);
  const long = cutSpiral(change(8, {}, { cranes: [place] }), 40);
  // In one piece its middle is 3 m away from the hook, and it is longer than 6 m: cut, the tail end is lifted.
  expect(long.map(({ outOfReach }) => outOfReach)).toEqual([false, true]);
});

describe('pieces as the order has them', () => {
  const of = (...lines: readonly string[]): Job => withOrder(change(12), lines);
  const pieces = (...lines: readonly string[]): unknown =>
    writtenCuts(of(...lines))?.map(({ from, to }) => [from, to]);
  it('in order from the tail, whatever the order of the steps', () => {
    expect(pieces('remove screw from 6000 mm to 12000 mm', 'remove screw from 0 mm to 6000 mm')).toEqual([
      [0, 6000],
      [6000, 12_000],
    ]);
  });
  test.each<[string, readonly string[]]>([
    ['without an order', []],
    ['one step for all of it', ['remove screw']],
    ['one piece and the rest without a chainage', ['remove screw from 0 mm to 6000 mm', 'remove screw all']],
    [
      'one step for all of it by chainage, and another',
      ['remove screw from 0 mm to 12000 mm', 'remove screw all'],
    ],
    ['two steps that do not say where', ['remove screw', 'remove screw']],
    ['a piece left out', ['remove screw from 0 mm to 5000 mm', 'remove screw from 6000 mm to 12000 mm']],
    ['one lifted twice', ['remove screw from 0 mm to 7000 mm', 'remove screw from 6000 mm to 12000 mm']],
    ['the tail left', ['remove screw from 1000 mm to 6000 mm', 'remove screw from 6000 mm to 12000 mm']],
    ['the head left', ['remove screw from 0 mm to 6000 mm', 'remove screw from 6000 mm to 11000 mm']],
    ['what goes in', ['insert screw from 0 mm to 6000 mm', 'insert screw from 6000 mm to 12000 mm']],
  ])('not: %s', (_, lines) => {
    expect(lines.length === 0 ? writtenCuts(change(12)) : pieces(...lines)).toBeUndefined();
  });
  test.each<[number, boolean]>([
    [1, true],
    [2, false],
    [-1, true],
    [-2, false],
  ])('the end of the last piece may be out by %d mm: %s', (out, told) => {
    const last = `remove screw from 6000 mm to ${12_000 + out} mm`;
    expect(pieces('remove screw from 0 mm to 6000 mm', last) !== undefined).toBe(told);
  });
  it('a piece that begins a millimetre behind the last leaves some of it', () => {
    const second = (from: number): unknown =>
      pieces('remove screw from 0 mm to 6000 mm', `remove screw from ${from} mm to 12000 mm`);
    expect(second(6001)).toBeUndefined();
    expect(second(6000)).toBeDefined();
  });
  it('hang from what is above their own middles', () => {
    const points = [point('L1', 3000, 100), point('L2', 9000, 200)];
    const of2 = withOrder(change(12, { liftingPoints: points }), [
      'remove screw from 0 mm to 6000 mm',
      'remove screw from 6000 mm to 12000 mm',
    ]);
    expect(
      writtenCuts(of2)?.map(({ liftingPoint, limit, sidePull }) => [liftingPoint?.name, limit, sidePull]),
    ).toEqual([
      ['L1', 100, 0],
      ['L2', 200, 0],
    ]);
  });
  it('are lifted in one only where there are several, each with its chainages', () => {
    const lifted = (...lines: readonly string[]): unknown =>
      liftedInOne(of(...lines), 'insert screw').map(({ from, to, step }) => [from, to, step.action]);
    expect(lifted('insert screw from 0 mm to 6000 mm')).toEqual([]);
    expect(lifted('insert screw from 0 mm to 6000 mm', 'remove screw from 0 mm to 6000 mm')).toEqual([]);
    expect(lifted('insert screw from 0 mm to 6000 mm', 'insert screw all')).toEqual([
      [0, 6000, 'insert screw'],
    ]);
  });
});

describe('what a support bears while panels pass under the spiral', () => {
  // 60 by 20 mm bar, 300 outside, pitch 300: 25.51 kg/m (lifts.test.ts). Every 2 m, the middle of three: 10/8 of a span.
  const spiral = screw({
    outsideDiameter: mm(300),
    pitch: mm(300),
    flight: { width: mm(60), thickness: mm(20), origin: origin() },
  });
  const heldUp = { gear: 'slings', spacing: mm(2000), origin: origin() } as unknown as NonNullable<
    Job['heldUp']
  >; // all that is read
  it('mass a metre, times the distance, times 1.25', () => {
    expect(supportLoad(job(line([4], [0, 0], { screw: spiral }), ['all'], { heldUp }))).toBeCloseTo(
      25.51 * 2 * 1.25,
      1,
    );
  });
  it('of the spiral that lies there, not of the first one', () => {
    const flight = { width: mm(60), thickness: mm(40), origin: origin() };
    const thicker = screw({ outsideDiameter: mm(300), pitch: mm(300), flight });
    const of = job(line([4], [0, 0], { screw: spiral }), ['all'], { heldUp, screwLying: thicker });
    expect(supportLoad(of)).toBeCloseTo(2 * 25.51 * 2 * 1.25, 1); // twice as thick, twice the mass
  });
  it('unknown where nothing holds it up, or its mass is not known', () => {
    expect(supportLoad(job(line([4], [0, 0], { screw: spiral }), ['all']))).toBeUndefined();
    expect(supportLoad(job(line([4], [0, 0]), ['all'], { heldUp }))).toBeUndefined();
  });
});
