import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Dimension } from '../../../src/domain/units/dimension.js';
import { baseUnit } from '../../../src/domain/units/dimension.js';
import { formatValue } from '../../../src/domain/units/format.js';
import { parseQuantity, unitsOf } from '../../../src/domain/units/parse.js';
import { findUnit, isCurrency } from '../../../src/domain/units/unit-table.js';

function value(text: string, dimension: Dimension): number {
  const parsed = parseQuantity(text, dimension);
  if (!parsed.ok) throw new Error(`${text}: ${parsed.problem}`);
  return parsed.quantity.value;
}

describe('exact factors', () => {
  // Each factor is exact by definition. SI: SI Brochure 9th ed. (2019), tables 2 to 8. NIST: SP 811 (2008), appendix B.8.
  const exact: [text: string, dimension: Dimension, base: number, source: string][] = [
    ['1 in', 'length', 25.4, 'NIST: inch, international yard and pound agreement 1959'],
    ['12 in', 'length', 304.8, 'NIST: 12 in = 1 ft = 0.3048 m'],
    ['1 ft', 'length', 304.8, 'NIST: foot'],
    ['1 um', 'length', 0.001, 'SI: micro 1e-6'],
    ['1 cm', 'length', 10, 'SI: centi 1e-2'],
    ['22.4 m', 'length', 22_400, 'SI'],
    ['1 rad', 'angle', 180 / Math.PI, 'SI table 8: 1° = (π/180) rad'],
    ['1 min', 'duration', 1 / 60, 'SI table 8'],
    ['1 s', 'duration', 1 / 3600, 'SI table 8'],
    ['1 d', 'duration', 24, 'SI table 8'],
    ['1 week', 'duration', 168, 'NIST: 7 d'],
    ['1 lb', 'mass', 0.45359237, 'NIST: pound (avoirdupois), exact'],
    ['1 t', 'mass', 1000, 'SI table 8: tonne'],
    ['500 g', 'mass', 0.5, 'SI'],
    ['293.15 K', 'temperature', 20, 'SI 2.3.1: t/°C = T/K − 273.15'],
    ['212 degF', 'temperature', 100, 'NIST: t/°C = (t/°F − 32)/1.8; water boils'],
    ['-40 degF', 'temperature', -40, 'NIST: the two scales meet'],
    ['1 lbf', 'force', 4.4482216152605, 'NIST: 0.45359237 kg × 9.80665 m/s², exact'],
    ['1 kN', 'force', 1000, 'SI'],
    ['1 hp', 'power', 0.74569987158227022, 'NIST: 550 ft·lbf/s, exact'],
    ['400 W', 'power', 0.4, 'SI'],
    ['18 1/min', 'rotation', 18, 'ISO 80000-3: rotational frequency'],
    [
      '1 lb/ft3',
      'density',
      16.018463373960139,
      'NIST: 1.601 846 E+01; the quotient of the exact pound and foot',
    ],
    ['0.93 g/cm3', 'density', 930, 'SI'],
    ['1 t/m³', 'density', 1000, 'SI'],
    ['5 %', 'ratio', 0.05, 'SI 5.4.7'],
    ['24 t/d', 'mass flow', 1, 'SI'],
    ['168 t/week', 'mass flow', 1, 'SI'],
    ['1 lb/h', 'mass flow', 0.00045359237, 'NIST: pound'],
    ['250 mA', 'current', 0.25, 'SI'],
    ['168 h/week', 'duty', 24, 'every hour of the week'],
    ['168 h per week', 'duty', 24, 'the same, said'],
    ['168 hours a week', 'duty', 24, 'the same, said'],
    ['24 t per day', 'mass flow', 1, 'SI'],
    ['8 hours a day', 'duty', 8, 'the same, said'],
    ['200 um/m/K', 'expansion', 200e-6, 'SI'],
    ['0.2 mm/m/K', 'expansion', 200e-6, 'SI'],
    ['200 ppm/K', 'expansion', 200e-6, 'parts per million'],
    ['1 GPa', 'stress', 1000, 'SI'],
    ['1000 psi', 'stress', 6.894757293168361, 'NIST: psi 6.894 757 E+03 Pa; lbf over square inch'],
    ['1 N/mm2', 'stress', 1, 'SI: 1 N/mm² = 1 MPa'],
    ['20 Nm', 'torque', 20, 'SI: newton metre'],
    ['10 lbf·ft', 'torque', 13.558179483314004, 'NIST: 1.355 818 E+00 N·m'],
    ['10 lbf·in', 'torque', 1.129848290276167, 'NIST: 1.129 848 E-01 N·m'],
    ['1 ft/s', 'velocity', 0.3048, 'NIST: foot'],
    ['30 min/m', 'labour a length', 0.5, 'SI table 8'],
    ['0.3048 h/ft', 'labour a length', 1, 'NIST: foot'],
    ['58 EUR/h', 'money a duration', 58, 'ISO 4217 code, an hour'],
    ['18500 EUR', 'money', 18_500, 'ISO 4217'],
  ];
  test.each(exact)('%s as %s is %d (%#)', (text, dimension, base) => {
    expect(value(text, dimension)).toBe(base);
  });

  test('a foot is a third of a yard, so 1219.2 mm is 4 ft and 25.4 GPa·mm is not rounded away', () => {
    expect(value('4 ft', 'length')).toBe(1219.2);
    expect(value('1.005 m', 'length')).toBe(1005); // 1.005 × 1000 is 1004.9999999999999 in binary
  });
});

describe('forms', () => {
  test.each([
    ['3/8 in', 9.525],
    ['1 3/8 in', 34.925],
    ['1 3/8"', 34.925],
    ['14"', 355.6],
    ['-3/8 in', -9.525],
    ['8.4mm', 8.4],
    ['8.4   mm', 8.4],
    ['  8.4 mm ', 8.4],
    ['+2 mm', 2],
    ['1e3 mm', 1000],
    ['1E-1 m', 100],
  ])('%s', (text, mm) => expect(value(text, 'length')).toBe(mm));

  test('the text is kept as written', () => {
    expect(parseQuantity(' 3/8 in', 'length')).toEqual({
      ok: true,
      quantity: { dimension: 'length', value: 9.525, text: '3/8 in' },
    });
  });

  test('a ratio may stand without a unit, and nothing else may', () => {
    expect(value('3', 'ratio')).toBe(3);
    expect(parseQuantity('3', 'length')).toMatchObject({
      ok: false,
      problem: 'missing unit',
      suggestions: expect.arrayContaining(['mm', 'm', 'in']),
    });
  });

  test('money keeps its currency', () => {
    expect(parseQuantity('58 EUR/h', 'money a duration')).toMatchObject({
      ok: true,
      quantity: { currency: 'EUR' },
    });
    expect(parseQuantity('12 XYZ', 'money')).toMatchObject({ ok: false, problem: 'unknown unit' });
  });

  test.each([
    '',
    'mm',
    'abc',
    '3/0 in',
    '1e999 kg',
    '.5 mm',
    '1.2.3 mm',
    '--1 mm',
    '1/2/3 in',
    '1 2 mm',
    'NaN mm',
    'Infinity mm',
    '0x10 mm',
  ])('%j is no length', (text) => {
    expect(parseQuantity(text, 'length')).toMatchObject({ ok: false });
  });

  test('numbers of any size are read without blowing up', () => {
    expect(parseQuantity(`${'9'.repeat(5000)} in`, 'length')).toMatchObject({
      ok: false,
      problem: 'not a number',
    });
    expect(value('1e-999999999 in', 'length')).toBe(0);
    expect(value(`0.${'3'.repeat(5000)} in`, 'length')).toBeCloseTo(25.4 / 3, 9);
  });
});

describe('commas', () => {
  test.each([
    ['8,4 mm', '8.4 mm'],
    ['22,40 m', '22.40 m'],
    ['0,125 in', '0.125 in'],
    ['1200,500 mm', '1200.500 mm'],
    ['-5,5 degC', '-5.5 degC'],
    ['1,234.5 mm', '1234.5 mm'],
    ['1.234,5 mm', '1234.5 mm'],
    ['1,234,567 h', '1234567 h'],
    ['8,4', '8.4'],
  ])('%s can only be %s', (text, corrected) => {
    expect(parseQuantity(text, 'length')).toMatchObject({ ok: false, problem: 'comma decimal', corrected });
  });

  test('12,000 h may be twelve or twelve thousand: both are shown and neither is chosen', () => {
    const read = parseQuantity('12,000 h', 'duration');
    expect(read).toMatchObject({ ok: false, problem: 'comma decimal', readings: ['12.000 h', '12000 h'] });
    expect(read).not.toHaveProperty('corrected');
  });
});

describe('units that are not', () => {
  test.each<[string, Dimension, string[]]>([
    ['22.4 mtr', 'length', ['m']],
    ['18 RPM', 'rotation', ['rpm']],
    ['5 Kg', 'mass', ['kg']],
    ['6 hrs', 'duration', ['h']],
    ['6 Hours', 'duration', ['h']],
    ['8 MM', 'length', ['mm']],
    ['110 hrs/wk', 'duty', ['h/week']],
    ['58 €/h', 'money a duration', ['EUR/h']],
    ['58 eur', 'money', ['EUR']],
    ['20 C', 'temperature', ['degC']],
    ['70 F', 'temperature', ['degF']],
    ['930 kg/m^3', 'density', ['kg/m3']],
    ['5 KW', 'power', ['kW']],
    ['12 percent', 'ratio', ['%']],
    ['10 tonnes', 'mass', ['t']],
    ['5 pis', 'stress', ['psi']],
    ['15 amps', 'current', ['A']],
  ])('%s as %s', (text, dimension, suggestions) => {
    expect(parseQuantity(text, dimension)).toMatchObject({ ok: false, problem: 'unknown unit', suggestions });
  });

  test('a unit that measures something else says what', () => {
    expect(parseQuantity('8 kg', 'length')).toMatchObject({
      ok: false,
      problem: 'wrong dimension',
      unit: 'kg',
      found: 'mass',
    });
    expect(parseQuantity('110 h', 'duty')).toMatchObject({
      problem: 'wrong dimension',
      found: 'duration',
      suggestions: ['h/week', 'h/d'],
    });
    expect(parseQuantity('5 m', 'duration')).toMatchObject({
      problem: 'wrong dimension',
      suggestions: ['min'],
    });
  });

  test('a month is refused with the reason', () => {
    expect(parseQuantity('3 months', 'duration')).toMatchObject({
      problem: 'unknown unit',
      suggestions: ['week', 'd'],
      note: expect.stringContaining('28 to 31 days'),
    });
  });

  test('names of object members are no units and no habits', () => {
    for (const word of ['constructor', '__proto__', 'toString', 'hasOwnProperty']) {
      expect(parseQuantity(`5 ${word}`, 'length')).toMatchObject({
        ok: false,
        problem: 'unknown unit',
        suggestions: [],
      });
    }
  });
});

describe('every unit', () => {
  const dimensions = Object.keys(baseUnit) as Dimension[];

  test('that is offered is read as its dimension', () => {
    for (const dimension of dimensions) {
      expect(unitsOf(dimension).length).toBeGreaterThan(0);
      for (const unit of unitsOf(dimension))
        expect(parseQuantity(`1 ${unit}`, dimension).ok, `${unit} as ${dimension}`).toBe(true);
    }
  });

  test('survives printing and reading again', () => {
    const cases = dimensions.flatMap((dimension) => unitsOf(dimension).map((unit) => ({ dimension, unit })));
    fc.assert(
      fc.property(
        fc.constantFrom(...cases),
        fc.double({ min: -1e9, max: 1e9, noNaN: true }),
        ({ dimension, unit }, base) => {
          const text = formatValue(base, dimension, { unit, digits: 12 });
          const again = value(text, dimension);
          const unitSize = Math.abs(value(`1 ${unit}`, dimension) - value(`0 ${unit}`, dimension));
          // Twelve decimals of the unit, and a double's own last digits.
          expect(Math.abs(again - base)).toBeLessThanOrEqual(
            unitSize * 1e-12 + Math.abs(base) * 1e-14 + 1e-11,
          );
        },
      ),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...cases),
        fc.integer({ min: -1e9, max: 1e9 }),
        ({ dimension, unit }, thousandths) => {
          const text = `${(thousandths / 1000).toFixed(3)} ${unit}`.replace('-0.000', '0.000');
          expect(formatValue(value(text, dimension), dimension, { unit, digits: 3 })).toBe(text);
        },
      ),
    );
  });

  test('a comma before something that is no unit is not mended', () => {
    expect(parseQuantity('0,0/,', 'length')).toEqual({ ok: false, problem: 'not a number', unit: '/,' });
    expect(parseQuantity('1,5 ,mm', 'length')).toEqual({ ok: false, problem: 'not a number', unit: ',mm' });
  });

  test('any text at all is read without throwing', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.stringMatching(/^[-+0-9.,eE/ ]{0,12} ?[a-zA-Z%/"°0-9]{0,8}$/)),
        fc.constantFrom(...dimensions),
        (text, dimension) => {
          const read = parseQuantity(text, dimension);
          if (read.ok) expect(Number.isFinite(read.quantity.value)).toBe(true);
          else if (read.corrected !== undefined) expect(read.corrected).not.toMatch(/^[^a-zA-Z]*,/);
        },
      ),
      { numRuns: 2000 },
    );
  });
});

test('currency codes are those of the platform’s own table, where both know them', () => {
  // ICU's list (CLDR) holds current and former codes; every code we take must be among them, and the trade's usual ones with us.
  const platform = new Set(Intl.supportedValuesOf('currency'));
  const ours = [...platform].filter(isCurrency);
  expect(ours.length).toBeGreaterThan(140);
  for (const code of [
    'EUR',
    'GBP',
    'USD',
    'CHF',
    'SEK',
    'NOK',
    'DKK',
    'PLN',
    'CZK',
    'HUF',
    'RON',
    'TRY',
    'INR',
    'JPY',
    'CNY',
    'AUD',
    'NZD',
    'CAD',
    'BRL',
    'ZAR',
  ])
    expect(platform.has(code) && isCurrency(code), code).toBe(true);
  expect(isCurrency('DEM')).toBe(false);
  expect(findUnit('EUR/d')).toBeUndefined();
});
