// How high the liner stands at the sides: as high as the trough, unless `liner side height` says that it ends below its top. What
// stands above it is bare steel, and an edge over which material gets behind the liner.

import type { Conveyor } from './conveyor.js';
import type { Stated } from './stated.js';

type Sides = Pick<Conveyor, 'trough' | 'linerSideHeight'>;

/** Straight side of the liner above the centre line, mm; never more than that of the trough. */
export function linerSide({ trough, linerSideHeight }: Sides): Stated<'length'> {
  return linerSideHeight && linerSideHeight.value < trough.sideHeight.value
    ? linerSideHeight
    : trough.sideHeight;
}

/** Steel left bare above the liner, mm, on each side. */
export function bareAbove(conveyor: Sides): number {
  return conveyor.trough.sideHeight.value - linerSide(conveyor).value;
}
