// Is a record dated years after everything else that is known? The newest record is "today" for the whole estate, so one slip in a
// year (2062 for 2026) makes every look overdue and every outage past. Three years without any record, and then at most two, is
// taken for a slip; our judgement.

import type { Estate } from '../../../domain/model/estate.js';
import { addDays, formatDay, type CalendarDay } from '../../../domain/units/calendar.js';
import type { Origin } from '../../../domain/model/origin.js';
import type { Rule } from '../../rule.js';

const longSilence = 1096;
const mostAfter = 2;

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
  ],
  *check({ estate }) {
    const records = dated(estate);
    for (let i = Math.max(1, records.length - mostAfter); i < records.length; i++) {
      const [before, after] = [records[i - 1], records[i]];
      if (!before || !after || after.day <= addDays(before.day, longSilence)) continue;
      for (const record of records.slice(i))
        yield {
          origin: record.origin,
          message: `This record is dated ${formatDay(record.day)}, and the newest of the others ${formatDay(before.day)}.`,
          related: [{ origin: before.origin, message: 'the newest of the others' }],
        };
      return;
    }
  },
};

function dated(estate: Estate): readonly { readonly day: CalendarDay; readonly origin: Origin }[] {
  const { inspections, relines, screwChanges, meterChanges, panelsMoved, patches, services } = estate;
  return [inspections, relines, screwChanges, meterChanges, panelsMoved, patches, services]
    .flat()
    .map(({ date }) => ({ day: date.day, origin: date.origin }))
    .sort((a, b) => a.day - b.day);
}
