// Were two points exchanged in one look? Neither reading can stand between those before and after at its own point, and both can at
// the other's (evidence/likely-slips.ts). The growth and the loss that follow are not told beside it.

import { originOf } from '../../../domain/model/records.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { likelySlips } from '../../evidence/likely-slips.js';
import type { Rule } from '../../rule.js';

const before = `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 10.9 mm
  P2 thickness 8.4 mm
}`;
const after = `
inspection DG1 2025-09-08 meter 9000 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.2 mm
  P2 thickness 4.9 mm
}`;

export const pointsExchanged: Rule = {
  code: 'TL379',
  title: 'Two points exchanged in one look',
  severity: 'warning',
  restsOn: ['looks', 'history'],
  why: 'The worn point is taken for the good one until the next look: its date moves by years, and work is done at the wrong end.',
  todo: 'Compare with the sheet of that day and exchange the two names; or read both points again.',
  given: 'estate',
  example: `${before}
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  «P1 thickness 6.5 mm|P1 thickness 10.1 mm»
  P2 thickness ‹10.1|6.5› mm
}${after}`,
  cases: [
    {
      name: 'in the last look',
      text: `${before}
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  «P1 thickness 6.5 mm»
  P2 thickness 10.1 mm
}`,
    },
    {
      name: 'one that grew alone',
      text: `${before}
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 10.1 mm
  P2 thickness 10.1 mm
}${after}`,
    },
  ],
  *check({ estate }) {
    for (const { inspection, rows, places } of likelySlips(estate).exchanges) {
      const [row, other] = rows;
      const [place, there] = places;
      const { conveyor, date } = inspection;
      const value = (each: number): string => lengthOn(conveyor, estate.readings.value[each] ?? NaN);
      yield {
        origin: originOf(estate.readings, row),
        message:
          `${place.name} and ${there.name} of ${conveyor.name} are exchanged on ${formatDay(date.day)}, it seems: ${value(row)} and ` +
          `${value(other)} fit what was read there before and after only crosswise.`,
        related: [{ origin: originOf(estate.readings, other), message: `the other one, ${there.name}` }],
      };
    }
  },
};
