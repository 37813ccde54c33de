import { describe, expect, it } from 'vitest';
import { columnsOf, reduced, unitsOf } from './kit.js';
import { reduceReadings } from '../../../src/domain/wear/reduce.js';

describe('thicknesses', () => {
  it('become wear, by unit, by rising exposure', () => {
    const units = reduced(
      [
        { at: 4000, saw: 9 },
        { unit: 1, at: 1000, saw: 11 },
        { at: 2000, saw: 10.5 },
      ],
      2,
    );
    expect([...units.start]).toEqual([0, 2, 3]);
    expect([...units.exposure]).toEqual([2000, 4000, 1000]);
    expect([...units.wear]).toEqual([1.5, 3, 1]);
    expect([...units.reading]).toEqual([2, 0, 1]);
    expect([...units.lastSeen]).toEqual([4000, 1000]);
  });

  it('nothing left is the trough showing, not wear of exactly the full thickness', () => {
    const units = reduced([{ at: 9000, saw: 0 }]);
    expect(units.thicknesses[0]).toBe(0);
    expect(units.indicators[0]).toBe(1);
    expect([...units.edgeReached]).toEqual([9000]);
  });
});

describe('colours', () => {
  it('keep only the edges that matter: the last not yet and the first reached of each depth', () => {
    const units = reduced([
      { at: 2000, saw: 'ivory' },
      { at: 4000, saw: 'ivory' },
      { at: 7000, saw: 'teal' },
      { at: 8000, saw: 'teal' },
    ]);
    expect([...units.edgeDepth]).toEqual([6, 12]);
    expect([...units.edgeNotYet]).toEqual([4000, 8000]);
    expect([...units.edgeReached]).toEqual([7000, Infinity]);
  });

  it('the trough showing is the last depth reached', () => {
    const units = reduced([{ at: 9000, saw: 'trough' }]);
    expect([...units.edgeDepth]).toEqual([12]);
    expect([...units.edgeReached]).toEqual([9000]);
  });

  it('hidden is counted and says nothing', () => {
    const units = reduced([{ at: 5000, saw: 'not seen' }]);
    expect(units.notSeen[0]).toBe(1);
    expect(units.edgeDepth.length).toBe(0);
    expect(units.lastSeen[0]).toBe(0);
  });
});

describe('odd records become remarks', () => {
  it('a layer that showed and later did not: the worse record is believed, both are named', () => {
    const units = reduced([
      { at: 5000, saw: 'teal' },
      { at: 8000, saw: 'ivory' },
    ]);
    expect(units.remarks).toContainEqual({
      kind: 'contradiction',
      reading: 1,
      earlier: 0,
      unit: 0,
      depth: 6,
    });
    expect([...units.edgeReached]).toContain(5000);
    expect([...units.edgeNotYet]).not.toContain(8000);
  });

  it('the trough and later the first colour', () => {
    const units = reduced([
      { at: 5000, saw: 'trough' },
      { at: 8000, saw: 'ivory' },
    ]);
    expect(units.remarks).toContainEqual({
      kind: 'contradiction',
      reading: 1,
      earlier: 0,
      unit: 0,
      depth: 6,
    });
  });

  it('a colour again, later and as before, is no contradiction', () => {
    expect(
      reduced([
        { at: 5000, saw: 'ivory' },
        { at: 8000, saw: 'teal' },
        { at: 9000, saw: 'teal' },
      ]).remarks,
    ).toEqual([]);
  });

  it('thicker than before beyond 3σ√2 (2.12 mm at 0.5 mm), not within', () => {
    expect(
      reduced([
        { at: 3000, saw: 8 },
        { at: 5000, saw: 10.2 },
      ]).remarks,
    ).toEqual([{ kind: 'thicker than before', reading: 1, earlier: 0, unit: 0, growth: 10.2 - 8 }]);
    expect(
      reduced([
        { at: 3000, saw: 8 },
        { at: 5000, saw: 10 },
      ]).remarks,
    ).toEqual([]);
  });

  it('thicker than fitted: kept near, left out where absurd', () => {
    expect(reduced([{ at: 3000, saw: 13 }]).remarks).toEqual([]);
    expect(reduced([{ at: 3000, saw: 14 }]).remarks).toEqual([
      { kind: 'thicker than fitted', reading: 0, unit: 0, thickness: 14, fitted: 12, leftOut: false },
    ]);
    const absurd = reduced([{ at: 3000, saw: 120 }]);
    expect(absurd.remarks).toEqual([
      { kind: 'thicker than fitted', reading: 0, unit: 0, thickness: 120, fitted: 12, leftOut: true },
    ]);
    expect(absurd.thicknesses[0]).toBe(0);
  });

  it('before fitting, no exposure yet, no number, no such layer, no such unit, below nothing', () => {
    const odd = reduceReadings(
      {
        unit: [0, 0, 0, 0, 0, 0, 7, 0, 0],
        exposure: [-5, 0, 0, NaN, 100, 100, 100, 100, Infinity],
        kind: [0, 0, 1, 0, 1, 9, 0, 0, 0],
        value: [11, 12, 1, 11, 3, 0, 11, -1, 11],
      },
      unitsOf(1),
    );
    expect(odd.remarks.map(({ kind }) => kind)).toEqual([
      'before fitting',
      'no exposure yet',
      'no exposure yet',
      'not a number',
      'no such layer',
      'no such layer',
      'no such unit',
      'negative thickness',
      'not a number',
    ]);
    expect(odd.thicknesses[0]).toBe(1);
    expect(odd.indicators[0]).toBe(0);
  });
});

describe('what was known on a day', () => {
  it('readings after it are not looked at', () => {
    const columns = columnsOf([
      { at: 1000, saw: 11, day: 10 },
      { at: 2000, saw: 10, day: 20 },
    ]);
    expect(reduceReadings(columns, unitsOf(1), { upTo: 10 }).thicknesses[0]).toBe(1);
    expect(reduceReadings(columns, unitsOf(1), { upTo: 20 }).thicknesses[0]).toBe(2);
  });
});

describe('former sets', () => {
  const lives = {
    unit: [0, 1, 2, 2],
    exposure: [9000, 5000, 4000, 8000],
    depth: [9, 9, 9, 9],
    reached: [1, 0, 0, 1],
  };

  it('a life states the rate, one still running bounds it', () => {
    const units = reduced([], 3, lives);
    expect(units.life[0]).toBeCloseTo(Math.log(9 / 9000), 12);
    expect(units.lifeSpread[0]).toBe(0);
    expect(units.life[1]).toBeNaN();
    expect([...units.edgeNotYet]).toEqual([5000, 4000]);
    expect(units.lifeSpread[2]).toBeGreaterThan(0);
  });

  it('a life of nothing, or to no depth, is not taken', () => {
    const units = reduced([], 1, { unit: [0, 0], exposure: [0, 500], depth: [9, 0], reached: [1, 1] });
    expect(units.life[0]).toBeNaN();
  });
});
