// Was a conveyor looked at twice on one day, with other results? Two rounds by two gauges are told as one look with both; two sheets
// under one date are mostly of two days.

import type { Estate } from '../../../domain/model/estate.js';
import type { Inspection } from '../../../domain/model/records.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';
import { counted } from '../../../domain/units/wording.js';
import type { Rule } from '../../rule.js';

const first = `
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
  P2 thickness 10.1 mm
}`;

/** Points read in both with another result, from which it is no spot that was read again (judgement). */
const fewest = 2;

export const twoLooksOfOneDay: Rule = {
  code: 'TL526',
  title: 'Two looks of one day that read differently',
  severity: 'warning',
  restsOn: ['looks'],
  why: 'One of the two was made on another day: its wear is reckoned to the wrong hours, and the day it was made on has no look.',
  todo:
    'Compare both with their sheets and correct the date and the meter of one. If both are of that day, both stay as they are and both count; ' +
    'of a reading that was wrong say so: `correction DG1 2025-03-12 P1 read on 2025-03-10 does not count by "day shift" "the gauge slipped"`.',
  given: 'estate',
  example: `${first}
inspection DG1 «2025-03-10|2025-06-09» meter ‹6200|7500› h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.3 mm
  P2 thickness 9.7 mm
}`,
  cases: [
    {
      name: 'one point read again',
      text: `${first}
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge depth gauge ± 0.5 mm
  P1 thickness 9.6 mm
}`,
    },
    {
      name: 'the rest of the round',
      text: `
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P2 thickness 10.1 mm
}`,
    },
  ],
  *check({ estate }) {
    const { inspections } = estate;
    for (const [i, inspection] of inspections.entries()) {
      const before = inspections[i - 1];
      if (!before || before.conveyor !== inspection.conveyor || before.date.day !== inspection.date.day)
        continue;
      const [then, now] = [thicknessesOf(estate, before), thicknessesOf(estate, inspection)];
      const both = [...now.keys()].filter((place) => then.has(place));
      const differ = both.filter((place) => then.get(place) !== now.get(place)).length;
      if (differ < fewest || 2 * differ <= both.length) continue;
      yield {
        origin: inspection.date.origin,
        message:
          `${inspection.conveyor.name} has two looks of ${formatDay(inspection.date.day)}; of ` +
          `${counted(both.length, 'point')} read in both ${differ} have another thickness.`,
        related: [{ origin: before.date.origin, message: 'the other look' }],
      };
    }
  },
};

/** mm by the place: the last of each. */
function thicknessesOf({ readings }: Estate, { firstRow, endRow }: Inspection): ReadonlyMap<number, number> {
  const found = new Map<number, number>();
  for (let row = firstRow; row < endRow; row++)
    if (readings.kind[row] === ReadingKind.thickness)
      found.set(readings.place[row] ?? -1, readings.value[row] ?? NaN);
  found.delete(-1);
  return found;
}
