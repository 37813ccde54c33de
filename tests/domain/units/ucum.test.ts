import { expect, test } from 'vitest';
import type { Dimension } from '../../../src/domain/units/dimension.js';
import { baseUnit } from '../../../src/domain/units/dimension.js';
import { ucumCode } from '../../../src/domain/units/ucum.js';

test('codes are those of the Unified Code for Units of Measure', () => {
  // UCUM 2.2, case sensitive: deg (table 6), Cel and t (tables 4, 6), h and d (table 6), [annotations] in braces (§6).
  const known: Partial<Record<Dimension, string>> = {
    length: 'mm',
    temperature: 'Cel',
    rotation: '/min',
    expansion: '/K',
    duty: 'h/d',
    density: 'kg/m3',
  };
  for (const [dimension, code] of Object.entries(known)) expect(ucumCode(dimension as Dimension)).toBe(code);
  expect(ucumCode('money', 'EUR')).toBe('{EUR}');
  expect(ucumCode('money a duration', 'EUR')).toBe('{EUR}/h');
});

test('every dimension has one, of plain ASCII without blanks', () => {
  for (const dimension of Object.keys(baseUnit))
    expect(ucumCode(dimension as Dimension)).toMatch(/^[\x21-\x7e]+$/);
});
