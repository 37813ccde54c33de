// Can the spare spiral that was counted have been fitted since?

import { spareScrewOn } from '../../../domain/model/spare-screw.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { counted } from '../../../domain/units/wording.js';
import type { Rule } from '../../rule.js';

export const spiralCountedBeforeAChange: Rule = {
  code: 'TL375',
  title: 'Spiral counted before the last screw change',
  severity: 'warning',
  restsOn: ['history'],
  why: 'The spare may turn in a trough by now, and the change that counts on it waits for a delivery of months.',
  todo: 'Count again and write the count down with its day; 0 where there is none.',
  given: 'estate',
  around: { plant: 'on the shelf Spiral400 1 spiral counted ‹2024-10-01|2024-10-21›\n- outage\n- lead' },
  example: `
screw change «DG1» 2024-10-07 meter 3900 h {
  screw Spiral400
}`,
  *check({ estate }) {
    for (const { conveyor, conveyorUse, date, screw } of estate.screwChanges) {
      const count = spareScrewOn(conveyor.plant, screw, undefined, []);
      if (!count || count.count.count === 0 || count.counted.day >= date.day) continue;
      yield {
        origin: conveyorUse.origin,
        message:
          `${counted(count.count.count, 'spiral')} ${screw.name} lay on the shelf on ${formatDay(count.counted.day)}, ` +
          `and ${conveyor.name} got one on ${formatDay(date.day)}.`,
        related: [{ origin: count.origin, message: 'the count' }],
      };
    }
  },
};
