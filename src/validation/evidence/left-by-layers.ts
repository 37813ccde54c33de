// What can be left of a liner while one of its layers shows?

import type { LinerSpecification } from '../../domain/model/specifications.js';

/** mm, with one standard deviation. */
export interface Left {
  readonly left: number;
  readonly error: number;
}

/** The standard deviations are of the depths that they rest on. */
export interface LeftWhileShowing {
  readonly most: Left;
  readonly least: Left;
}

const none: Left = { left: 0, error: 0 };
/** While bare steel shows. */
export const nothingLeft: LeftWhileShowing = { most: none, least: none };

/** By the number of the layer from the screw. */
export function leftByLayers({
  layers,
  thickness,
  layerTolerance,
}: LinerSpecification): readonly LeftWhileShowing[] {
  let top = 0;
  return layers.map((layer) => {
    const bottom = top + layer.thickness.value;
    const showing = {
      most: { left: thickness.value - top, error: layerTolerance.value * top },
      least: { left: Math.max(0, thickness.value - bottom), error: layerTolerance.value * bottom },
    };
    top = bottom;
    return showing;
  });
}
