// Exact decimal arithmetic for the one place that needs it: turning what an author wrote into the base unit.
// Binary floating point would make 12 in into 304.799 999 999 999 95 mm, and a rule comparing it with 304.8 mm would lie.

import type { Unit } from './unit-table.js';

interface Decimal {
  readonly digits: bigint;
  /** Power of ten of the last digit. */
  readonly power: number;
}

/** A number as written: decimal text over a whole denominator (1 unless it is a fraction of an inch). */
export interface Written {
  readonly decimal: string;
  readonly over: number;
}

/** Value in the unit's base unit, rounded once to the nearest double (twice where the factor is a fraction). */
export function toBase(written: Written, unit: Unit): number {
  const plain = Number(written.decimal);
  if (unit.times === '1' && !unit.over && !unit.shift && written.over === 1) return plain;
  // Outside these bounds exactness is not worth big integers of unbounded size.
  if (plain === 0 && !unit.shift) return 0;
  if (written.decimal.length > 40 || Math.abs(plain) > 1e30 || (plain !== 0 && Math.abs(plain) < 1e-30)) {
    return ((plain / written.over + Number(unit.shift ?? 0)) * Number(unit.times)) / Number(unit.over ?? 1);
  }
  const over = BigInt(written.over);
  const shift = multiply(decimal(unit.shift ?? '0'), { digits: over, power: 0 });
  const top = multiply(add(decimal(plain === 0 ? '0' : written.decimal), shift), decimal(unit.times));
  return divide(top, multiply(decimal(unit.over ?? '1'), { digits: over, power: 0 }));
}

function decimal(text: string): Decimal {
  const [mantissa = '0', exponent = '0'] = text.toLowerCase().split('e');
  const [whole = '0', fraction = ''] = mantissa.split('.');
  return { digits: BigInt(whole.replace('+', '') + fraction), power: Number(exponent) - fraction.length };
}

function multiply(a: Decimal, b: Decimal): Decimal {
  return { digits: a.digits * b.digits, power: a.power + b.power };
}

function add(a: Decimal, b: Decimal): Decimal {
  const power = Math.min(a.power, b.power);
  return {
    digits: a.digits * 10n ** BigInt(a.power - power) + b.digits * 10n ** BigInt(b.power - power),
    power,
  };
}

/** Exact where the quotient is a decimal of up to 25 digits; otherwise correct to 25 digits, far below a double's last. */
function divide(a: Decimal, b: Decimal): number {
  const places = 25 + Math.max(0, b.digits.toString().length - a.digits.toString().length);
  const quotient = (a.digits * 10n ** BigInt(places)) / b.digits;
  return Number(`${quotient}e${a.power - b.power - places}`);
}
