// What does each support of a spiral bear that is kept up while panels pass under it? Mass a metre × distance × 1.25: of three
// supports under a stiff spiral the middle one bears 10/8 of a span (continuous beam of two equal spans, even load).

import type { Job } from '../model/job.js';
import { lyingScrew } from '../model/lying-screw.js';
import { screwMassPerMetre } from './lifts.js';

const middleOfThree = 1.25;

/** kg; undefined where nothing holds the spiral up or its mass is not known. */
export function supportLoad(job: Job): number | undefined {
  const { heldUp } = job;
  const mass = screwMassPerMetre(lyingScrew(job));
  return heldUp && mass !== undefined ? (mass * heldUp.spacing.value * middleOfThree) / 1000 : undefined;
}
