// Room between the screw, the liner, the trough and the hold-down blocks, new and worn.
// The screw lies on the liner: its axis is the radial clearance e below the trough's centre line when new, and e plus the
// wear when worn. All derived from the circles; lengths in mm.

import { positive } from './demand.js';

/** Liner's inside radius, mm; zero or less means that the liner fills the trough. */
export function linerRadius(troughRadius: number, thickness: number): number {
  return (
    positive('inside radius of the trough', troughRadius, 'mm') - positive('liner thickness', thickness, 'mm')
  );
}

/** e = R − t − D/2, mm. Negative: the screw does not fit into the lined trough. */
export function radialClearance(troughRadius: number, linerThickness: number, screwDiameter: number): number {
  return linerRadius(troughRadius, linerThickness) - positive('screw diameter', screwDiameter, 'mm') / 2;
}
