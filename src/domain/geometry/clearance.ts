// Room between the screw, the liner, the trough and the hold-down blocks, new and worn.
// The screw lies on the liner: its axis is the radial clearance e below the trough's centre line when new, and e plus the
// wear when worn. All derived from the circles; lengths in mm.

import { finite, notNegative, positive, within } from './demand.js';

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

/** Gap between screw and liner at an angle (degrees from where the screw lies), mm; zero inside the worn crescent. */
export function gapAt(e: number, wear: number, angle: number): number {
  notNegative('radial clearance', e, 'mm');
  notNegative('wear', wear, 'mm');
  within('angle', angle, -180, 180, 'deg');
  return Math.max(0, e - (e + wear) * Math.cos((angle * Math.PI) / 180));
}

/** How far the screw's axis lies below the trough's centre line, mm; flight wear is radial and lets it sink too. */
export function axisDepth(e: number, linerWear: number, flightWear = 0): number {
  return (
    notNegative('radial clearance', e, 'mm') +
    notNegative('liner wear', linerWear, 'mm') +
    notNegative('flight wear', flightWear, 'mm')
  );
}

/**
 * Gap between the top of the screw and a hold-down block, mm, from the gap when all was new: the screw sinks by the liner's
 * wear and by the flight's, and its top edge has lost the flight's wear as well.
 */
export function holdDownGap(gapWhenNew: number, linerWear: number, flightWear = 0): number {
  return (
    finite('hold-down gap', gapWhenNew, 'mm') +
    notNegative('liner wear', linerWear, 'mm') +
    2 * notNegative('flight wear', flightWear, 'mm')
  );
}

/** Liner left between the screw and the steel where the screw lies, mm; zero when the screw runs on steel. */
export function linerLeft(thickness: number, wear: number): number {
  return Math.max(0, positive('liner thickness', thickness, 'mm') - notNegative('wear', wear, 'mm'));
}

/**
 * What is left of the first layer under a countersunk hole, mm: first layer − countersink depth. Negative: the countersink
 * cuts into the second colour, which then shows round every bolt from the first day and can no longer tell wear.
 */
export function countersinkMargin(firstLayer: number, countersink: number): number {
  return positive('first layer', firstLayer, 'mm') - notNegative('countersink', countersink, 'mm');
}

/** Wear at which a bolt head recessed by `headDepth` (countersink less the height of the head) is met by the screw, mm. */
export function wearAtBoltHead(countersink: number, headHeight: number): number {
  return Math.max(
    0,
    notNegative('countersink', countersink, 'mm') - notNegative('bolt head height', headHeight, 'mm'),
  );
}
