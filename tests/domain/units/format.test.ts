import { describe, expect, test } from 'vitest';
import {
  formatChainage,
  formatHours,
  formatLength,
  formatMass,
  formatNumber,
  formatPercent,
  formatValue,
} from '../../../src/domain/units/format.js';

describe('formatValue', () => {
  // One space between number and unit, also before %: SI Brochure 9th ed., 5.4.3 and 5.4.7.
  test('prints a number, one space, a unit', () => {
    expect(formatValue(8.4, 'length')).toBe('8.4 mm');
    expect(formatValue(22_400, 'length', { unit: 'm', digits: 2 })).toBe('22.40 m');
    expect(formatValue(120 / 7, 'duty')).toBe('120 h/week');
    expect(formatValue(20, 'temperature', { unit: 'degF' })).toBe('68 degF');
    expect(formatValue(2e-4, 'expansion')).toBe('200 um/m/K');
    expect(formatValue(0.05, 'ratio')).toBe('5 %');
    expect(formatValue(58, 'money a duration', { currency: 'EUR' })).toBe('58 EUR/h');
    expect(formatValue(18_500, 'money', { unit: 'GBP', digits: 2 })).toBe('18500.00 GBP');
  });

  test('never prints an exponent, a minus before nothing, or trailing zeros nobody asked for', () => {
    expect(formatValue(1e-9, 'length')).toBe('0.000000001 mm');
    expect(formatValue(1e22, 'length')).toBe('10000000000000000000000 mm');
    expect(formatValue(-0.0001, 'length', { digits: 1 })).toBe('0.0 mm');
    expect(formatValue(100, 'length')).toBe('100 mm');
    expect(formatNumber(0.1 + 0.2)).toBe('0.3');
    expect(formatNumber(999_999.9)).toBe('1000000');
  });

  test('NaN, infinities, foreign units and nameless money are faults of ours and throw', () => {
    for (const bad of [NaN, Infinity, -Infinity]) {
      expect(() => formatValue(bad, 'length')).toThrow(RangeError);
      expect(() => formatPercent(bad)).toThrow(RangeError);
      expect(() => formatLength(bad)).toThrow(RangeError);
      expect(() => formatHours(bad)).toThrow(RangeError);
      expect(() => formatMass(bad)).toThrow(RangeError);
    }
    expect(() => formatValue(1, 'length', { unit: 'kg' })).toThrow(/length cannot be printed in "kg"/);
    expect(() => formatValue(1, 'money')).toThrow(RangeError);
  });
});

test('lengths, hours, masses and shares as people say them', () => {
  expect([8.42, 400, 999.4, 1000, 22_400, 1205, -3].map(formatLength)).toEqual([
    '8.4 mm',
    '400 mm',
    '999.4 mm',
    '1.00 m',
    '22.40 m',
    '1.205 m',
    '-3 mm',
  ]);
  expect([0, 6200, 12_405].map(formatChainage)).toEqual(['0.00 m', '6.20 m', '12.405 m']);
  expect([0, 6.54, 8120.4, 99.96].map(formatHours)).toEqual(['0 h', '6.5 h', '8120 h', '100 h']);
  expect([0, 0.45, 27.94, 463.2, 1268].map(formatMass)).toEqual([
    '0 kg',
    '0.45 kg',
    '27.9 kg',
    '463 kg',
    '1268 kg',
  ]);
  expect([0, 0.05, 0.1234, 1, 0.0004].map(formatPercent)).toEqual([
    '0 %',
    '5 %',
    '12.3 %',
    '100 %',
    '0.04 %',
  ]);
});
