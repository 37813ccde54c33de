// Dates, clock positions, numbers and measures as people type them, one by one. Days are checked against the platform's own
// calendar, inches against 25.4 mm (the international inch of 1959), serial numbers against the days that ECMA-376 counts from.

import { describe, expect, test } from 'vitest';
import { formatDay } from '../../src/domain/units/calendar.js';
import type { SheetCell } from '../../src/exchange/table.js';
import { readClock, type ClockForm } from '../../src/exchange/values/clock.js';
import { hasShortYear, ordersOf, readDay, type DayOrder } from '../../src/exchange/values/day.js';
import { readMeasure } from '../../src/exchange/values/measure.js';
import { readDigits } from '../../src/exchange/values/number.js';

const text = (value: string): SheetCell => ({ kind: 'text', text: value });
const number = (value: number, kind: 'number' | 'date' = 'number'): SheetCell => ({
  kind,
  text: String(value),
  number: value,
});

function day(
  cell: SheetCell,
  order?: DayOrder,
  more: { numbersFrom?: 1900 | 1904; century?: number; dateSystem?: 1900 | 1904 } = {},
): string {
  const read = readDay(cell, {
    order,
    numbersFrom: undefined,
    century: undefined,
    dateSystem: 1900,
    ...more,
  });
  return read.ok ? formatDay(read.day) : read.why;
}

describe('days', () => {
  test.each<[string, DayOrder | undefined, string]>([
    ['2024-11-03', undefined, '2024-11-03'],
    ['2024-11-03 14:20', undefined, '2024-11-03'],
    ['2024-11-03T23:59:59.500Z', undefined, '2024-11-03'],
    ['3 Nov 2024', undefined, '2024-11-03'],
    ['Sunday, 3rd november 2024', undefined, '2024-11-03'],
    ['Nov 3, 2024', undefined, '2024-11-03'],
    ['03-Nov-2024', undefined, '2024-11-03'],
    ['03.11.2024', 'day-month-year', '2024-11-03'],
    ['03.11.2024', 'month-day-year', '2024-03-11'],
    ['11/3/2024 2:15 pm', 'month-day-year', '2024-11-03'],
    ['2024/11/03', 'year-month-day', '2024-11-03'],
    ['29.02.2024', 'day-month-year', '2024-02-29'],
  ])('%s in the order %s is %s', (typed, order, meant) => {
    expect(day(text(typed), order)).toBe(meant);
  });

  test.each<[string, DayOrder | undefined, string]>([
    ['03.11.2024', undefined, 'the mapping does not say in which order'],
    ['29.02.2023', 'day-month-year', 'is not a day of the calendar'],
    ['13/25/2024', 'month-day-year', 'is not a day of the calendar'],
    ['2024/11/03', 'day-month-year', 'does not stand in the order'],
    ['03.11.24', 'day-month-year', 'which century'],
    ['3 Frimaire 2024', undefined, 'is not a day of the calendar'],
    ['soon', 'day-month-year', 'is not a date'],
    ['45599', undefined, 'is a number and no date'],
    ['03.11/2024', 'day-month-year', 'is not a date'],
  ])('%s in the order %s is none: %s', (typed, order, why) => {
    expect(day(text(typed), order)).toContain(why);
  });

  test('count from 1900 or 1904, and a time of day is no day', () => {
    // ECMA-376 18.17.4.1: both systems show the same day 1,462 apart.
    expect(day(number(36_526, 'date'))).toBe('2000-01-01');
    expect(day(number(36_526 - 1462, 'date'), undefined, { dateSystem: 1904 })).toBe('2000-01-01');
    expect(day(number(45_599.99), undefined, { numbersFrom: 1900 })).toBe('2024-11-03');
    expect(day(text('45599'), undefined, { numbersFrom: 1904 })).toBe('2028-11-04');
    expect(day(number(0.208333, 'date'))).toContain('is not a day');
    expect(day(text('3.11.24'), 'day-month-year', { century: 2000 })).toBe('2024-11-03');
  });

  test('which orders are open', () => {
    expect(ordersOf('03.11.2024')).toEqual(['day-month-year', 'month-day-year']);
    expect(ordersOf('14.11.2024')).toEqual(['day-month-year']);
    expect(ordersOf('11/14/2024')).toEqual(['month-day-year']);
    expect(ordersOf('2024-11-03')).toEqual([]);
    expect([hasShortYear('3.11.24'), hasShortYear('3.11.2024'), hasShortYear('3 Nov 24')]).toEqual([
      true,
      false,
      true,
    ]);
  });

  test('every day of forty years, in every order, as the calendar of the platform has it', () => {
    for (let at = Date.UTC(1995, 0, 1); at < Date.UTC(2035, 0, 1); at += 86_400_000) {
      const iso = new Date(at).toISOString().slice(0, 10);
      const [y = '', m = '', d = ''] = iso.split('-');
      expect(day(text(`${d}.${m}.${y}`), 'day-month-year')).toBe(iso);
      expect(day(text(`${m}/${d}/${y}`), 'month-day-year')).toBe(iso);
      expect(day(number(at / 86_400_000 + 25_569, 'date'))).toBe(iso);
    }
  });
});

describe('clock positions', () => {
  const clock = (cell: SheetCell, form: ClockForm = 'time'): string => {
    const read = readClock(cell, form, '.');
    return read.ok ? read.clock.text : read.why;
  };

  test.each<[SheetCell, ClockForm, string]>([
    [text('5:00'), 'time', '5:00'],
    [text('05:00:00'), 'time', '5:00'],
    [text("5 o'clock"), 'time', '5:00'],
    [text('5:30 o’clock'), 'time', '5:30'],
    [text('7 Uhr'), 'time', '7:00'],
    [text('12:30'), 'time', '12:30'],
    [number(5), 'time', '5:00'],
    [number(0.20833333333333334, 'date'), 'time', '5:00'],
    [number(0.3125), 'time', '7:30'],
    [number(0.5, 'date'), 'time', '12:00'],
    [text('7.5'), 'hours', '7:30'],
    [number(7.5), 'hours', '7:30'],
    [text('150°'), 'degrees from 12', '5:00'],
    [number(45), 'degrees from 6', '7:30'],
    [number(0), 'degrees from 12', '12:00'],
    [number(360), 'degrees from 12', '12:00'],
    [text('330 deg'), 'degrees from 6', '5:00'],
  ])('%j as %s is %s', (cell, form, meant) => {
    expect(clock(cell, form)).toBe(meant);
  });

  test.each<[SheetCell, ClockForm, string]>([
    [text('7.5'), 'time', 'is not a clock position for sure'],
    [text('17:00'), 'time', 'is not on the face of a clock'],
    [number(0.75, 'date'), 'time', 'is not on the face of a clock'],
    [number(0.2084, 'date'), 'time', 'is not a whole minute'],
    [number(45_599, 'date'), 'time', 'is not a clock position'],
    [number(7.5), 'time', 'is not a clock position for sure'],
    [text('13'), 'hours', 'is not between 0 and 12'],
    [number(361), 'degrees from 12', 'is not between 0 and 360'],
    [text('bottom'), 'time', 'is not a clock position for sure'],
    [text('0:30'), 'time', 'is not on the face of a clock'],
  ])('%j as %s is none: %s', (cell, form, why) => {
    expect(clock(cell, form)).toContain(why);
  });
});

describe('numbers', () => {
  test.each<[string, '.' | ',', string]>([
    ['8,4', ',', '8.4'],
    ['1.234,5', ',', '1234.5'],
    ['1 234,50', ',', '1234.50'],
    ["1'234.5", '.', '1234.5'],
    ['1,234', '.', '1234'],
    ['.85', '.', '0.85'],
    ['+007', '.', '7'],
    ['8.', '.', '8'],
    ['12\u00a0345', ',', '12345'],
  ])('%s with the mark %s is %s', (typed, mark, digits) => {
    expect(readDigits(typed, mark)).toEqual({ ok: true, digits });
  });

  test.each<[string, '.' | ',']>([
    ['8.4', ','],
    ['8,4', '.'],
    ['1,23,456', '.'],
    ['1.2.3', '.'],
    ['-8.4', '.'],
    ['−8,4', ','],
    ['1e3', '.'],
    ['8,4,', ','],
    ['', '.'],
    ['0x10', '.'],
  ])('%j with the mark %s is none', (typed, mark) => {
    expect(readDigits(typed, mark).ok).toBe(false);
  });
});

describe('measures', () => {
  const length = (
    cell: SheetCell,
    unit?: string,
    decimal?: '.' | ',',
  ): string | readonly [string, number] => {
    const read = readMeasure(cell, { dimension: 'length', unit, decimal });
    return read.ok ? [read.measure.text, Number(read.measure.value.toFixed(9))] : read.why;
  };

  test.each<[SheetCell, string | undefined, '.' | ',' | undefined, readonly [string, number]]>([
    [text('8,4'), 'mm', ',', ['8.4 mm', 8.4]],
    [text('8,4mm'), undefined, ',', ['8.4 mm', 8.4]],
    [text('0.33 inch'), 'mm', '.', ['0.33 in', 8.382]],
    [text('3/8"'), undefined, undefined, ['3/8 in', 9.525]],
    [text('1 3/8'), 'in', undefined, ['1 3/8 in', 34.925]],
    [number(8.399999999999999), 'mm', undefined, ['8.4 mm', 8.4]],
    [number(1e-7), 'm', undefined, ['0.0000001 m', 0.0001]],
    [text('12'), 'mm', undefined, ['12 mm', 12]],
    [text('620 Millimetres'), undefined, undefined, ['620 mm', 620]],
  ])('%j in %s is %j', (cell, unit, decimal, meant) => {
    expect(length(cell, unit, decimal)).toEqual(meant);
  });

  test.each<[SheetCell, string | undefined, '.' | ',' | undefined, string]>([
    [text('8,4'), 'mm', undefined, 'does not say which decimal mark'],
    [text('8.4'), undefined, '.', 'has no unit'],
    [text('8.4 h'), undefined, '.', 'is not a unit of length'],
    [text('8.4 mil'), undefined, '.', 'is not a unit of length'],
    [text('3/8'), 'mm', '.', 'is a fraction, and not of inches'],
    [text('<3'), 'mm', '.', 'is not a number'],
    [text('8.4/8.6'), 'mm', '.', 'is not a number'],
    [number(-1), 'mm', undefined, 'is below zero'],
    [number(NaN), 'mm', undefined, 'is not a number'],
    [number(45_599, 'date'), 'mm', undefined, 'is a date and not a measurement'],
    [{ kind: 'error', text: '#DIV/0!' }, 'mm', undefined, 'holds #DIV/0!'],
  ])('%j in %s is none: %s', (cell, unit, decimal, why) => {
    expect(length(cell, unit, decimal)).toContain(why);
  });
});
