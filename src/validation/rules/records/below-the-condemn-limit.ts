// Is a liner that is still in at its limit or below it?

import { originOf } from '../../../domain/model/records.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { latestRows } from '../../evidence/latest-rows.js';
import { isAtLimit } from '../../evidence/at-the-limit.js';
import { dayOfRow } from '../../telling/reading-words.js';
import type { Rule } from '../../rule.js';

export const belowTheCondemnLimit: Rule = {
  code: 'TL310',
  title: 'Liner at or below its condemn limit',
  severity: 'error',
  restsOn: ['history'],
  why: 'What is left was set aside as the margin before the screw reaches the steel, and it is being used up.',
  todo: 'Plan the reline now and inspect often until then; if it was relined already, write that down.',
  given: 'inspection',
  example: '  «P1 thickness 2.6 mm|P1 thickness 5.6 mm»',
  cases: [
    { name: 'at the limit', text: '  «P1 thickness 3 mm»' },
    { name: 'a tenth above it', text: '  P1 thickness 3.1 mm' },
    { name: 'at nothing, which is the trough showing in a wrong form', text: '  P1 thickness 0.04 mm' },
  ],
  *check({ estate }) {
    for (const latest of latestRows(estate)) {
      if (!isAtLimit(estate, latest)) continue;
      const { row, place, set } = latest;
      const value = estate.readings.value[row] ?? 0;
      const limit = set.liner.condemn;
      yield {
        origin: originOf(estate.readings, row),
        message:
          `${place.name} of ${place.conveyor.name} has ${lengthOn(place.conveyor, value)} left ` +
          `(${dayOfRow(estate, row)}), and ${set.liner.name} is condemned at ${limit.text}.`,
        related: [{ origin: limit.origin, message: `condemn limit of ${set.liner.name}` }],
      };
    }
  },
};
