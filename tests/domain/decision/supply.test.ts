// How soon a liner can be there: lead times by a worked table (days counted on a calendar by hand), the shelf piece by piece.

import { describe, expect, it } from 'vitest';
import { suppliesOf, type Pieces } from '../../../src/domain/decision/supply.js';
import type { Plant, ShelfCount, ShelfItem } from '../../../src/domain/model/plant.js';
import { formatDay } from '../../../src/domain/units/calendar.js';
import { calendarDay, hours, liner, mm, on, origin, plant, stated, use } from '../../kit/estate.js';

const asOf = calendarDay('2026-10-31');
const week = 168;

function shelf(item: ShelfItem, count: number, day: string, length?: number): ShelfCount {
  return {
    liner: use('TwoLayer12'),
    item,
    count: { count, origin: origin() },
    counted: on(day),
    origin: origin(),
    ...(length === undefined ? {} : { length: mm(length) }),
  };
}

const panels = (...lengths: readonly number[]): Pieces => ({
  liner: liner({ stockLengths: [mm(3000)] }),
  lengths,
  fixings: 0,
});
const lead = (weeks: number): Pick<Plant, 'leadTimes'> => ({
  leadTimes: [{ item: 'liner', time: hours(weeks * week), origin: origin() }],
});
const ways = (made: Plant, pieces: Pieces): readonly string[] =>
  suppliesOf(made, [pieces], asOf, []).ways.map(({ by, day, price }) => `${by} ${formatDay(day)} ${price}`);

describe('lead times', () => {
  // Ordered 2026-10-31 (a Saturday).
  it.each([
    [1, '2026-11-07'],
    [10, '2027-01-09'],
    [18, '2027-03-06'],
    [52, '2027-10-30'],
  ])('%s weeks arrive on %s', (weeks, day) => {
    expect(ways(plant(lead(weeks)), panels(1200))).toEqual([`usual ${day} 0`]);
  });

  it('stand beside an expedited one with its price, soonest first', () => {
    const price = { ...stated('money', 1800, '1800 EUR'), currency: 'EUR' };
    const made = plant({
      ...lead(10),
      expedited: [{ item: 'liner', time: hours(5 * week), price, origin: origin() }],
    });
    expect(ways(made, panels(1200))).toEqual(['expedited 2026-12-05 1800', 'usual 2027-01-09 0']);
  });

  it('wait for fixings that are not on the shelf', () => {
    const made = plant({
      leadTimes: [
        { item: 'liner', time: hours(2 * week), origin: origin() },
        { item: 'fixings', time: hours(3 * week), origin: origin() },
      ],
    });
    expect(ways(made, { ...panels(1200), fixings: 20 })).toEqual(['usual 2026-11-21 0']);
    expect(
      ways({ ...made, shelf: [shelf('fixings', 20, '2026-10-01')] }, { ...panels(1200), fixings: 20 }),
    ).toEqual(['usual 2026-11-14 0']);
  });

  it('that are not declared promise nothing', () => {
    expect(ways(plant(), panels(1200))).toEqual([]);
  });
});

describe('the shelf', () => {
  it('serves at once where every piece is there, closing pieces cut from whole panels or stock lengths', () => {
    expect(ways(plant({ shelf: [shelf('panels', 2, '2026-10-01')] }), panels(1200, 700))).toEqual([
      'shelf 2026-10-31 0',
    ]);
    const mixed = plant({
      shelf: [shelf('panels', 1, '2026-10-01'), shelf('stock lengths', 1, '2026-10-01')],
    });
    expect(ways(mixed, panels(1200, 1200, 900, 880))).toEqual(['shelf 2026-10-31 0']);
    // 1200 + 900 + 895 and two saw cuts are 3001 mm: one millimetre more than the stick.
    expect(ways(mixed, panels(1200, 1200, 900, 895))).toEqual([]);
  });

  it('is what the newest count up to the day found, an empty shelf included', () => {
    const counts = [
      shelf('panels', 4, '2026-06-01'),
      shelf('panels', 0, '2026-10-01'),
      shelf('panels', 9, '2026-12-01'),
    ];
    const { ways: none, shelf: words } = suppliesOf(plant({ shelf: counts }), [panels(1200)], asOf, []);
    expect(none).toEqual([]);
    expect(words).toBe('0 panels counted 2026-10-01; 1 panels needed, 1 short');
  });
});
