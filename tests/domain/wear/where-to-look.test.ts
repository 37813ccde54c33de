// Where a look is worth most. No published figure is known; the checks are what must hold whatever the numbers, and for
// a single point a second road: two sources of knowledge add as one over their variances.

import { describe, expect, it } from 'vitest';
import { whereToLook, type LookWorth } from '../../../src/domain/wear/where-to-look.js';
import { forecastUnit } from '../../../src/domain/wear/forecast.js';
import { fitted, type Seen } from './kit.js';

/** Two looks each at 3000 and 6000 h. */
const looked = (unit: number, first: number, second: number): Seen[] => [
  { unit, at: 3000, saw: first },
  { unit, at: 6000, saw: second },
];
const others = [3, 4, 5, 6].flatMap((unit) => looked(unit, 9.2, 6.5));
const members = (...units: readonly number[]) => units.map((unit) => ({ unit, depth: 9, now: 6000 }));
const unitsIn = (looks: readonly LookWorth[]): number[] => looks.map(({ member }) => member.unit);

describe('what is worth a look', () => {
  // Unit 0 wears fast and was read once, 1 was never seen, 2 wears slowly and is known, 3 to 6 are the pool.
  const fit = fitted([...others, { unit: 0, at: 3000, saw: 9 }, ...looked(2, 11, 10)], 8, {});

  it('the one nobody has seen before the one read once, that before the one that is far off', () => {
    const looks = whereToLook(fit, members(0, 1, 2));
    expect(unitsIn(looks)).toEqual([1, 0, 2]);
    const [unseen, known, far] = looks.map(({ narrowing }) => narrowing);
    expect(unseen).toBeGreaterThan(0.1);
    expect(known).toBeLessThan(unseen ?? 0);
    // A point that is never the first cannot narrow the first.
    expect(far).toBeLessThan(0.005);
    expect(looks.map(({ index }) => index)).toEqual([1, 0, 2]);
  });

  it('says how likely each is past its limit already: its own forecast today', () => {
    for (const { member, already } of whereToLook(fit, members(0, 1, 2))) {
      const own = forecastUnit(fit, member.unit, member.depth);
      expect(own.kind === 'life' && own.reachedBy(member.now)).toBe(already);
    }
  });

  it('does not depend on the order in which they are given', () => {
    const one = whereToLook(fit, members(0, 1, 2));
    const other = whereToLook(fit, members(2, 1, 0));
    expect(unitsIn(other)).toEqual(unitsIn(one));
    one.forEach((look, i) => {
      expect(other[i]?.narrowing).toBeCloseTo(look.narrowing, 12);
      expect(other[i]?.index).toBe(2 - look.index);
    });
  });

  it('two that are alike are worth the same, and each less than one by itself', () => {
    const [a, b] = whereToLook(fit, members(1, 7));
    const [alone] = whereToLook(fit, members(1));
    expect(a?.narrowing).toBeCloseTo(b?.narrowing ?? NaN, 9);
    expect([a?.index, b?.index]).toEqual([0, 1]);
    expect(alone?.narrowing).toBeGreaterThan((a?.narrowing ?? NaN) * 1.2);
    expect(alone?.narrowing).toBeLessThan(1);
  });

  it('a coarser gauge makes every look worth less', () => {
    const worth = (gaugeError: number): number => {
      const of = { ...fit, readingError: gaugeError };
      return whereToLook(of, members(1))[0]?.narrowing ?? NaN;
    };
    const [fine, usual, coarse] = [worth(0.05), worth(0.4), worth(4)];
    expect(fine).toBeGreaterThan(usual ?? NaN);
    expect(usual).toBeGreaterThan(coarse ?? NaN);
    expect(coarse).toBeGreaterThanOrEqual(0);
  });

  it('weeks that wear unevenly make every look worth less', () => {
    // The path's own wandering hides the rate from one look, the more so the shorter it has run.
    const worth = (psi: number, now: number): number => {
      const of = { ...fit, dutyNoise: { ...fit.dutyNoise, psi } };
      return whereToLook(of, [{ unit: 1, depth: 9, now }])[0]?.narrowing ?? NaN;
    };
    expect(worth(0, 600)).toBeGreaterThan(worth(20, 600) * 1.5);
    expect(worth(0, 0)).toBe(worth(20, 0));
  });

  it('a look later, when more is worn, tells more of the rate than one early', () => {
    const at = (now: number): number => whereToLook(fit, [{ unit: 1, depth: 9, now }])[0]?.narrowing ?? NaN;
    expect(at(200)).toBeLessThan(at(3000));
  });

  it('none to look at', () => expect(whereToLook(fit, [])).toEqual([]));
});

it.each([1200, 2400, 3600, 4800, 6000])(
  'what a look at %d h takes away from the spread of a single point, by a second road',
  (now) => {
    // One unseen point and even duty. The spread of ln life, from its own quantiles, is that of ln rate; a reading of error e at
    // wear w tells ln rate to e/w, and two independent sources add as 1/variance.
    const fit = fitted(others, 8, { dutyNoise: 'none' });
    const own = forecastUnit(fit, 1, 9);
    if (own.kind !== 'life') throw new Error(own.kind);
    const { q10, q50, q90 } = own.quantiles;
    const spread = Math.log(q90 / q10) / (2 * 1.2815515655446004);
    const told = fit.readingError / ((9 / q50) * now);
    const after = 1 / Math.sqrt(1 / spread ** 2 + 1 / told ** 2);
    const [look] = whereToLook(fit, [{ unit: 1, depth: 9, now }]);
    // A grid of hours and seven outcomes cost less than a hundredth.
    expect(Math.abs((look?.narrowing ?? NaN) - (1 - after / spread))).toBeLessThan(0.01);
  },
);

describe('what no forecast can be made of', () => {
  it('is looked at first of all, and counts as all there is to learn', () => {
    // Steel seen on unit 0: it needs no look to know that it is through.
    const fit = fitted([...others, { unit: 0, at: 5000, saw: 'trough' }], 8, {});
    const looks = whereToLook(fit, members(0, 1, 3));
    expect(unitsIn(looks)).not.toContain(0);
    expect(unitsIn(looks).sort()).toEqual([1, 3]);
    expect(looks.map(({ index }) => index).sort()).toEqual([1, 2]);
  });
});

describe('points of which nothing can be said', () => {
  // A limit of no depth has no forecast.
  const fit = fitted([...others, ...looked(0, 9, 6.4), ...looked(2, 11, 10)], 8, {});
  const nothing = (unit: number) => ({ unit, depth: 0, now: 6000 });
  it('come first of all, in the order given, as if all were to learn', () => {
    const looks = whereToLook(fit, [...members(2), nothing(5), ...members(0), nothing(4)]);
    expect(looks.map(({ index, narrowing }) => [index, narrowing === 1])).toEqual([
      [1, true],
      [3, true],
      [2, false],
      [0, false],
    ]);
    expect(looks.slice(0, 2).map(({ already }) => already)).toEqual([0, 0]);
    expect(unitsIn(looks)).toEqual([5, 4, 0, 2]);
  });
  it('alone they are all there is', () => {
    expect(whereToLook(fit, [nothing(1)])).toEqual([
      { member: nothing(1), index: 0, narrowing: 1, already: 0 },
    ]);
  });
  it('steel that was seen is not one of them', () => {
    const seen = fitted([...others, { unit: 0, at: 5000, saw: 'trough' }], 8, {});
    expect(whereToLook(seen, members(0))).toEqual([]);
  });
});

it('of points that are worth the same the one nearer to its limit comes first, then the one given first', () => {
  // Units 0 to 2 are known to wear alike and slowly beside unit 1's fast ones; the deeper the limit, the farther it is.
  const fit = fitted(
    [...others, ...looked(0, 11.6, 11.2), ...looked(1, 11.6, 11.2), ...looked(2, 11.6, 11.2)],
    8,
    {},
  );
  const at = (unit: number, depth: number) => ({ unit, depth, now: 6000 });
  const looks = whereToLook(fit, [at(0, 11.5), at(1, 1.2), at(2, 11.5), at(3, 9)]);
  const far = looks.filter(({ member }) => member.depth === 11.5);
  expect(far.map(({ narrowing }) => narrowing)).toEqual([0, 0]);
  expect(far.map(({ index }) => index)).toEqual([0, 2]);
});

it('a point that is many times farther off takes nothing from what a look at the near one is worth', () => {
  const fit = fitted([...others, ...looked(2, 11.8, 11.6)], 8, {});
  const near = { unit: 1, depth: 9, now: 6000 };
  const far = { unit: 2, depth: 11, now: 100 };
  const worth = (...of: readonly (typeof near)[]): number =>
    whereToLook(fit, of).find(({ member }) => member === near)?.narrowing ?? NaN;
  expect(worth(near)).toBeGreaterThan(0.9);
  expect(Math.abs(worth(near, far) - worth(near))).toBeLessThan(0.005);
});

it('of very many points those far from the limit are not worked out, and none is lost', () => {
  const count = 70;
  // Readings scatter by a few tenths, as gauges do; the five that are near stand last in the list.
  const rows = Array.from({ length: count }, (_, unit) => {
    const [first, second] = [((unit * 7) % 5) - 2, ((unit * 3) % 7) - 3].map((each) => each * 0.12);
    return looked(unit, (unit < 65 ? 11.4 : 9) + (first ?? 0), (unit < 65 ? 10.6 : 6) + (second ?? 0));
  }).flat();
  const fit = fitted(rows, count, {});
  const looks = whereToLook(
    fit,
    Array.from({ length: count }, (_, unit) => ({ unit, depth: 9, now: 6000 })),
  );
  expect(new Set(unitsIn(looks)).size).toBe(count);
  expect(unitsIn(looks).slice(0, 5).sort()).toEqual([65, 66, 67, 68, 69]);
  for (const look of looks.slice(0, 5)) expect(look.narrowing).toBeGreaterThan(0);
  for (let i = 1; i < count; i++)
    expect(looks[i]?.narrowing).toBeLessThanOrEqual(looks[i - 1]?.narrowing ?? NaN);
});
