// What should the gauge show, in the sheet's own terms? From the report's model (remaining-life/expected-wear.ts), rounded outwards to
// what a gauge is read to, so that the words and the warning of a second look are one and the same.

import type { LengthUnit } from '../../../domain/units/length-words.js';
import type { ExpectedPlace, ExpectedWear } from '../../remaining-life/expected-wear.js';
import type { Expectation } from '../sheet.js';

export interface ExpectationInput {
  readonly wear: ExpectedWear;
  readonly place: ExpectedPlace;
  /** mm when fitted. */
  readonly fitted: number;
  /** mm when its layers were whole: as fitted, but for a panel that was moved as it was bought. */
  readonly whole: number;
  readonly condemn: number;
  /** From the screw side. */
  readonly layers: readonly { readonly name: string; readonly thickness: number }[];
  readonly unit: LengthUnit;
}

export function expectationFor(input: ExpectationInput): Expectation {
  const { wear, place, fitted } = input;
  switch (place.kind) {
    case 'steel':
      return { kind: 'worn through', reason: 'the trough showed on this liner' };
    case 'cannot say':
      return { kind: 'open', most: fitted, reason: place.why };
    case 'readings': {
      const [least, most] = [place.least[wear.now ?? -1], place.most[wear.now ?? -1]];
      if (least === undefined || most === undefined)
        return { kind: 'open', most: fitted, reason: 'no duty tells how long it has run since' };
      return range(input, least, most, basisOf(place));
    }
  }
}

/** What the model rests on, in words. */
export function basisOf({ records, pool }: Extract<ExpectedPlace, { kind: 'readings' }>): string {
  const here = records === 0 ? 'not read since it was fitted' : `${records} read here`;
  const others = pool - (records === 0 ? 0 : 1);
  return others > 0 ? `${here}, with ${others} other ${others === 1 ? 'place' : 'places'}` : here;
}

function range(input: ExpectationInput, low: number, high: number, basis: string): Expectation {
  const step = input.unit === 'mm' ? 0.1 : 0.254;
  const least = Math.floor(low / step + 1e-6) * step;
  const most = Math.ceil(high / step - 1e-6) * step;
  return {
    kind: 'range',
    least,
    most,
    layers: layersWithin(input, low, high),
    basis,
    mayBeAtLimit: low <= input.condemn,
  };
}

/** Names of the layers that can show when between `least` and `most` mm are left. */
function layersWithin(input: ExpectationInput, least: number, most: number): readonly string[] {
  const names = input.layers.slice(layerAt(input, most), layerAt(input, least) + 1).map(({ name }) => name);
  return least <= 0 ? [...names, 'trough'] : names;
}

/** Number of the layer showing at a remaining thickness; the last one down to nothing. */
function layerAt(input: ExpectationInput, left: number): number {
  let depth = 0;
  const worn = input.whole - left;
  for (const [index, layer] of input.layers.entries()) {
    depth += layer.thickness;
    if (worn < depth - 1e-9) return index;
  }
  return Math.max(0, input.layers.length - 1);
}
