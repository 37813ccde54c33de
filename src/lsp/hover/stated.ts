// A quantity as a hover shows it: as the author wrote it, or the default with the place it comes from.

import { formatValue } from '../../domain/units/format.js';
import type { Stated, Toleranced } from '../../domain/model/stated.js';

export function shown(stated: Stated): string {
  return stated.assumed === undefined ? stated.text : `${stated.text} (assumed)`;
}

/** Where the defaults among some quantities come from, as a list; nothing where all are stated. */
export function assumptions(quantities: readonly (Stated | undefined)[]): string[] {
  const sentences = [...new Set(quantities.flatMap((stated) => stated?.assumed ?? []))];
  return sentences.length === 0
    ? []
    : [
        `Assumed, because the text does not say:\n\n${sentences.map((sentence) => `- ${sentence}`).join('\n')}`,
      ];
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
