// Where steel lies bare, does anybody know how thick it still is?

import { troughState } from '../../../domain/conditions/trough.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { insertAfter } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';

export const bareSteelNotMeasured: Rule = {
  code: 'TL356',
  title: 'Bare steel not measured',
  severity: 'warning',
  restsOn: ['looks', 'conditions', 'history'],
  why:
    'From the day a panel is lost the screw works on the trough itself; without a plate thickness nobody knows ' +
    'whether it lasts to the next outage.',
  todo: 'Read the plate there, from below where the cover cannot come off, and write it down: plate at … thickness ….',
  given: 'inspection',
  example: `
  «panel missing at 4.2 m|panel missing at 4.2 m»‹|
  plate at 4.3 m thickness 3.8 mm›`,
  cases: [
    { name: 'worn through is told as such', text: '  P1 trough showing' },
    { name: 'put back on the same day', text: '  panel missing at 4.2 m closed on 2025-03-10' },
  ],
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      for (const span of troughState(estate, conveyor).unread) {
        if (span.because !== 'panel missing') continue;
        const middle = chainageOn(conveyor, (span.from + span.to) / 2);
        yield {
          origin: span.origin,
          message:
            `The steel of ${conveyor.name} is bare from ${chainageOn(conveyor, span.from)} to ` +
            `${chainageOn(conveyor, span.to)} since ${formatDay(span.found.day)} at the latest, ` +
            'and its plate was not read since.',
          fixes: [
            insertAfter(
              span.origin,
              `\n  plate at ${middle} thickness ${conveyor.trough.plate.text}`,
              'Write what was read of the plate',
            ),
          ],
        };
      }
    }
  },
};
