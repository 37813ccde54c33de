// A measured value of a cell, as the language writes it: digits and a unit. The unit that stands in the cell comes before the
// column's; without either there is no value, because a number without a unit is no measurement.

import type { Dimension } from '../../domain/units/dimension.js';
import { parseQuantity } from '../../domain/units/parse.js';
import { findUnit } from '../../domain/units/unit-table.js';
import type { SheetCell } from '../table.js';
import { digitsOf, readDigits, type Decimal } from './number.js';

export interface Measure {
  /** `8.4 mm` */
  readonly text: string;
  /** In the base unit of its dimension. */
  readonly value: number;
}

export type ReadMeasure =
  | { readonly ok: true; readonly measure: Measure }
  /** `number`: it is a number, so that no word can be meant. */
  | { readonly ok: false; readonly why: string; readonly number: boolean };

export interface MeasureStated {
  readonly dimension: Dimension;
  /** Of the column; undefined where each cell says its own. */
  readonly unit: string | undefined;
  readonly decimal: Decimal | undefined;
}

const shape =
  /^(\d+ \d+\/\d+|\d+\/\d+|[-+−]?[\d.,]*\d(?:[ \u00a0\u2009\u202f'.,]\d+)*[.,]?)\s*([^\d\s.,/].*)?$/;

export function readMeasure(cell: SheetCell, stated: MeasureStated): ReadMeasure {
  if (cell.kind === 'error') return { ok: false, why: `holds ${cell.text}`, number: true };
  if (cell.kind === 'date')
    return { ok: false, why: `${cell.text} is a date and not a measurement`, number: true };
  const parts = cell.kind === 'number' ? undefined : shape.exec(cell.text);
  if (cell.kind === 'text' && !parts)
    return { ok: false, why: `${cell.text} is not a number`, number: false };
  const spelled = parts?.[2] ?? stated.unit;
  if (spelled === undefined) return { ok: false, why: `${cell.text} has no unit`, number: true };
  const unit = unitOf(spelled, stated.dimension);
  if (unit === undefined)
    return { ok: false, why: `"${spelled}" is not a unit of ${stated.dimension}`, number: true };
  const digits = cell.kind === 'number' ? ownDigits(cell) : digitsIn(parts?.[1] ?? '', unit, stated.decimal);
  if (!digits.ok) return { ...digits, number: true };
  const text = `${digits.digits} ${unit}`;
  const read = parseQuantity(text, stated.dimension);
  if (!read.ok) return { ok: false, why: `${cell.text} is not a number`, number: true };
  return { ok: true, measure: { text, value: read.quantity.value } };
}

type Digits = ReturnType<typeof readDigits>;

function ownDigits({ number = NaN, text }: SheetCell): Digits {
  if (!Number.isFinite(number)) return { ok: false, why: `${text} is not a number` };
  if (number < 0) return { ok: false, why: `${text} is below zero` };
  return { ok: true, digits: digitsOf(number) };
}

/** Without a stated mark only what has none can be read. */
function digitsIn(text: string, unit: string, decimal: Decimal | undefined): Digits {
  if (text.includes('/'))
    return unit === 'in'
      ? { ok: true, digits: text }
      : { ok: false, why: `${text} is a fraction, and not of inches` };
  if (decimal === undefined && /[.,]/.test(text))
    return {
      ok: false,
      why: `${text}: the mapping does not say which decimal mark is meant (decimal: "." or ",")`,
    };
  return readDigits(text, decimal ?? '.');
}

const spellings: Readonly<Record<string, string>> = {
  millimetre: 'mm',
  millimetres: 'mm',
  millimeter: 'mm',
  millimeters: 'mm',
  metre: 'm',
  metres: 'm',
  meter: 'm',
  meters: 'm',
  ins: 'in',
  inch: 'in',
  inches: 'in',
  '”': 'in',
  '″': 'in',
  "''": 'in',
  hour: 'h',
  hours: 'h',
  hr: 'h',
  hrs: 'h',
  std: 'h',
  'std.': 'h',
  stunden: 'h',
  tonne: 't',
  tonnes: 't',
  tons: 't',
  to: 't',
};

/** The language's name of a unit, as a sheet may spell it; undefined where it is none of the dimension. */
export function unitOf(spelled: string, dimension: Dimension): string | undefined {
  const tidy = spelled.trim().replace(/\.$/, '');
  const found =
    findUnit(tidy) ?? findUnit(tidy.toLowerCase()) ?? findUnit(spellings[tidy.toLowerCase()] ?? '');
  return found?.unit.dimension === dimension ? found.unit.name : undefined;
}
