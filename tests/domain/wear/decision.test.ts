import { describe, expect, it } from 'vitest';
import type { CalendarDay } from '../../../src/domain/units/calendar.js';
import { addDays, parseDay } from '../../../src/domain/units/calendar.js';
import { nextInspection } from '../../../src/domain/wear/decision.js';
import type { CalendarForecast, ForwardDuty } from '../../../src/domain/wear/to-calendar.js';
import { toCalendar } from '../../../src/domain/wear/to-calendar.js';
import { area } from '../../../src/domain/wear/numeric/normal.js';

const day = (text: string): CalendarDay => {
  const parsed = parseDay(text);
  if (parsed === undefined) throw new Error(text);
  return parsed;
};
const today = day('2026-10-31');

/** A life known to be lognormal: median (exposure) and spread of its ln. */
const lognormal = (median: number, spread: number) => ({
  reachedBy: (x: number): number => (x > 0 ? area(Math.log(x / median) / spread) : 0),
});
const duty = (change: Partial<ForwardDuty> = {}): ForwardDuty => ({
  perDay: 20,
  spread: 0,
  from: today,
  now: 4000,
  ...change,
});

function dates(forecast: CalendarForecast): Extract<CalendarForecast, { kind: 'dates' }> {
  if (forecast.kind !== 'dates') throw new Error(forecast.why);
  return forecast;
}

describe('hours to dates', () => {
  it('with even duty a date is the hours that are left over the hours a day', () => {
    const { quantiles, reachedBy } = dates(toCalendar(lognormal(8000, 0.2), duty()));
    expect(quantiles.q50).toBe(addDays(today, 200));
    // 5 % quantile: 8000·e^(−1.6449·0.2) = 5757.4 h, 1757.4 h to go, 87.87 days: the whole day before.
    expect(quantiles.q05).toBe(addDays(today, 87));
    expect(reachedBy(addDays(today, 200))).toBeCloseTo(0.5, 9);
  });

  it('the spread of the duty widens the interval and, alone, is the interval', () => {
    const sure = dates(toCalendar(lognormal(8000, 0.001), duty({ spread: 0.2 })));
    // Days are 4000/duty, duty lognormal with mean 20 and variation 0.2: ln spread √ln(1.04) = 0.19804, median 20/√1.04.
    const median = (4000 / 20) * Math.sqrt(1.04);
    expect(sure.quantiles.q50).toBe(addDays(today, Math.floor(median)));
    expect(Math.abs((sure.quantiles.q95 ?? 0) - today - median * Math.exp(1.6449 * 0.19804))).toBeLessThan(
      1.5,
    );
    const plain = dates(toCalendar(lognormal(8000, 0.2), duty()));
    const wider = dates(toCalendar(lognormal(8000, 0.2), duty({ spread: 0.2 })));
    expect((wider.quantiles.q95 ?? 0) - (wider.quantiles.q05 ?? 0)).toBeGreaterThan(
      (plain.quantiles.q95 ?? 0) - (plain.quantiles.q05 ?? 0),
    );
  });

  it('hours that nobody read count like those to come, also where the date lies behind today', () => {
    const read = addDays(today, -90);
    const blind = dates(toCalendar(lognormal(8000, 0.2), duty({ from: read, now: 2200, today })));
    // Without variation 90 days at 20 h/d bring exactly what was missing on the meter.
    expect(blind.quantiles).toEqual(dates(toCalendar(lognormal(8000, 0.2), duty())).quantiles);
    const late = dates(toCalendar(lognormal(3010, 0.2), duty({ from: read, now: 2200, today })));
    expect(late.quantiles.q50).toBe(addDays(read, 40));
    expect(late.quantiles.q50).toBeLessThan(today);
    expect(late.reachedBy(addDays(read, 41))).toBeGreaterThan(0.5);
  });

  it('weeks that are not alike even out: the wander shrinks with the root of the time', () => {
    const wander = { ratio: 0.2, per: 100 };
    const sure = dates(toCalendar(lognormal(8000, 0.001), duty({ wander })));
    // Of 200 days the mean is out by 0.2·√(100/200); the same as a level of that size, on that day.
    const level = dates(toCalendar(lognormal(8000, 0.001), duty({ spread: 0.2 * Math.SQRT1_2 })));
    expect(sure.reachedBy(addDays(today, 200))).toBeCloseTo(level.reachedBy(addDays(today, 200)), 9);
    expect(sure.reachedBy(addDays(today, 250))).toBeGreaterThan(level.reachedBy(addDays(today, 250)));
  });

  it('39 weeks that nobody read raise a risk that was there', () => {
    // The case of the design: a life that is known, duty ± 15 % and ± 20 % a half year, against one known to ± 5 %.
    const at = (spread: number, ratio: number): number =>
      dates(
        toCalendar(
          lognormal(8000, 0.12),
          duty({ from: addDays(today, -273), now: 1000, spread, wander: { ratio, per: 182 }, today }),
        ),
      ).reachedBy(today);
    expect(at(0.05, 0)).toBeLessThan(at(0.15, 0));
    expect(at(0.15, 0)).toBeLessThan(at(0.15, 0.2));
  });

  it('what happened before the last meter reading follows the meter, not the duty', () => {
    // 10 h a day for 300 days, then none for 60: the 3,000 h of the middle were had on day 300 of them.
    const first = addDays(today, -360);
    const exposureOn = (day: CalendarDay): number => Math.min(0, (Math.min(day - first, 300) - 300) * 10);
    const condemn = dates(
      toCalendar(lognormal(2000, 0.2), duty({ now: 3000, before: { first, exposureOn } })),
    );
    expect(condemn.quantiles.q50).toBe(addDays(first, 199)); // the last whole day before 2,000 h
    expect(condemn.reachedBy(addDays(first, 200))).toBeCloseTo(0.5, 9);
    expect(condemn.reachedBy(addDays(first, 330))).toBe(condemn.reachedBy(today));
    const { q05, q10, q50, q90, q95 } = condemn.quantiles;
    expect([q05, q10, q50, q90, q95]).toEqual(
      [q05, q10, q50, q90, q95].sort((a, b) => Number(a) - Number(b)),
    );
    const nothing = dates(
      toCalendar(lognormal(1e-9, 0.2), duty({ now: 3000, before: { first, exposureOn } })),
    );
    expect(nothing.quantiles.q50).toBe(first);
  });

  it('with nothing known from before the meter it is that day; what is beyond forty years is no date', () => {
    expect(dates(toCalendar(lognormal(3000, 0.2), duty())).quantiles.q50).toBe(today);
    expect(dates(toCalendar(lognormal(1e7, 0.2), duty())).quantiles.q50).toBeUndefined();
  });

  it('a conveyor that does not run has no dates', () => {
    expect(toCalendar(lognormal(8000, 0.2), duty({ perDay: 0 }))).toEqual({
      kind: 'cannot say',
      why: 'it does not run',
    });
    expect(toCalendar(lognormal(8000, 0.2), duty({ perDay: NaN }))).toEqual({
      kind: 'cannot say',
      why: 'no duty',
    });
  });
});

describe('next inspection', () => {
  const condemn = toCalendar(lognormal(8000, 0.2), duty());

  it('is half the remaining life where that comes first', () => {
    expect(nextInspection({ condemn, remainingDays: 100, risk: 0.05, asOf: today })).toMatchObject({
      kind: 'by',
      day: addDays(today, 50),
      because: 'half the remaining life',
    });
  });

  it('is the day of the declared risk where that comes first', () => {
    expect(nextInspection({ condemn, remainingDays: 400, risk: 0.05, asOf: today })).toMatchObject({
      kind: 'by',
      day: addDays(today, 87),
      because: 'the declared risk',
    });
  });

  it('is now where the risk is there already, or no life is left', () => {
    expect(nextInspection({ condemn, remainingDays: 400, risk: 0.0002, asOf: today })).toMatchObject({
      kind: 'now',
      because: 'the declared risk',
    });
    expect(nextInspection({ condemn, remainingDays: 0, risk: 0.05, asOf: today })).toMatchObject({
      kind: 'now',
      because: 'half the remaining life',
    });
  });

  // Half of a life, in whole days and never later than half: 101 days are 50.
  it.each([
    [101, 50],
    [100.9, 50],
    [3, 1],
    [2, 1],
  ])('half of %d days is %d days from today', (remainingDays, days) => {
    expect(nextInspection({ condemn: undefined, remainingDays, risk: 0.05, asOf: today })).toEqual({
      kind: 'by',
      day: addDays(today, days),
      because: 'half the remaining life',
      chance: undefined,
    });
  });

  it('less than two days of life, or none, is now', () => {
    for (const remainingDays of [1.9, 0.5, 0, -30])
      expect(nextInspection({ condemn: undefined, remainingDays, risk: 0.05, asOf: today })).toEqual({
        kind: 'now',
        because: 'half the remaining life',
        chance: undefined,
      });
    for (const remainingDays of [Infinity, NaN])
      expect(nextInspection({ condemn: undefined, remainingDays, risk: 0.05, asOf: today }).kind).toBe(
        'cannot say',
      );
  });

  it('where both fall on one day the risk is what rules', () => {
    expect(nextInspection({ condemn, remainingDays: 174, risk: 0.05, asOf: today })).toMatchObject({
      day: addDays(today, 87),
      because: 'the declared risk',
    });
    expect(nextInspection({ condemn, remainingDays: 173, risk: 0.05, asOf: today })).toMatchObject({
      day: addDays(today, 86),
      because: 'half the remaining life',
    });
  });

  it('a risk that is never passed is a look at the horizon, and says with what chance', () => {
    const far = toCalendar(lognormal(1e7, 0.2), duty());
    const look = nextInspection({ condemn: far, remainingDays: undefined, risk: 0.05, asOf: today });
    expect(look).toMatchObject({ kind: 'by', day: addDays(today, 14_610), because: 'the declared risk' });
    expect(look.kind === 'by' && look.chance).toBeCloseTo(0, 12);
  });

  it('says the chance on the day of the look, not on another', () => {
    const at = (remainingDays: number): number | undefined => {
      const look = nextInspection({ condemn, remainingDays, risk: 0.05, asOf: today });
      return look.kind === 'cannot say' ? undefined : look.chance;
    };
    // 50 days at 20 h on top of 4000 h.
    expect(at(100)).toBeCloseTo(area(Math.log(5000 / 8000) / 0.2), 12);
    expect(at(0)).toBeCloseTo(area(Math.log(4000 / 8000) / 0.2), 12);
  });

  it('cannot say with nothing to go by', () => {
    expect(nextInspection({ condemn: undefined, remainingDays: undefined, risk: 0.05, asOf: today })).toEqual(
      { kind: 'cannot say', why: 'no forecast and no arithmetic' },
    );
    expect(
      nextInspection({
        condemn: { kind: 'cannot say', why: 'no duty' },
        remainingDays: 60,
        risk: 0.05,
        asOf: today,
      }),
    ).toMatchObject({ kind: 'by', day: addDays(today, 30) });
  });
});
