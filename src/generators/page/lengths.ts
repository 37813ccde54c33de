// Lengths and temperatures in words for people who think in inches: where a machine is declared in inches, its sheets say inches and feet first and
// the metric value after, so that a drawing in metres can still be found.

import { formatChainage, formatLength, formatNumber, formatValue } from '../../domain/units/format.js';

export type LengthUnit = 'mm' | 'in';

/** Inches where every one of the declared thicknesses, as written, is in inches. */
export function unitOf(declared: readonly string[]): LengthUnit {
  return declared.length > 0 && declared.every((text) => /\bin(ch|ches)?$/.test(text.trim())) ? 'in' : 'mm';
}

/** In which a machine's pages and drawings speak: its own liner's. */
export function unitOfMachine({
  liner,
}: {
  readonly liner: { readonly layers: readonly { readonly thickness: { readonly text: string } }[] };
}): LengthUnit {
  return unitOf(liner.layers.map(({ thickness }) => thickness.text));
}

/** A length in mm: `8.4 mm`, or `0.33 in (8.4 mm)`; in feet from ten feet up. */
export function lengthWords(mm: number, unit: LengthUnit): string {
  if (unit === 'in' && mm >= 3048) return `${formatNumber(mm / 304.8, 2)} ft (${formatLength(mm)})`;
  return unit === 'mm'
    ? formatLength(mm)
    : `${formatValue(mm, 'length', { unit: 'in', digits: 2 })} (${formatLength(mm)})`;
}

/** A chainage in mm: `6.20 m`, or `20.34 ft (6.20 m)`. */
export function chainageWords(mm: number, unit: LengthUnit): string {
  return unit === 'mm'
    ? formatChainage(mm)
    : `${formatNumber(mm / 304.8, 2)} ft (${formatChainage(Math.round(mm / 10) * 10)})`;
}

/** A temperature in °C: `71 °C`, or `160 °F (71 °C)`. */
export function temperatureWords(celsius: number, unit: LengthUnit): string {
  const metric = formatValue(Math.round(celsius * 10) / 10, 'temperature');
  return unit === 'mm'
    ? metric
    : `${formatValue(celsius, 'temperature', { unit: '°F', digits: 0 })} (${metric})`;
}
