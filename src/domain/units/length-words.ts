// Lengths and temperatures in words for people who think in inches: where a machine is declared in inches, all that is said of it
// says inches and feet first and the metric value after, so that a drawing in metres can still be found.

import { formatChainage, formatLength, formatNumber, formatValue } from './format.js';

export type LengthUnit = 'mm' | 'in';

/** Inches where every one of the declared thicknesses, as written, is in inches. */
export function unitOf(declared: readonly string[]): LengthUnit {
  return declared.length > 0 && declared.every((text) => /\bin(ch|ches)?$/.test(text.trim())) ? 'in' : 'mm';
}

/** A length in mm: `8.4 mm`, or `0.33 in (8.4 mm)`; in feet from ten feet up. */
export function lengthWords(mm: number, unit: LengthUnit): string {
  if (unit === 'in' && mm >= 3048) return `${formatNumber(mm / 304.8, 2)} ft (${formatLength(mm)})`;
  return unit === 'mm'
    ? formatLength(mm)
    : `${formatValue(mm, 'length', { unit: 'in', digits: 2 })} (${formatLength(mm)})`;
}

/** A small length in mm to a hundredth: `0.26 mm`, or `0.010 in (0.26 mm)`. */
export function fineWords(mm: number, unit: LengthUnit): string {
  const metric = formatValue(mm, 'length', { unit: 'mm', digits: 2 });
  return unit === 'mm' ? metric : `${formatValue(mm, 'length', { unit: 'in', digits: 3 })} (${metric})`;
}

/** A rate in mm an hour or tonne: `0.60 mm/1000 h`, or `0.0236 in/1000 h (0.60 mm)`. */
export function rateWords(mmEach: number, exposure: 'h' | 't', unit: LengthUnit): string {
  const metric = `${rateText(mmEach * 1000, 'mm')} mm`;
  return unit === 'mm'
    ? `${metric}/1000 ${exposure}`
    : `${rateText((mmEach * 1000) / 25.4, unit)} in/1000 ${exposure} (${metric})`;
}

/** mm or in, each 1000 h or t: as many digits as tell two rates apart, everywhere the same. */
export function rateText(value: number, unit: LengthUnit): string {
  if (unit === 'in')
    return formatNumber(value, Math.abs(value) >= 0.995 ? 2 : Math.abs(value) < 0.0995 ? 4 : 3);
  return formatNumber(value, Math.abs(value) >= 9.995 ? 1 : Math.abs(value) < 0.0995 ? 3 : 2);
}

/** mm, to 10 mm: nobody measured where a joint that is reckoned lies. */
export function toCentimetre(mm: number): number {
  return Math.round(mm / 10) * 10;
}

/** A chainage in mm: `6.20 m`, or `20.34 ft (6.20 m)`. */
export function chainageWords(mm: number, unit: LengthUnit): string {
  return unit === 'mm'
    ? formatChainage(mm)
    : `${formatNumber(mm / 304.8, 2)} ft (${formatChainage(toCentimetre(mm))})`;
}

/** A chainage in mm as a line of the language or a name has it, read back to the tenth of a millimetre: `6.20 m`, `20.34 ft`. */
export function chainageText(mm: number, unit: LengthUnit): string {
  if (unit === 'mm') return formatChainage(mm);
  const feet = mm / 304.8;
  const tenths = (each: number): number => Math.round(each * 10);
  const digits = [2, 3, 4, 5].find((each) => tenths(Number(feet.toFixed(each)) * 304.8) === tenths(mm)) ?? 6;
  return `${formatNumber(feet, digits)} ft`;
}

/** How much liner in all, m, to a tenth: `11.6 m`, or `38.1 ft (11.6 m)`. */
export function metresWords(metres: number, unit: LengthUnit): string {
  const metric = `${formatNumber(metres, 1)} m`;
  return unit === 'mm' ? metric : `${formatNumber(metres / 0.3048, 1)} ft (${metric})`;
}

/** A temperature in °C: `71 °C`, or `160 °F (71 °C)`. */
export function temperatureWords(celsius: number, unit: LengthUnit): string {
  const metric = formatValue(Math.round(celsius * 10) / 10, 'temperature');
  return unit === 'mm'
    ? metric
    : `${formatValue(celsius, 'temperature', { unit: '°F', digits: 0 })} (${metric})`;
}
