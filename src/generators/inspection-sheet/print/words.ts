// Lengths and expectations in words, short enough for a cell and for a phone, in the unit the machine is declared in.

import { formatChainage, formatLength, formatNumber, formatValue } from '../../../domain/units/format.js';
import type { Expectation } from '../sheet.js';

export type SheetUnit = 'mm' | 'in';

/** A thickness or gap in mm: `8.4 mm`, or `0.33 in (8.4 mm)`. */
export function thicknessWords(mm: number, unit: SheetUnit): string {
  return unit === 'mm' ? formatLength(mm) : `${formatValue(mm, 'length', { unit: 'in', digits: 2 })} (${formatLength(mm)})`;
}

/** A chainage in mm: `6.20 m`, or `20.34 ft (6.20 m)`. */
export function placeWords(mm: number, unit: SheetUnit): string {
  return unit === 'mm' ? formatChainage(mm) : `${formatNumber(mm / 304.8, 2)} ft (${formatChainage(Math.round(mm / 10) * 10)})`;
}

export function expectWords(expect: Expectation, unit: SheetUnit): string {
  switch (expect.kind) {
    case 'range':
      return `${numberIn(expect.least, unit)} to ${numberIn(expect.most, unit)} ${unit}, ${expect.layers.join(' or ')}`;
    case 'open':
      return `up to ${numberIn(expect.most, unit)} ${unit}`;
    case 'worn through':
      return 'trough';
  }
}

export function expectReason(expect: Expectation): string {
  switch (expect.kind) {
    case 'range':
      return `${expect.basis}${expect.mayBeAtLimit ? '; may be at the condemn limit' : ''}`;
    case 'open':
    case 'worn through':
      return expect.reason;
  }
}

function numberIn(mm: number, unit: SheetUnit): string {
  return unit === 'mm' ? formatNumber(mm, 1) : formatNumber(mm / 25.4, 2);
}
