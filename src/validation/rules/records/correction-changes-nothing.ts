// Does a correction say anything new?

import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';

export const correctionChangesNothing: Rule = {
  code: 'TL369',
  title: 'Correction that changes nothing',
  severity: 'warning',
  restsOn: ['looks', 'conditions', 'history'],
  why: 'Either the inspection was edited as well, so that what was first read is lost, or another reading was meant and still counts.',
  todo: 'Put the first reading back into the inspection as it was, or take the correction out.',
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness ‹9.4|9.8› mm
}
«correction DG1 2024-09-20 P1 read on 2024-09-09 thickness 9.4 mm by "shift" "set for steel"»`,
  cases: [
    {
      name: 'a meter that says so',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  P1 thickness 9.8 mm
}
«correction DG1 2024-09-20 meter read on 2024-09-09 3600 h by "shift" "digits swapped"»`,
    },
  ],
  *check({ estate }) {
    for (const { outcome, read, origin } of [...estate.corrections, ...estate.amendments])
      if (outcome === 'changes nothing')
        yield { origin, message: `The reading of ${formatDay(read.day)} says this already.` };
  },
};
