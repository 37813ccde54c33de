// What does each support of a spiral bear that is kept up while panels pass under it? Mass a metre × distance × 1.25: of three
// supports under a stiff spiral the middle one bears 10/8 of a span (continuous beam of two equal spans, even load).

import type { Job } from '../model/job.js';
import { lyingScrew } from '../model/lying-screw.js';
import { screwMassPerMetre } from './lifts.js';

const middleOfThree = 1.25;

/** True where nothing is said of what holds up a spiral that stays in while the liner that it lies on comes out. */
export function isHeldUpByNothing(job: Job): boolean {
  return liesOnItsLiner(job) && job.heldUp === undefined;
}

/** A spiral without a shaft that stays in while panels go out and in under it. */
export function liesOnItsLiner(job: Job): boolean {
  return !job.screwChange && job.relines.length > 0 && lyingScrew(job).kind.kind === 'shaftless';
}

/** kg; undefined where nothing holds the spiral up or its mass is not known. */
export function supportLoad(job: Job): number | undefined {
  const { heldUp } = job;
  const mass = screwMassPerMetre(lyingScrew(job));
  return heldUp && mass !== undefined ? (mass * heldUp.spacing.value * middleOfThree) / 1000 : undefined;
}
