// What sizes a lined-trough screw conveyor comes in: bands wide enough that a real machine never leaves them, and narrow
// enough that an inch read as a millimetre does. Judgement, from the range of IS 5563:1985 screws (100 to 1250 mm) outwards.

import type { Dimension } from '../../domain/units/dimension.js';
import { parseQuantity } from '../../domain/units/parse.js';
import { unitsOf } from '../../domain/units/parse.js';

/** In the base unit of the dimension. */
export interface PlausibleBand {
  readonly dimension: Dimension;
  readonly from: number;
  readonly to: number;
}

const length = (from: number, to: number): PlausibleBand => ({ dimension: 'length', from, to });

export const bands = {
  'conveyor length': length(1000, 120_000),
  'section length': length(150, 15_000),
  'trough inside radius': length(45, 750),
  'trough side height': length(20, 1000),
  'trough plate': length(1, 25),
  'outside diameter': length(75, 1300),
  'screw pitch': length(20, 2000),
  'flight width': length(8, 400),
  'flight thickness': length(2, 80),
  'liner thickness': length(2, 60),
  'layer thickness': length(0.5, 40),
  'panel length': length(150, 6500),
  'bolt pitch': length(30, 1500),
  'reading thickness': length(0.05, 65),
  incline: { dimension: 'angle', from: 0, to: 75 },
  speed: { dimension: 'rotation', from: 0.3, to: 250 },
  'drive power': { dimension: 'power', from: 0.1, to: 250 },
  'bulk density': { dimension: 'density', from: 50, to: 4000 },
  'hold-down gap': length(0, 150),
} as const satisfies Readonly<Record<string, PlausibleBand>>;

export type Sized = keyof typeof bands;

export function isPlausible(what: Sized, value: number): boolean {
  const band: PlausibleBand = bands[what];
  return value >= band.from && value <= band.to;
}

/**
 * What the author may have meant: the same number with another unit that lands inside the band, commonest unit first.
 * Empty where the value is plausible already or no unit makes it so.
 */
export function withLikelierUnit(what: Sized, text: string): readonly string[] {
  const band: PlausibleBand = bands[what];
  const number = /^[+-]?[\d./ ]*\d/.exec(text)?.[0] ?? '';
  return unitsOf(band.dimension)
    .map((unit) => `${number} ${unit}`)
    .filter((candidate) => {
      const read = parseQuantity(candidate, band.dimension);
      return read.ok && isPlausible(what, read.quantity.value);
    });
}
