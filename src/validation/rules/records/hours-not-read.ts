// How sure are the hours of a record at which nobody read the meter?

import { historyOf, momentOf } from '../../../domain/model/history.js';
import type { DatedRecord } from '../../../domain/model/records.js';
import { hoursErrorOf } from '../../../domain/model/hours-error.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { formatNumber } from '../../../domain/units/format.js';
import type { Estate } from '../../../domain/model/estate.js';
import { dayOf } from '../../telling/record-names.js';
import type { Rule } from '../../rule.js';

export const hoursNotRead: Rule = {
  code: 'TL547',
  title: 'Hour meter not read',
  severity: 'information',
  restsOn: ['block'],
  tags: ['advice'],
  why: 'Wear is counted by running hours. Hours that are reckoned from other days are less sure, and so is what the record tells of the rate.',
  todo: 'If the hours of that day stand in a log, write them into the heading, `meter 8120 h`; with doubt, `meter 8120 h ± 60 h`. Else leave it.',
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 11.4 mm
}
inspection DG1 «2025-03-10» ‹|meter 6200 h ›{
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}
inspection DG1 2025-09-08 meter 9000 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 8.6 mm
}`,
  cases: [
    {
      name: 'what is wrong with the machine counts by its day: nothing is asked',
      text: `
inspection DG1 2025-03-10 {
  view downstream
  gearbox noise slight
}`,
    },
    {
      name: 'said to be not read is as good as left out',
      text: `
inspection DG1 «2025-03-10» meter not read {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}`,
    },
  ],
  *check({ estate }) {
    for (const [what, records] of countedByHours(estate)) {
      for (const record of records) {
        if (record.meter.hours) continue;
        yield {
          origin: record.date.origin,
          message: `Nobody read the hour meter at the ${what} of ${dayOf(record)}: ${reckoned(estate, record)}.`,
        };
      }
    }
  },
};

function countedByHours(estate: Estate): readonly (readonly [string, readonly DatedRecord[]])[] {
  return [
    ['inspection', estate.inspections.filter(({ firstRow, endRow }) => endRow > firstRow)],
    ['reline', estate.relines],
    ['exchange of panels', estate.panelsMoved],
    ['screw change', estate.screwChanges],
  ];
}

function reckoned(estate: Estate, record: DatedRecord): string {
  const history = historyOf(estate, record.conveyor);
  const { hours } = momentOf(history, record);
  const error = hoursErrorOf(history, record);
  if (hours === undefined || error === undefined)
    return 'no reading before it and none after it tell them, so it counts for no rate of wear';
  const { knots } = history.hours;
  const before = knots.findLast(({ day }) => day <= record.date.day);
  const after = knots.find(({ day }) => day >= record.date.day);
  const since = history.start.kind === 'commissioned' ? 'since commissioning' : 'on record';
  const by =
    before && after
      ? `between the readings of ${formatDay(before.day)} and ${formatDay(after.day)}`
      : 'by the duty since the reading before';
  return `${formatNumber(hours, 0)} h ${since} are reckoned, ± ${formatNumber(error, 0)} h, ${by}`;
}
