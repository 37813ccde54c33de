// Does a trial of a safeguard say in its own words that it failed?

import { isTrial, speaksOfFailing } from '../../../domain/conditions/trials.js';
import { workPlaceWords } from '../../../domain/conditions/service.js';
import type { Rule } from '../../rule.js';

export const trialThatFailed: Rule = {
  code: 'TL567',
  title: 'Trial whose words say that it failed',
  severity: 'warning',
  restsOn: [],
  why:
    '`tried` says that a safeguard did what it is there for. What failed stands nowhere then: not on page 1, not on the next sheet, not ' +
    'before the first step of a pack.',
  todo: 'Write it as `emergency stop dead at tail` in the look, with the same words; where it did work, say so in other words.',
  given: 'inspection',
  example: '  «emergency stop tried at tail "did not stop"|emergency stop tried at tail "stopped at once"»',
  cases: [
    { name: 'as work', text: '  «serviced interlock tried at 4 m "bridged with wire"»' },
    { name: 'looked at', text: '  «guard found good at head "two screws broken"»' },
    { name: 'no fault', text: '  pull cord tried "trips at 40 N, no slack"' },
  ],
  *check({ estate }) {
    for (const service of estate.services) {
      if (!isTrial(service) || !speaksOfFailing(service)) continue;
      const { origin, part = 'safeguard', place, work = 'tried', note = '' } = service;
      yield {
        origin,
        message: `${part}${workPlaceWords(place)} is written as ${work}, and its words say “${note}”: it is not counted as a trial.`,
      };
    }
  },
};
