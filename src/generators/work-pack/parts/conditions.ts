// What stands open on the conveyor of a job, and what of it the job takes away: a reline of its place what is wrong with a panel, a
// new screw what is wrong with the spiral. What an earlier job takes away first is still open until that is done.

import { openConditionRows, sinceWords } from '../../../domain/conditions/rows.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { Job } from '../../../domain/model/job.js';
import type { WorkBefore } from '../../../domain/plan/jobs-before.js';
import type { CalendarDay } from '../../../domain/units/calendar.js';
import type { WorkPack } from '../pack.js';

export function conditionFacts(
  records: Estate,
  before: WorkBefore,
  job: Job,
  scope: readonly { readonly from: number; readonly to: number }[],
  asOf: CalendarDay | undefined,
): WorkPack['conditions'] {
  const open = openConditionRows(records, job.conveyor, asOf);
  const left = before.estate === records ? open : openConditionRows(before.estate, job.conveyor);
  return open.map((row) => {
    const first = left.some(({ origin }) => origin === row.origin)
      ? undefined
      : before.jobs.find(({ renewed, screw }) =>
          row.part === 'spiral'
            ? screw !== undefined
            : renewed.some(({ from, to }) => row.at !== undefined && row.at >= from && row.at <= to),
        );
    const { at } = row;
    const inScope = at !== undefined && scope.some((area) => at >= area.from && at <= area.to);
    return {
      what: row.what,
      place: row.place,
      severity: row.severity ?? '',
      since: sinceWords(row),
      notes: row.notes.join('; '),
      ...(first ? { before: first.job.name } : {}),
      ends: row.part === 'liner' ? inScope : row.part === 'spiral' && job.screwChange !== undefined,
      origin: row.origin,
    };
  });
}
