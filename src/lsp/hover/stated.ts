// A quantity as a hover shows it: as the author wrote it, or the default with the place it comes from.

import { type LengthUnit, lengthWords, chainageWords } from '../../domain/units/length-words.js';
import { formatValue } from '../../domain/units/format.js';
import type { Stated, Toleranced } from '../../domain/model/stated.js';

/** What is assumed of a machine in inches is said so: `0.08 in (2 mm) (assumed)`. */
export function shown(stated: Stated, unit: LengthUnit = 'mm'): string {
  if (stated.assumed === undefined) return stated.text;
  const inches = unit === 'in' && stated.dimension === 'length';
  return `${inches ? lengthWords(stated.value, unit) : stated.text} (assumed)`;
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

/** Millimetres, or inches as finely with them in brackets. */
export function mm(unit: LengthUnit, value: number, digits = 0): string {
  const metric = formatValue(value, 'length', { unit: 'mm', digits });
  return unit === 'mm'
    ? metric
    : `${formatValue(value, 'length', { unit: 'in', digits: digits + 1 })} (${metric})`;
}

export function metres(unit: LengthUnit, value: number): string {
  return unit === 'mm' ? formatValue(value, 'length', { unit: 'm', digits: 2 }) : chainageWords(value, unit);
}
