// What a gauge reading is worth: the error of an ultrasonic thickness from the sound velocity it was set to.
// The gauge times an echo and multiplies by its set velocity, so a velocity error is the same relative error of thickness.

/** Sound velocity range usual in PE1000, m/s (data sheets: 2030–2060 and thereabouts; calibrate on an offcut at site temperature). */
export const soundVelocity = { from: 2030, to: 2060 } as const;

/** Error of a depth gauge or calliper, ± mm, where none is stated (judgement). */
export const depthGaugeError = 0.5;
