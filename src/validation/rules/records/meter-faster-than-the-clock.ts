// Did the meter count more hours than passed? 24 a day, and a day on top because records are dated to the day.

import { formatDay } from '../../../domain/units/calendar.js';
import { formatHours } from '../../../domain/units/format.js';
import { beforeCommissioning, conflictsOf, placeOf } from '../../evidence/counter-conflicts.js';
import type { Rule } from '../../rule.js';

export const meterFasterThanTheClock: Rule = {
  code: 'TL302',
  title: 'Meter faster than the calendar',
  severity: 'error',
  restsOn: ['history'],
  why: 'The wear rate between the two would come out too low and the liner be trusted for longer than it lasts.',
  todo: 'Check the reading for a digit too many and the date for the year; a meter counting minutes or tenths shows this too.',
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 10.9 mm
}
inspection DG1 2025-03-10 meter «62000 h|6200 h» {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}`,
  *check({ estate }) {
    for (const { conveyor, kind, reading, against } of conflictsOf(estate, 'hours')) {
      if (beforeCommissioning(conveyor, reading) || beforeCommissioning(conveyor, against)) continue; // has its own finding
      if (kind !== 'faster than the clock') continue;
      const days = Math.abs(reading.day - against.day);
      const hours = Math.abs(reading.value - against.value);
      yield {
        origin: placeOf(estate, conveyor, reading, 'hours'),
        message:
          `The meter of ${conveyor.name} shows ${formatHours(reading.value)} on ${formatDay(reading.day)} ` +
          `and ${formatHours(against.value)} on ${formatDay(against.day)}: ` +
          `${formatHours(hours)} ${days === 0 ? 'apart on one day' : `in ${days} days, which have ${days * 24} h`}.`,
        related: [
          {
            origin: placeOf(estate, conveyor, against, 'hours'),
            message: `${formatHours(against.value)} on ${formatDay(against.day)}`,
          },
        ],
      };
    }
  },
};
