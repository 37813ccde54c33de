// How soon can the liner of a job be there: what the shelf has of its panels and fixings, what is on its way, and what is bought?

import { suppliesOf, type Supplies } from './supply.js';
import { boltsIn } from './trial-work.js';
import type { Estate } from '../model/estate.js';
import type { Job } from '../model/job.js';
import { groundOf, within } from '../order/ground.js';
import type { CalendarDay } from '../units/calendar.js';

/** Undefined where nothing of its liner was ever counted or ordered, or where it takes two liners. */
export function suppliesOfJob(job: Job, estate: Estate, today: CalendarDay): Supplies | undefined {
  const [liner, other] = [...new Set(job.relines.map((reline) => reline.liner))];
  const { plant } = job.conveyor;
  const known = [...plant.shelf, ...(plant.ordered ?? [])].some((each) => each.liner.name === liner?.name);
  if (!liner || other || !known) return undefined;
  const { runs, scope } = groundOf(job, job.order?.steps ?? [], estate);
  const lengths = runs.flatMap(({ panels }) => within(panels, scope)).map(({ length }) => length);
  return suppliesOf(plant, [{ liner, lengths, fixings: boltsIn(liner, lengths) }], today, estate.relines);
}
