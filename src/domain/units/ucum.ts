// Unit codes for machine output, by the Unified Code for Units of Measure (UCUM, version 2.2). A value leaves the domain in
// its base unit, so one code a dimension is enough. UCUM has no currencies: a code stands as an annotation, `{EUR}`.

import type { Dimension } from './dimension.js';

const codes: Readonly<Record<Dimension, string>> = {
  length: 'mm',
  angle: 'deg',
  duration: 'h',
  mass: 'kg',
  temperature: 'Cel',
  force: 'N',
  power: 'kW',
  rotation: '/min',
  density: 'kg/m3',
  volume: 'm3',
  ratio: '1',
  'mass flow': 't/h',
  current: 'A',
  money: '',
  duty: 'h/d',
  expansion: '/K',
  stress: 'MPa',
  torque: 'N.m',
  velocity: 'm/s',
  'labour a length': 'h/m',
  'money a duration': '/h',
  'money a length': '/m',
};

/** UCUM code of a dimension's base unit; `currency` (ISO 4217) belongs to money and its rates, and is left out for the rest. */
export function ucumCode(dimension: Dimension, currency = 'money'): string {
  return dimension.startsWith('money') ? `{${currency}}${codes[dimension]}` : codes[dimension];
}
