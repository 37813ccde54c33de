// What can be left of a liner while one of its layers shows?

import type { LinerSpecification } from '../../domain/model/specifications.js';

/**
 * What is left while a layer shows, by the number of the layer from the screw, bare steel last: most and least, mm, each with
 * the standard deviation of the depth it rests on.
 */
export interface LeftByLayers {
  readonly most: readonly number[];
  readonly mostError: readonly number[];
  readonly least: readonly number[];
  readonly leastError: readonly number[];
}

export function leftByLayers({ layers, thickness, layerTolerance }: LinerSpecification): LeftByLayers {
  const table = {
    most: [] as number[],
    mostError: [] as number[],
    least: [] as number[],
    leastError: [] as number[],
  };
  let top = 0;
  for (const layer of layers) {
    const bottom = top + layer.thickness.value;
    table.most.push(thickness.value - top);
    table.mostError.push(layerTolerance.value * top);
    table.least.push(Math.max(0, thickness.value - bottom));
    table.leastError.push(layerTolerance.value * bottom);
    top = bottom;
  }
  for (const column of [table.most, table.mostError, table.least, table.leastError]) column.push(0);
  return table;
}
