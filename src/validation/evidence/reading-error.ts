// How sure is a reading? As stated on the row or by its gauge, else as usual for the kind of gauge, one standard deviation.

import { depthGaugeError } from '../../domain/geometry/gauge.js';
import type { Estate } from '../../domain/model/estate.js';

/** mm, above zero. */
export function errorOf({ readings }: Estate, row: number): number {
  const stated = readings.error[row] ?? NaN;
  return stated > 0 ? stated : depthGaugeError;
}

/**
 * What a layer leaves when it shows: the thickest and the thinnest the liner can be there, mm, with the tolerance of the
 * layers' depths (one standard deviation as a ratio of the depth). The layer nearest the screw leaves the full thickness.
 */
export function leftByLayer(liner: { readonly layers: readonly { readonly thickness: { readonly value: number } }[]; readonly thickness: { readonly value: number }; readonly layerTolerance: { readonly value: number } }, layer: number): Left | undefined {
  if (layer < 0 || layer >= liner.layers.length) return undefined;
  let top = 0;
  for (let i = 0; i < layer; i++) top += liner.layers[i]?.thickness.value ?? 0;
  const bottom = top + (liner.layers[layer]?.thickness.value ?? 0);
  const full = liner.thickness.value;
  const ratio = liner.layerTolerance.value;
  return { most: full - top, mostError: ratio * top, least: Math.max(0, full - bottom), leastError: ratio * bottom };
}

export interface Left {
  readonly most: number;
  readonly mostError: number;
  readonly least: number;
  readonly leastError: number;
}
