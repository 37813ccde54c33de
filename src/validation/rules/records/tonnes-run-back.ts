// Does the tonnes counter ever show less than before?

import { formatDay } from '../../../domain/units/calendar.js';
import { formatNumber } from '../../../domain/units/format.js';
import { conflictsOf, placeOf } from '../../evidence/counter-conflicts.js';
import type { Rule } from '../../rule.js';

export const tonnesRunBack: Rule = {
  code: 'TL327',
  title: 'Tonnes counter that runs back',
  severity: 'error',
  restsOn: ['history'],
  why: 'Where wear goes by tonnes, rates and dates come out wrong from here on.',
  todo: 'Look the reading up; write the running total since commissioning, not the tonnes since the last record.',
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h tonnes 31000 t {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 10.9 mm
}
inspection DG1 2025-03-10 meter 6200 h tonnes «22000 t|53000 t» {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}`,
  *check({ estate }) {
    for (const { conveyor, reading, against } of conflictsOf(estate, 'tonnes')) {
      yield {
        origin: placeOf(estate, conveyor, reading, 'tonnes'),
        message:
          `The counter of ${conveyor.name} shows ${formatNumber(reading.value)} t on ` +
          `${formatDay(reading.day)}, and ${formatNumber(against.value)} t on ${formatDay(against.day)}.`,
        related: [
          {
            origin: placeOf(estate, conveyor, against, 'tonnes'),
            message: `${formatNumber(against.value)} t on ${formatDay(against.day)}`,
          },
        ],
      };
    }
  },
};
