// What stands open on the conveyor of a job, and what of it the job takes away: a reline of its place what is wrong with a panel, a
// new screw what is wrong with the spiral.

import { openConditionRows, sinceWords } from '../../../domain/conditions/rows.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { Job } from '../../../domain/model/job.js';
import type { CalendarDay } from '../../../domain/units/calendar.js';
import type { WorkPack } from '../pack.js';

export function conditionFacts(
  estate: Estate,
  job: Job,
  scope: readonly { readonly from: number; readonly to: number }[],
  asOf: CalendarDay | undefined,
): WorkPack['conditions'] {
  return openConditionRows(estate, job.conveyor, asOf).map((row) => {
    const { at } = row;
    const inScope = at !== undefined && scope.some((area) => at >= area.from && at <= area.to);
    return {
      what: row.what,
      place: row.place,
      severity: row.severity ?? '',
      since: sinceWords(row),
      notes: row.notes.join('; '),
      ends: row.part === 'liner' ? inScope : row.part === 'spiral' && job.screwChange !== undefined,
      origin: row.origin,
    };
  });
}
