// Is a look asked for by a day that had passed when it was asked for?

import { datedRecords } from '../../../domain/model/dated-records.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';

export const askedLookBeforeItsRecord: Rule = {
  code: 'TL575',
  title: 'Look asked for by a day that had passed',
  severity: 'error',
  restsOn: [],
  why: 'It is overdue from its first day, or taken for made by a look that knew nothing of it: mostly the year is a slip.',
  todo: 'Write the day that is meant.',
  given: 'estate',
  example: `
inspection DG1 2026-01-12 meter 8000 h {
  finding bolts "some loose, tightened"
  next look by «2025-02-09|2026-02-09»
}
`,
  *check({ estate }) {
    for (const { asked, date } of datedRecords(estate))
      for (const { by } of asked)
        if (by && by.day <= date.day)
          yield {
            origin: by.origin,
            message: `A look is asked for by ${formatDay(by.day)}, and this record is of ${formatDay(date.day)}.`,
          };
  },
};
