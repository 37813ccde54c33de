// Reads a quantity as an author writes it: `8.4 mm`, `3/8 in`, `1 3/8"`, `110 h/week`, `58 EUR/h`, `1e3 kg`.
// Assumes nothing: a missing unit, a unit of another dimension or a decimal comma is told apart and, only where the
// meaning is certain, a correction is offered. Whether the value is sensible is for the rules to judge.

import type { Dimension } from './dimension.js';
import type { Quantity } from './quantity.js';
import { toBase, type Written } from './decimal.js';
import { suggestUnits, whyNot } from './unit-slips.js';
import { findUnit, unitsOf as spellingsOf } from './unit-table.js';

export interface Misread {
  readonly ok: false;
  readonly problem: 'missing unit' | 'unknown unit' | 'wrong dimension' | 'comma decimal' | 'not a number';
  /** The unit as written, where there is one. */
  readonly unit?: string;
  /** What the unit measures, where it is a known unit of another dimension. */
  readonly found?: Dimension;
  /** The whole text mended, only where the meaning is certain. */
  readonly corrected?: string;
  /** Where a comma could be a decimal point or a thousands separator: the text both ways, decimal first. */
  readonly readings?: readonly [string, string];
  /** Units the author may have meant, likeliest first. */
  readonly suggestions?: readonly string[];
  /** Why this unit is not taken, where people often try it: a month, a metric horsepower. */
  readonly note?: string;
}

export type Parsed<D extends Dimension = Dimension> =
  { readonly ok: true; readonly quantity: Quantity<D> } | Misread;

const shape = /^([+-]?)((?:\d+[ \t]+)?\d+\/\d+|\d[\d.,]*(?:[eE][+-]?\d+)?)[ \t]*(\S.*)?$/;

/**
 * The quantity in the base unit of `expected`, with the text kept as written (outer blanks removed).
 * A ratio may stand without a unit (`resistance factor 3`, `fill 0.45`); everything else needs one.
 */
export function parseQuantity<D extends Dimension>(text: string, expected: D): Parsed<D> {
  const trimmed = text.trim();
  const parts = shape.exec(trimmed);
  if (!parts) return { ok: false, problem: 'not a number' };
  const [, sign = '', number = '', spelling] = parts;

  if (number.includes(',')) return commaDecimal(sign, number, spelling, expected);
  const written = readNumber(sign, number);
  if (!written) return { ok: false, problem: 'not a number', ...(spelling ? { unit: spelling } : {}) };

  const unit = spelling ?? (expected === 'ratio' ? '1' : undefined);
  if (unit === undefined) return { ok: false, problem: 'missing unit', suggestions: spellingsOf(expected) };
  const found = findUnit(unit);
  if (!found) {
    const note = whyNot(unit);
    return {
      ok: false,
      problem: 'unknown unit',
      unit,
      suggestions: suggestUnits(unit, expected),
      ...(note ? { note } : {}),
    };
  }
  if (found.unit.dimension !== expected) {
    return {
      ok: false,
      problem: 'wrong dimension',
      unit,
      found: found.unit.dimension,
      suggestions: suggestUnits(unit, expected),
    };
  }
  const value = toBase(written, found.unit);
  if (!Number.isFinite(value)) return { ok: false, problem: 'not a number', unit };
  return {
    ok: true,
    quantity: {
      dimension: expected,
      value,
      text: trimmed,
      ...(found.currency ? { currency: found.currency } : {}),
    },
  };
}

/** Spellings an author may use for a dimension, commonest first; for money with a few currencies as examples. */
export function unitsOf(dimension: Dimension): readonly string[] {
  return spellingsOf(dimension);
}

function readNumber(sign: string, number: string): Written | undefined {
  const fraction = /^(?:(\d+)[ \t]+)?(\d+)\/(\d+)$/.exec(number);
  if (fraction) {
    const [whole, top, over] = [Number(fraction[1] ?? 0), Number(fraction[2]), Number(fraction[3])];
    const all = whole * over + top;
    if (over === 0 || !Number.isSafeInteger(all) || !Number.isSafeInteger(over)) return undefined;
    return { decimal: `${sign}${all}`, over };
  }
  if (!/^\d+(\.\d+)?([eE][+-]?\d+)?$/.test(number) || !Number.isFinite(Number(number))) return undefined;
  return { decimal: sign + number, over: 1 };
}

/** `8,4 mm` can only be 8.4; `12,000 h` can be twelve or twelve thousand, and nobody but the author knows. */
function commaDecimal(
  sign: string,
  number: string,
  spelling: string | undefined,
  expected: Dimension,
): Misread {
  const rest = spelling === undefined ? '' : ` ${spelling}`;
  const mended = (digits: string): string => `${sign}${digits}${rest}`;
  const problem = { ok: false, problem: 'comma decimal', ...(spelling ? { unit: spelling } : {}) } as const;
  const certain = (digits: string): Misread => {
    // What follows must at least look like a unit; otherwise nobody knows what the comma was for.
    if (spelling !== undefined && !/^\/?[\p{L}°%"]/u.test(spelling))
      return { ok: false, problem: 'not a number', unit: spelling };
    const suggestions = spelling === undefined ? spellingsOf(expected) : undefined;
    return { ...problem, corrected: mended(digits), ...(suggestions ? { suggestions } : {}) };
  };
  if (/^[1-9]\d{0,2},\d{3}$/.test(number)) {
    return { ...problem, readings: [mended(number.replace(',', '.')), mended(number.replace(',', ''))] };
  }
  if (/^\d+,\d+([eE][+-]?\d+)?$/.test(number)) return certain(number.replace(',', '.'));
  if (/^[1-9]\d{0,2}(,\d{3})+\.\d+$/.test(number) || /^[1-9]\d{0,2}(,\d{3}){2,}$/.test(number))
    return certain(number.replaceAll(',', ''));
  if (/^[1-9]\d{0,2}(\.\d{3})+,\d+$/.test(number))
    return certain(number.replaceAll('.', '').replace(',', '.'));
  return { ok: false, problem: 'not a number', ...(spelling ? { unit: spelling } : {}) };
}
