// What does a job take, before anybody asks when it is done? The ground of its order, as written or else as proposed, and what it takes
// and finds in a store. The same lists as on its pack.

import { partsToRenew } from '../conditions/to-renew.js';
import type { Estate } from '../model/estate.js';
import type { Job } from '../model/job.js';
import { fittedAreas, groundOf, type Area, type Ground } from '../order/ground.js';
import { cutLists, type CutList } from './cut-list.js';
import { materialsOf, type Material } from './materials.js';
import { proposeSteps } from './proposed-steps.js';
import type { PlantStore } from './store.js';

export interface JobGround {
  readonly ground: Ground;
  /** Where new panels go. */
  readonly areas: readonly Area[];
}

export function groundOfJob(job: Job, estate: Estate): JobGround {
  const ground = groundOf(job, job.order?.steps ?? proposeSteps(job, estate).steps, estate);
  return { ground, areas: fittedAreas(ground) };
}

export interface JobNeeds {
  readonly cuts: readonly CutList[];
  readonly materials: readonly Material[];
}

export function needsOf({ ground, areas }: JobGround, estate: Estate, store: PlantStore): JobNeeds {
  const { job } = ground;
  const cuts = cutLists(job, estate, ground, areas, store.stock);
  const renewed = partsToRenew(estate, job.conveyor);
  return { cuts, materials: materialsOf(job, ground, cuts, areas, store, renewed) };
}

/** What is cut for the panels that an order fits. */
export function cutsOf(job: Job, estate: Estate, ground: Ground, store: PlantStore): readonly CutList[] {
  return cutLists(job, estate, ground, fittedAreas(ground), store.stock);
}
