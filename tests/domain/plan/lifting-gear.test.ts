// What a piece hangs from: the crane at its radius, or the nearest lifting point with its side pull.

import { describe, expect, test } from 'vitest';
import { gearFor, loadAt, mostSidePull, radiusTo } from '../../../src/domain/order/lifting-gear.js';
import type { CranePlace, Job } from '../../../src/domain/model/job.js';
import type { Crane } from '../../../src/domain/model/plant.js';
import { mm, origin, stated, use } from '../../kit/estate.js';
import { job, line } from '../order/stories.js';

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
