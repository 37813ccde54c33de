// Prints a value of the base unit in a unit a reader wants: one space between number and unit (SI Brochure 5.4.3), a
// decimal point, no thousands separator, no exponent. A value that is not finite is a fault of ours and throws.

import type { Dimension } from './dimension.js';
import { findUnit, type Unit } from './unit-table.js';

export interface NumberFormat {
  /** Any spelling that parse.ts takes; for money the currency code or a rate such as `EUR/h`. */
  readonly unit?: string;
  /** Exactly so many decimals; left out: six significant digits without trailing zeros. */
  readonly digits?: number;
  /** ISO 4217 code; needed for money and its rates unless `unit` carries it. */
  readonly currency?: string;
}

/** What a reader expects to see when nobody asks for a unit. */
const shown: Readonly<Record<Dimension, string>> = {
  length: 'mm',
  angle: 'deg',
  duration: 'h',
  mass: 'kg',
  temperature: '°C',
  force: 'N',
  power: 'kW',
  rotation: 'rpm',
  density: 'kg/m3',
  volume: 'm3',
  ratio: '%',
  'mass flow': 't/h',
  current: 'A',
  money: '',
  duty: 'h/week',
  expansion: 'um/m/K',
  stress: 'MPa',
  torque: 'N·m',
  velocity: 'm/s',
  'labour a length': 'h/m',
  'money a duration': '/h',
  'money a length': '/m',
};

/**
 * `value` in the base unit of `dimension`, as text that parse.ts reads back.
 * Throws RangeError for NaN, an infinity, or a unit that is not one of the dimension.
 */
export function formatValue(value: number, dimension: Dimension, options: NumberFormat = {}): string {
  if (!Number.isFinite(value))
    throw new RangeError(`A ${dimension} cannot be printed: ${value} is not a number.`);
  const spelling = options.unit ?? (options.currency ?? '') + shown[dimension];
  const found = findUnit(spelling);
  if (found?.unit.dimension !== dimension)
    throw new RangeError(`A ${dimension} cannot be printed in "${spelling}".`);
  return `${formatNumber(fromBase(value, found.unit), options.digits)} ${spelling}`;
}

/** A plain number: exactly `digits` decimals, or six significant digits without trailing zeros. Throws on NaN. */
export function formatNumber(value: number, digits?: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} is not a number that can be printed.`);
  const text = digits === undefined ? significant(value, 6) : plain(value, digits);
  return /^-0(\.0*)?$/.test(text) ? text.slice(1) : text;
}

/** A length in mm: below a metre in mm (`8.4 mm`), from a metre up in metres (`22.40 m`, `1.205 m`). */
export function formatLength(mm: number): string {
  if (Math.abs(mm) < 999.5) return formatValue(tenths(mm), 'length');
  return formatChainage(mm);
}

/** A chainage in mm, always in metres to 10 mm, or to 1 mm where that would round: `6.20 m`, `12.405 m`. */
export function formatChainage(mm: number): string {
  const whole = Math.round(mm);
  return formatValue(whole, 'length', { unit: 'm', digits: whole % 10 === 0 ? 2 : 3 });
}

/** Hours, to the hour from 100 h, below that to a tenth: `8120 h`, `6.5 h`. */
export function formatHours(h: number): string {
  return formatValue(Math.abs(h) >= 99.95 ? Math.round(h) : tenths(h), 'duration');
}

/** A ratio as per cent, to three significant digits: 0.05 → `5 %`. */
export function formatPercent(ratio: number): string {
  if (!Number.isFinite(ratio)) throw new RangeError(`A ratio cannot be printed: ${ratio} is not a number.`);
  return `${formatNumber(Number((ratio * 100).toPrecision(3)))} %`;
}

/** A mass in kg, to three significant digits below 100 kg, then to the kilogram: `27.9 kg`, `463 kg`. */
export function formatMass(kg: number): string {
  const rounded = Math.abs(kg) >= 99.95 ? Math.round(kg) : Number(kg.toPrecision(3));
  return formatValue(rounded, 'mass');
}

function fromBase(value: number, unit: Unit): number {
  return (value * Number(unit.over ?? 1)) / Number(unit.times) - Number(unit.shift ?? 0);
}

function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}

function significant(value: number, figures: number): string {
  if (value === 0) return '0';
  const rounded = Number(value.toPrecision(figures));
  const places = Math.max(0, figures - 1 - Math.floor(Math.log10(Math.abs(rounded))));
  const text = plain(rounded, places);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** Fixed decimals without an exponent, whatever the size. */
function plain(value: number, digits: number): string {
  if (Math.abs(value) < 1e21) return value.toFixed(Math.min(digits, 100));
  return BigInt(value).toString() + (digits > 0 ? `.${'0'.repeat(digits)}` : '');
}
