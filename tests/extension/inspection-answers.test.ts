import { describe, expect, test } from 'vitest';
import { wrongDate, wrongMeter } from '../../src/extension/features/inspection-answers.js';

describe('the date of a new inspection', () => {
  test.each([
    ['2026-03-14', undefined],
    ['2028-02-29', undefined],
    ['2026-02-30', 'no such date'],
    ['2026-02-29', 'no such date'],
    ['2026-13-01', 'no such date'],
    ['14.03.2026', 'form'],
    ['2026-3-14', 'form'],
  ])('%s: %s', (text, wrong) => expect(wrongDate(text)).toBe(wrong));
});

describe('the meter of a new inspection', () => {
  const newest = { date: '2026-02-03', meter: '5100 h', hours: 5100 };
  test.each([
    ['5200 h', '2026-03-14', undefined],
    ['5100', '2026-03-14', undefined],
    ['5099.9 h', '2026-03-14', 'runs back'],
    ['4000 h', '2025-12-01', undefined], // an older look, written down late
    ['soon', '2026-03-14', 'form'],
    ['5200 km', '2026-03-14', 'form'],
  ])('%s on %s: %s', (text, date, wrong) => expect(wrongMeter(text, date, newest)).toBe(wrong));
  test('a meter that was changed since may show anything', () =>
    expect(wrongMeter('12 h', '2026-03-14', { date: '2026-02-03', meter: '5100 h' })).toBeUndefined());
});
