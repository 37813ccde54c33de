// Is λ within what materials give? ISO 7119 lists 2 to 4.

import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const unusualResistance: Rule = {
  code: 'TL243',
  title: 'Resistance factor beyond the table',
  severity: 'information',
  restsOn: [],
  tags: ['advice'],
  why: 'The drive power goes with it: too low a factor makes a weak drive look strong.',
  todo: 'Take λ from the table for the material: about 2 for free-flowing to 4 for sticky or fibrous.',
  given: 'conveyor',
  example: '  resistance factor «8|3»',
  cases: [
    { name: 'the least', text: '  resistance factor 1.5' },
    { name: 'less than that', text: '  resistance factor «1.4»' },
    { name: 'the most', text: '  resistance factor 5' },
    { name: 'more than that', text: '  resistance factor «5.1»' },
  ],
  check: each(
    (estate) => estate.conveyors,
    function* ({ name, resistanceFactor: factor }) {
      if (!factor || (factor.value >= 1.5 && factor.value <= 5)) return;
      yield {
        origin: factor.origin,
        message: `The resistance factor of ${name} is ${factor.text}; materials have 2 to 4.`,
      };
    },
  ),
};
