// What an author probably meant by a unit that is not one: `mtr`, `RPM`, `Kg`, `hrs/wk`, `€`.
// A list of habits first, then capitals, then one slip of a finger; only units of the dimension that is wanted are offered.

import type { Dimension } from './dimension.js';
import { asRate, findUnit, unitsOf } from './unit-table.js';

/** By habit: lower-cased spelling → the units it may stand for. Each part of `a/b` is looked up on its own. */
const habits: Readonly<Record<string, readonly string[]>> = {
  mtr: ['m'],
  mtrs: ['m'],
  metre: ['m'],
  metres: ['m'],
  meter: ['m'],
  meters: ['m'],
  millimetre: ['mm'],
  millimetres: ['mm'],
  millimeter: ['mm'],
  millimeters: ['mm'],
  mms: ['mm'],
  mil: ['mm', 'in'],
  centimetre: ['cm'],
  centimetres: ['cm'],
  centimeter: ['cm'],
  centimeters: ['cm'],
  cms: ['cm'],
  micron: ['um'],
  microns: ['um'],
  ins: ['in'],
  '″': ['in'],
  '”': ['in'],
  "''": ['in'],
  '′': ['ft'],
  "'": ['ft'],
  degree: ['deg', 'degC'],
  degrees: ['deg', 'degC'],
  degs: ['deg'],
  º: ['deg'],
  hr: ['h'],
  hrs: ['h'],
  hour: ['h'],
  hours: ['h'],
  minute: ['min'],
  minutes: ['min'],
  mins: ['min'],
  m: ['min'],
  sec: ['s'],
  secs: ['s'],
  second: ['s'],
  seconds: ['s'],
  wk: ['week'],
  wks: ['week'],
  w: ['week'],
  kgs: ['kg'],
  kilo: ['kg'],
  kilos: ['kg'],
  kilogram: ['kg'],
  kilograms: ['kg'],
  gram: ['g'],
  grams: ['g'],
  gm: ['g'],
  tonne: ['t'],
  tonnes: ['t'],
  ton: ['t'],
  tons: ['t'],
  te: ['t'],
  mt: ['t'],
  lbs: ['lb'],
  pound: ['lb', 'GBP'],
  pounds: ['lb', 'GBP'],
  c: ['degC'],
  celsius: ['degC'],
  centigrade: ['degC'],
  ºc: ['degC'],
  f: ['degF'],
  fahrenheit: ['degF'],
  ºf: ['degF'],
  '°': ['degC'],
  deg: ['degC'],
  kelvin: ['K'],
  newton: ['N'],
  newtons: ['N'],
  kgf: ['N'],
  watt: ['W'],
  watts: ['W'],
  kilowatt: ['kW'],
  kilowatts: ['kW'],
  horsepower: ['hp'],
  bhp: ['hp'],
  ps: ['kW'],
  'min-1': ['rpm'],
  'r.p.m.': ['rpm'],
  'u/min': ['rpm'],
  rev: ['r'],
  revs: ['r'],
  percent: ['%'],
  pct: ['%'],
  pc: ['%'],
  amp: ['A'],
  amps: ['A'],
  ampere: ['A'],
  amperes: ['A'],
  euro: ['EUR'],
  euros: ['EUR'],
  '€': ['EUR'],
  '£': ['GBP'],
  $: ['USD'],
  'kg/cbm': ['kg/m3'],
  'm^3': ['m3'],
  m3: ['m3'],
  cbm: ['m3'],
  bar: ['MPa'],
  pa: ['MPa'],
  'm^2': ['m2'],
  h: ['h/week', 'h/d'],
  '1/°c': ['1/K'],
  '1/degc': ['1/K'],
  '/°c': ['1/K'],
  '/degc': ['1/K'],
};

/** Units that are left out on purpose, with the reason in one line. */
const refused: Readonly<Record<string, string>> = {
  month: 'a month is 28 to 31 days, so a duration in months is not exact: write weeks or days',
  year: 'a year is 365 or 366 days, so a duration in years is not exact: write weeks or days',
  ps: 'a metric horsepower (PS, CV) differs from hp: write kW (1 PS = 0.735 498 75 kW)',
  bar: 'write MPa (1 bar = 0.1 MPa)',
  kgf: 'write N (1 kgf = 9.806 65 N)',
  ton: 'a ton can be 907, 1000 or 1016 kg: write t for 1000 kg, or kg',
  mil: 'a mil is a thousandth of an inch to some and a millimetre to others: write mm, um or in',
};

/** Why a unit is left out on purpose; undefined for plain slips. */
export function whyNot(unit: string): string | undefined {
  const key = unit.toLowerCase();
  return refused[key] ?? refused[key.replace(/s$/, '')];
}

/** Units of the expected dimension that `unit` may stand for, likeliest first; empty where nothing is near. */
export function suggestUnits(unit: string, expected: Dimension): readonly string[] {
  const near = new Set<string>();
  const offer = (candidate: string): void => {
    if (candidate !== unit && findUnit(candidate)?.unit.dimension === expected) near.add(candidate);
  };
  const key = asRate(unit.toLowerCase());
  for (const whole of Object.hasOwn(habits, key) ? (habits[key] ?? []) : []) offer(whole);
  for (const candidate of respell(key)) offer(candidate);
  if (/^(month|year)s?$/.test(key)) ['week', 'd'].forEach(offer);
  offer(key.slice(0, 3).toUpperCase() + key.slice(3));
  for (const known of unitsOf(expected)) if (known.toLowerCase() === key) offer(known);
  if (near.size === 0 && unit.length > 1)
    for (const known of unitsOf(expected))
      if (known.length > 1 && oneSlip(known.toLowerCase(), key)) offer(known);
  return [...near];
}

/** Every way of replacing the parts of `a/b/c` by what habit says they stand for. */
function respell(key: string): readonly string[] {
  const parts = key.split('/');
  if (parts.length > 3) return [];
  const choices = parts.map((part) => [
    part,
    ...(Object.hasOwn(habits, part) ? (habits[part] ?? []) : []),
    ...(part === 'hour' ? ['h'] : []),
  ]);
  return choices.reduce<readonly string[]>(
    (made, choice) => made.flatMap((left) => choice.map((part) => (left === '' ? part : `${left}/${part}`))),
    [''],
  );
}

/** One letter added, left out, changed, or two neighbours swapped. */
function oneSlip(a: string, b: string): boolean {
  if (Math.abs(a.length - b.length) > 1 || a === b) return false;
  let i = 0;
  while (i < a.length && i < b.length && a[i] === b[i]) i++;
  const [restA, restB] = [a.slice(i), b.slice(i)];
  return (
    restA.slice(1) === restB ||
    restA === restB.slice(1) ||
    restA.slice(1) === restB.slice(1) ||
    (restA[0] === restB[1] && restA[1] === restB[0] && restA.slice(2) === restB.slice(2))
  );
}
