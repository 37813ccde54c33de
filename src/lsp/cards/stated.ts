// A quantity as a card shows it: as the author wrote it, or the default with the place it comes from.

import { formatValue } from '../../domain/units/format.js';
import type { Stated, Toleranced } from '../../domain/model/stated.js';

export function shown(stated: Stated): string {
  return stated.assumed === undefined ? stated.text : `${stated.text} (assumed: ${stated.assumed})`;
}

export function shownToleranced(value: Toleranced<Stated['dimension']>): string {
  return value.tolerance ? `${shown(value.nominal)} ± ${value.tolerance.text}` : shown(value.nominal);
}

export function mm(value: number, digits = 0): string {
  return formatValue(value, 'length', { unit: 'mm', digits });
}

export function metres(value: number): string {
  return formatValue(value, 'length', { unit: 'm', digits: 2 });
}
