// How lengths and rates of one machine read in the report: in the units that its liner is declared in. Columns carry the unit in
// their head, so most of these are numbers alone; inches go without the metric value beside them, or no table would fit.

import { formatNumber } from '../../domain/units/format.js';
import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import { type LengthUnit, rateText, toCentimetre } from '../../domain/units/length-words.js';
import type { HandResult } from '../../domain/wear/arithmetic.js';

export interface Sizes {
  /** Of thicknesses, gaps, depths. */
  readonly near: LengthUnit;
  /** Of chainages. */
  readonly far: 'm' | 'ft';
  /** mm to `8.4` or `0.33`: a tenth of a millimetre is as much as a gauge can tell; an eighth of an inch keeps its `0.125`. */
  thickness(mm: number): string;
  /** mm to `8.4 mm` or `0.33 in`. */
  size(mm: number): string;
  /** mm to `6.20` or `20.34`. */
  along(mm: number): string;
  /** As `along`, of a place where panels meet: reckoned from gaps, and nobody measures it to the millimetre. */
  joint(mm: number): string;
  /** mm per h (t) to a rate per 1000 h (t): `0.45` or `0.0177`. */
  rate(perUnit: number): string;
  /** `mm/1000 h`. */
  rateUnit(unit: 'h' | 't'): string;
  /** What a chart's axis counts: mm in one of its units. */
  readonly mm: number;
}

export function sizesIn(near: LengthUnit): Sizes {
  const mm = near === 'mm' ? 1 : 25.4;
  const thickness = (value: number): string =>
    near === 'mm' ? formatNumber(value, 1) : formatNumber(value / mm, 3).replace(/0$/, '');
  const along = (value: number): string =>
    near === 'mm'
      ? formatNumber(value / 1000, Math.round(value) % 10 === 0 ? 2 : 3)
      : formatNumber(value / 304.8, 2);
  return {
    near,
    far: near === 'mm' ? 'm' : 'ft',
    thickness,
    size: (value) => `${thickness(value)} ${near}`,
    along,
    joint: (value) => along(toCentimetre(value)),
    rate: (perUnit) => rateText((perUnit * 1000) / mm, near),
    rateUnit: (unit) => `${near}/1000 ${unit}`,
    mm,
  };
}

export const metric = sizesIn('mm');

export function sizesOf(machine: Parameters<typeof unitOfMachine>[0]): Sizes {
  return sizesIn(unitOfMachine(machine));
}

/** Of several machines together: inches where all of them are declared so. */
export function sizesOfAll(machines: readonly Parameters<typeof unitOfMachine>[0][]): Sizes {
  return sizesIn(
    machines.length > 0 && machines.every((machine) => unitOfMachine(machine) === 'in') ? 'in' : 'mm',
  );
}

/** A rate since fitting; a reading thicker than the liner was then, within what its gauge may err, is told as that and has no rate. */
export function longTermText(
  { last, longTerm }: Exclude<HandResult, { kind: 'no reading' }>,
  fitted: { readonly value: number; readonly measured: boolean },
  sizes: Sizes,
): string {
  const above = last.thickness - fitted.value;
  return above > 0
    ? `${sizes.size(above)} above ${fitted.measured ? 'as fitted' : 'new'}`
    : sizes.rate(longTerm);
}
