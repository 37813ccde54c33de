// Expectations in words, short enough for a cell and for a phone, in the unit the machine is declared in.

import { formatNumber } from '../../../domain/units/format.js';
import type { LengthUnit } from '../../../domain/units/length-words.js';
import type { Expectation } from '../sheet.js';

export function expectWords(expect: Expectation, unit: LengthUnit): string {
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

function numberIn(mm: number, unit: LengthUnit): string {
  return unit === 'mm' ? formatNumber(mm, 1) : formatNumber(mm / 25.4, 2);
}
