// Was a look or a reline dated in another year, or with day and month exchanged? Its meter and its readings contradict their neighbours, and
// one other date ends all of that at once (evidence/likely-slips.ts). What only follows from it is not told beside it.

import { meterWords } from '../../../domain/model/meter-read.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { counted } from '../../../domain/units/wording.js';
import { likelySlips } from '../../evidence/likely-slips.js';
import type { Rule } from '../../rule.js';
import { replace } from '../../telling/fixes.js';

const others = `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 10.4 mm
  P2 thickness 10.6 mm
}
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.2 mm
  P2 thickness 9.6 mm
}`;
const readings = `
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 8.0 mm
  P2 thickness 8.6 mm
}`;

export const dateOfAnotherYear: Rule = {
  code: 'TL378',
  title: 'Record dated in another year',
  severity: 'error',
  restsOn: ['looks', 'history'],
  why: 'Every rate of its points is reckoned between wrong days and hours, and what follows (a meter that runs back, liners that grow) hides the slip itself.',
  todo: 'Check the date against the sheet or the photo of that day.',
  given: 'estate',
  example: `${others}
inspection DG1 «2024-09-08|2025-09-08» meter 9000 h {${readings}`,
  cases: [
    {
      name: 'day and month exchanged',
      text: `${others}
inspection DG1 «2024-08-09» meter 9000 h {${readings.replace('8.0', '8.1')}
inspection DG1 2026-02-09 meter 11600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 6.9 mm
}`,
    },
    {
      name: 'a reline',
      text: `${others}
inspection DG1 2025-09-08 meter 9000 h {${readings.replace('8.0', '11.7').replace('8.6', '11.6')}
inspection DG1 2026-03-09 meter 11600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 10.8 mm
}
reline DG1 «2024-06-09» meter 7700 h {
  liner TwoLayer12
}`,
    },
    {
      name: 'a meter alone in a short history may be misread as well',
      text: `
inspection DG1 2024-09-09 meter 1200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 11.4 mm
}
inspection DG1 2025-03-10 meter 900 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P2 thickness 11.4 mm
}`,
    },
    {
      name: 'readings of another machine: no other date ends it',
      text: `${others}
inspection DG1 2025-09-08 meter 5000 h {${readings.replace('8.0', '11.4').replace('8.6', '11.3')}`,
    },
  ],
  *check({ estate }) {
    for (const { record, meant, ends } of likelySlips(estate).dates) {
      const { conveyor, date, meter } = record;
      yield {
        origin: date.origin,
        message:
          `This ${'firstRow' in record ? 'look' : 'reline'} of ${conveyor.name} is dated ${formatDay(date.day)}, and ${formatDay(meant)} ` +
          `was meant, it seems: there its meter (${meterWords(meter)}) and what was read fit the records before and after, ` +
          `here ${counted(ends, 'contradiction')} follow from it.`,
        fixes: [replace(date.origin, formatDay(meant))],
      };
    }
  },
};
