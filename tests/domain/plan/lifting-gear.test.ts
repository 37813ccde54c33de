// What a piece hangs from: the crane at its radius, or the nearest lifting point with its side pull.

import { describe, expect, test } from 'vitest';
import {
  cranesAlong,
  gearFor,
  hangsLoads,
  loadAt,
  mostSidePull,
  radiusTo,
} from '../../../src/domain/order/lifting-gear.js';
import type { CranePlace, Job } from '../../../src/domain/model/job.js';
import type { Crane } from '../../../src/domain/model/plant.js';
import { liftsOf, screwMassPerMetre } from '../../../src/domain/plan/lifts.js';
import { planJob } from '../../../src/domain/plan/plan-job.js';
import { cutSpiral } from '../../../src/domain/plan/spiral-cuts.js';
import { mm, origin, screw, stated, use } from '../../kit/estate.js';
import { crew, job, line, step, withOrder, worldOf } from '../order/stories.js';

const kg = (value: number) => stated('mass', value, `${value} kg`);
const crane: Crane = {
  name: 'C1',
  origin: origin(),
  nameOrigin: origin(),
  chart: [
    { load: kg(4000), radius: mm(6000) },
    { load: kg(1800), radius: mm(10_000) },
    { load: kg(900), radius: mm(14_000) },
  ],
};
const at = (chainage: number, offset: number): CranePlace => ({
  use: use('C1'),
  crane,
  at: mm(chainage),
  offset: mm(offset),
  origin: origin(),
});
const on = (
  incline: number,
  cranes: readonly CranePlace[],
  points: readonly [string, number, number][] = [],
): Job =>
  job(
    line([20], [10, 10], {
      incline: stated('angle', incline),
      liftingPoints: points.map(([name, where, limit]) => ({
        name,
        at: mm(where),
        limit: kg(limit),
        origin: origin(),
      })),
    }),
    [],
    { cranes },
  );

describe('a load chart', () => {
  test.each([
    [3000, 4000],
    [6000, 4000],
    [6001, 1800],
    [10_000, 1800],
    [12_000, 900],
    [14_000, 900],
    [14_001, undefined],
  ])('at %d mm: %s kg, the smaller of its neighbours', (radius, load) => {
    expect(loadAt(crane, radius)).toBe(load);
  });
  test('written in any order', () => {
    expect(loadAt({ ...crane, chart: [...crane.chart].reverse() }, 8000)).toBe(1800);
  });
  // A steep jib may lift less close by than farther out: the chart rises before it falls.
  const steep: Crane = { ...crane, chart: [{ load: kg(2500), radius: mm(3000) }, ...crane.chart] };
  test.each([
    ['nearer than its first point', 1000, 2500],
    ['between a small load and a great one', 5999, 2500],
    ['at the great one', 6000, 4000],
    ['between the great one and the next', 6001, 1800],
    ['far out, where the first points say nothing any more', 12_000, 900],
  ])('that rises first, %s', (_, radius, load) => {
    expect(loadAt(steep, radius)).toBe(load);
    expect(loadAt({ ...steep, chart: [...steep.chart].reverse() }, radius)).toBe(load);
  });
  test('of no points lifts nothing', () => expect(loadAt({ ...crane, chart: [] }, 1000)).toBeUndefined());
});

test('the radius is horizontal: 8 m along a slope of 60 degrees is 4 m, with 3 m sideways 5 m', () => {
  expect(radiusTo(on(60, []), at(2000, 3000), 10_000)).toBeCloseTo(5000, 9);
  expect(radiusTo(on(0, []), at(2000, 3000), 6000)).toBeCloseTo(5000, 9);
});

describe('what a load hangs from', () => {
  test('a crane at its hook, with no side pull', () => {
    expect(gearFor(on(0, [at(10_000, 5000)], [['L1', 3000, 500]]), 10_000)).toMatchObject({
      limit: 4000,
      sidePull: 0,
      liftingPoint: undefined,
      crane: { radius: 5000 },
    });
  });
  test('the better of two stands', () => {
    expect(gearFor(on(0, [at(0, 9000), at(18_000, 4000)]), 16_000).crane?.place.at.value).toBe(18_000);
  });
  test('beyond every chart nothing lifts', () => {
    expect(gearFor(on(0, [at(0, 5000)]), 19_000)).toMatchObject({ outOfReach: true, limit: undefined });
  });
  test.each([
    [3000 + mostSidePull, false],
    [3000 + mostSidePull + 1, true],
    [11_600, true],
  ])('a lifting point at 3 m and a load at %d mm', (middle, tooFar) => {
    const { sidePull, liftingPoint } = gearFor(on(0, [], [['L1', 3000, 500]]), middle);
    expect(liftingPoint?.name).toBe('L1');
    expect(sidePull).toBe(middle - 3000);
    expect(sidePull > mostSidePull).toBe(tooFar);
  });
  test('nothing declared, nothing claimed', () => {
    expect(gearFor(on(0, []), 5000)).toEqual({
      limit: undefined,
      liftingPoint: undefined,
      crane: undefined,
      sidePull: 0,
      outOfReach: false,
    });
  });
});

describe('of a crane and a lifting point', () => {
  // 5 m to the side of its place the crane holds 4000 kg.
  const hung = (points: readonly [string, number, number][], facts: Partial<Job> = {}, middle = 10_000) => {
    const found = gearFor({ ...on(0, [at(10_000, 5000)], points), ...facts }, middle);
    return [found.crane ? 'crane' : (found.liftingPoint?.name ?? 'nothing'), found.limit, found.outOfReach];
  };
  const limit = (value: number): Partial<Job> => ({ liftLimit: kg(value) });
  test.each<[string, () => readonly unknown[], readonly unknown[]]>([
    ['the point above the load, which bears more', () => hung([['L1', 10_000, 5000]]), ['L1', 5000, false]],
    [
      'the point where both bear as much: no crane is needed',
      () => hung([['L1', 10_000, 4000]]),
      ['L1', 4000, false],
    ],
    ['the crane where it bears more', () => hung([['L1', 10_000, 3999]]), ['crane', 4000, false]],
    [
      'the point as far beside as a load may hang',
      () => hung([['L1', 10_000 - mostSidePull, 5000]]),
      ['L1', 5000, false],
    ],
    [
      'the crane, where the point is farther beside, bear what it will',
      () => hung([['L1', 10_000 - mostSidePull - 1, 9000]]),
      ['crane', 4000, false],
    ],
    [
      'the nearest point, not the first written nor the strongest',
      () =>
        hung([
          ['L1', 2000, 9000],
          ['L2', 10_100, 4500],
          ['L3', 9700, 9000],
        ]),
      ['L2', 4500, false],
    ],
    [
      'what the job allows, if that is less: under the crane',
      () => hung([], limit(300)),
      ['crane', 300, false],
    ],
    ['what the crane holds, if that is less', () => hung([], limit(9000)), ['crane', 4000, false]],
    ['what the job allows, at the point', () => hung([['L1', 10_000, 5000]], limit(300)), ['L1', 300, false]],
    [
      'the point where the crane does not reach',
      () => hung([['L1', 19_800, 500]], { cranes: [at(0, 5000)] }, 20_000),
      ['L1', 500, false],
    ],
    [
      'nothing gets at it where the crane does not reach and the point is far: the point is named all the same',
      () => hung([['L1', 12_000, 500]], { cranes: [at(0, 5000)] }, 20_000),
      ['L1', 500, true],
    ],
    [
      'of a job without cranes nothing is out of their reach',
      () => hung([['L1', 12_000, 500]], { cranes: [] }, 20_000),
      ['L1', 500, false],
    ],
    [
      'a crane that nobody has described lifts nothing',
      () => hung([], { cranes: [{ use: use('C9'), at: mm(10_000), offset: mm(0), origin: origin() }] }),
      ['nothing', undefined, true],
    ],
  ])('%s', (_, found, expected) => {
    expect(found()).toEqual(expected);
  });
  test('a job that says nothing of cranes is none with cranes out of reach', () => {
    const { cranes: _, ...of } = on(0, [], [['L1', 3000, 500]]);
    expect(gearFor(of, 15_000).outOfReach).toBe(false);
    expect(cranesAlong(of, [{ from: 0, to: 20_000 }])).toEqual([]);
  });
  test.each<[string, readonly [number, number], number, number]>([
    ['the last of three', [9000, 7000], 4000, 4000],
    ['the first of three', [4000, 9000], 11_000, 4000],
    ['the second of three', [9000, 5000], 13_000, 4000],
  ])('the crane that holds most there: %s', (_, [first, second], third, load) => {
    const of = on(0, [at(10_000, first), at(10_000, second), at(10_000, third)]);
    expect(gearFor(of, 10_000).limit).toBe(load);
    expect(gearFor(of, 10_000).crane?.radius).toBe(Math.min(first, second, third));
  });
});

describe('cranes along a stretch', () => {
  const named = (name: string, chainage: number): CranePlace => ({ ...at(chainage, 0), use: use(name) });
  // Each reaches 14 m.
  const two = on(0, [named('East', 0), named('West', 20_000)]);
  const along = (from: number, to: number, of = two) => cranesAlong(of, [{ from, to }]).sort();
  test.each<[string, () => readonly string[], readonly string[]]>([
    ['the one that holds more there', () => along(0, 6000), ['East']],
    ['both where they meet', () => along(8000, 12_000), ['East', 'West']],
    ['at a single place too', () => along(16_000, 16_000), ['West']],
    ['its last place counts', () => along(9500, 10_500), ['East', 'West']],
    [
      'not where a lifting point bears more',
      () => along(16_000, 16_000, on(0, [named('West', 20_000)], [['L1', 16_000, 9000]])),
      [],
    ],
    ['none where none reaches', () => along(19_000, 20_000, on(0, [named('East', 0)])), []],
  ])('%s', (_, found, expected) => {
    expect(found()).toEqual(expected);
  });
  test('each is named once, over several stretches', () => {
    const areas = [
      { from: 0, to: 2000 },
      { from: 3000, to: 4000 },
      { from: 18_000, to: 20_000 },
    ];
    expect(cranesAlong(two, areas)).toEqual(['East', 'West']);
  });
});

test.each([
  ['remove screw', true],
  ['insert screw', true],
  ['strip all', false],
  ['restrain screw', false],
])('"%s" hangs pieces of the spiral from a hook: %s', (text, hangs) => {
  expect(hangsLoads(step(text))).toBe(hangs);
});

describe('pieces as the order has them', () => {
  const spiral = screw({ flight: { width: mm(80), thickness: mm(25), origin: origin() } });
  const level = line([12], [20, 20], { screw: spiral });
  const change = (lines: readonly string[], limit: number): Job =>
    withOrder(
      job(level, [], {
        crews: [crew('Alpha', 4)],
        liftLimit: stated('mass', limit, `${limit} kg`),
        screwChange: { screw: spiral, cut: 'cold', joints: 'bolted', origin: origin() },
      }),
      lines,
    );
  const over = (of: Job): string[] =>
    planJob(of, worldOf(of), { quick: true, shakes: 1, nodes: 0 })
      .problems.filter(({ kind }) => kind === 'lift over limit')
      .map(({ message }) => message);
  const perMetre = screwMassPerMetre(spiral) ?? NaN;

  test('each step lifts its own piece, which counts against the limit', () => {
    const halves = ['remove screw from 0 mm to 6000 mm', 'remove screw from 6000 mm to 12000 mm'];
    expect(over(change(halves, Math.ceil(6 * perMetre)))).toEqual([]);
    expect(over(change(halves, Math.floor(6 * perMetre)))).toHaveLength(2);
    const pieces = liftsOf(change(halves, 5000), []).spiral?.pieces;
    expect(pieces?.map(({ from, to }) => [from, to])).toEqual([
      [0, 6000],
      [6000, 12_000],
    ]);
  });
  test('a new piece that goes in in one counts too; one step for all is cut by the table', () => {
    const inTwo = ['insert screw from 0 mm to 9000 mm', 'insert screw from 9000 mm to 12000 mm'];
    const found = over(change(inTwo, Math.floor(8.5 * perMetre)));
    expect(found).toHaveLength(1);
    expect(found[0]).toContain('"insert screw from 0 mm to 9000 mm" lifts');
    expect(over(change(['remove screw', 'insert screw'], Math.floor(3 * perMetre)))).toEqual([]);
  });
});

test('of cuts within the limit those are taken whose pieces hang nearest to the lifting points', () => {
  const spiral = screw({ flight: { width: mm(80), thickness: mm(25), origin: origin() } });
  const points = [2000, 8000].map((at, k) => ({
    name: `L${k + 1}`,
    at: mm(at),
    limit: stated('mass', 5000, '5000 kg'),
    origin: origin(),
  }));
  const of = job(line([12], [20, 20], { screw: spiral, liftingPoints: points }), [], {
    screwChange: { screw: spiral, cut: 'cold', joints: 'bolted', origin: origin() },
    liftLimit: stated('mass', 400, '400 kg'),
  });
  const cuts = cutSpiral(of, 40);
  // By brute force over two pieces on the grid: 4 m and 8 m hang under their points; two even pieces would pull a metre sideways.
  const pull = ({ from, to }: { readonly from: number; readonly to: number }): number =>
    Math.max(0, Math.min(...points.map(({ at }) => Math.abs(at.value - (from + to) / 2))) - mostSidePull);
  const best = Math.min(
    ...Array.from({ length: 239 }, (_, k) => (k + 1) * 50)
      .filter((cut) => Math.max(cut, 12_000 - cut) * 0.04 <= 400)
      .map((cut) => pull({ from: 0, to: cut }) + pull({ from: cut, to: 12_000 })),
  );
  expect(cuts).toHaveLength(2);
  expect(cuts.reduce((sum, cut) => sum + pull(cut), 0)).toBe(best);
  expect(best).toBe(0);
});
