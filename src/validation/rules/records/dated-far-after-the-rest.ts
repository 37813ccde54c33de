// Is a record dated years after everything else that is known (model/newest.ts), or a duty decades after it? A duty may be a plan,
// so it is given ten years; our judgement.

import { datedFarAfter, newestRecord } from '../../../domain/model/newest.js';
import { addDays, formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';

/** Days. */
const longestPlan = 3652;

export const datedFarAfterTheRest: Rule = {
  code: 'TL545',
  title: 'Record dated years after all others',
  severity: 'error',
  restsOn: [],
  why: 'The newest record is the day that everything is counted from: with a slip in its year every look is overdue and every outage is past.',
  todo: 'Check the year against the sheet or the photo of that day.',
  given: 'estate',
  example: `
inspection DG1 2025-03-10 meter 6200 h {
  P1 colour ivory
}
inspection DG1 «2062-09-08|2025-09-08» meter ‹221000|9000› h {
  P1 colour ivory
}`,
  cases: [
    {
      name: 'work that is dated so',
      text: `
inspection DG1 2025-03-10 meter 6200 h {
  P1 colour ivory
}
serviced DG1 «2052-03-11» gearbox oil changed`,
    },
    {
      name: 'work within the years of the others',
      text: `
inspection DG1 2025-03-10 meter 6200 h {
  P1 colour ivory
}
serviced DG1 2026-03-11 gearbox oil changed`,
    },
    {
      name: 'a duty that nobody can plan for',
      text: `
inspection DG1 2025-03-10 meter 6200 h {
  P1 colour ivory
}
duty DG1 from «2052-01-05» 80 h/week`,
    },
    {
      name: 'a duty planned some years ahead',
      text: `
inspection DG1 2025-03-10 meter 6200 h {
  P1 colour ivory
}
duty DG1 from 2029-01-05 80 h/week`,
    },
  ],
  *check({ estate }) {
    const far = datedFarAfter(estate);
    const newest = far?.before ?? newestRecord(estate)?.date;
    if (!newest) return;
    const plans = estate.dutyChanges
      .filter(({ from }) => from.day > addDays(newest.day, longestPlan))
      .map(({ from }) => ({ day: from.day, origin: from.origin }));
    for (const { day, origin } of [...(far?.records ?? []), ...plans])
      yield {
        origin,
        message: `This record is dated ${formatDay(day)}, and the newest of the others ${formatDay(newest.day)}.`,
        related: [{ origin: newest.origin, message: 'the newest of the others' }],
      };
  },
};
