// What to expect, in words short enough for a cell and for a phone.

import { formatNumber } from '../../../domain/units/format.js';
import type { Expectation } from '../sheet.js';

export function expectWords(expect: Expectation): string {
  switch (expect.kind) {
    case 'range':
      return `${formatNumber(expect.least, 1)} to ${formatNumber(expect.most, 1)} mm, ${expect.layers.join(' or ')}`;
    case 'open':
      return `up to ${formatNumber(expect.most, 1)} mm`;
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
