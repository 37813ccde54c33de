// What a gauge reading is worth: the error of an ultrasonic thickness from the sound velocity it was set to.
// The gauge times an echo and multiplies by its set velocity, so a velocity error is the same relative error of thickness.

import { positive } from './demand.js';

/**
 * Sound velocities that polyethylene may have, m/s (judgement: gauge tables give about 2080 for LDPE and 2460 for HDPE, a published
 * study 2030 to 2060 for PE80 pipe; no value for PE-UHMW could be confirmed, and grade and temperature move it by some per cent).
 * Only a block of the liner itself, at site temperature, settles it.
 */
export const soundVelocity = { from: 1900, to: 2700 } as const;

/** What a gauge set to `set` shows of a sheet with velocity `true` (m/s), mm: t·c_set/c, the same echo turned into another way. */
export function gaugeShows(thickness: number, velocity: number, set: number): number {
  return (
    (positive('thickness', thickness, 'mm') * positive('set velocity', set, 'm/s')) /
    positive('sound velocity', velocity, 'm/s')
  );
}

/** Error of a depth gauge or calliper, ± mm, where none is stated (judgement). */
export const depthGaugeError = 0.5;
