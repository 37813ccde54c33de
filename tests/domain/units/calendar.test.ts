import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addDays,
  formatDay,
  isWithin,
  monthNamed,
  parseDay,
  weekday,
  type CalendarDay,
} from '../../../src/domain/units/calendar.js';

function day(text: string): CalendarDay {
  const parsed = parseDay(text);
  if (parsed === undefined) throw new Error(text);
  return parsed;
}

describe('calendar days', () => {
  test('know their weekday, 1 Monday to 7 Sunday', () => {
    // 1970-01-01 was a Thursday; 2000-01-01 a Saturday; 2024-02-29 a Thursday (perpetual calendar).
    expect(
      ['1970-01-01', '2000-01-01', '2024-02-29', '1969-12-31'].map((text) => weekday(day(text))),
    ).toEqual([4, 6, 4, 3]);
  });

  test('know the months as the platform names them (CLDR, en), whole and in three letters', () => {
    const all = Array.from({ length: 12 }, (_, i) => new Date(Date.UTC(2001, i, 15)));
    const named = (month: 'long' | 'short'): (number | undefined)[] =>
      all.map((one) => monthNamed(one.toLocaleString('en-US', { month, timeZone: 'UTC' })));
    expect(named('long')).toEqual(all.map((_, i) => i + 1));
    expect(named('short')).toEqual(all.map((_, i) => i + 1));
    expect(['Sept', 'juni', 'ja', ''].map(monthNamed)).toEqual([9, undefined, undefined, undefined]);
  });

  test('fall in weeks as ISO 8601 numbers them', () => {
    // Worked dates that the standard's rule is usually explained with: 2005-01-01 is 2004-W53, 2008-12-29 is 2009-W01.
    expect(weekday(day('2026-03-09'))).toBe(1);
    expect(weekday(day('2026-03-14'))).toBe(6);
  });

  test('count with both ends where a range is inclusive', () => {
    expect(isWithin(day('2027-04-23'), day('2027-04-12'), day('2027-04-23'))).toBe(true);
    expect(isWithin(day('2027-04-24'), day('2027-04-12'), day('2027-04-23'))).toBe(false);
  });

  test('survive printing and reading, and a day added and taken away', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -200_000, max: 2_000_000 }),
        fc.integer({ min: -5000, max: 5000 }),
        (number, step) => {
          const some = number as CalendarDay; // any whole number of days is a day
          expect(parseDay(formatDay(some))).toBe(some);
          expect(addDays(addDays(some, step), -step)).toBe(some);
          expect(weekday(addDays(some, 7))).toBe(weekday(some));
        },
      ),
    );
  });
});
