// Can this order of work be built? Walks the written order of a job and returns what cannot be done, is unsafe, or is left
// out: the first impossible step and everything independent of it, each with the physical reason and with repairs that
// were tried. An order without complaints can be built from the first step to the last, in every way its steps may overlap.
//
// What an order means: a step waits for everything written above it; a step that says `after` waits only for the steps it
// names (sequence.ts). A step without a stretch means the whole scope of the job. A `fit` without `starting at` goes from
// the top down (start.ts). A step that names no crew is done by the job's only crew, or by any of several.

import type { Estate } from '../model/estate.js';
import type { Job } from '../model/job.js';
import { judge } from './judge.js';
import { repairsFor } from './repairs.js';
import type { Violation } from './violation.js';

/** Empty for a job without a written order, and for an order that can be built. In the order of the steps. */
export function checkOrder(job: Job, estate: Estate): readonly Violation[] {
  if (!job.order) return [];
  const judged = judge(job, estate);
  const most = Math.min(mostRepaired, Math.ceil(mostTried / (1 + job.order.steps.length)));
  return judged.map((each, i): Violation => ({
    ...each.violation,
    repairs: i < most ? repairsFor(job, estate, each, judged) : [],
  }));
}

/** True where nothing is wrong; quicker than `checkOrder`, which also looks for repairs. */
export function canBeBuilt(job: Job, estate: Estate): boolean {
  return job.order !== undefined && judge(job, estate).length === 0;
}

/** Repairs are tried on the order one by one; beyond so many complaints the author will start from the first ones anyway. */
const mostRepaired = 16;
/** Complaints repaired × steps of the order, so that long orders stay quick to check. */
const mostTried = 1500;
