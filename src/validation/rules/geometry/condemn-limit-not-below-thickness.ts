// Is there anything to wear between new and condemned?

import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const condemnLimitNotBelowThickness: Rule = {
  code: 'TL207',
  title: 'Condemn limit that a new liner does not meet',
  severity: 'error',
  restsOn: [],
  why: 'The limit is the thickness that remains when the liner must be changed, so a new liner would be condemned on the day it is fitted.',
  todo: 'Write the remaining thickness, not the worn depth.',
  given: 'liner',
  example: '  condemn at «12 mm|3 mm»',
  cases: [{ name: 'at the new thickness', text: '  condemn at «12 mm»' }],
  check: each(
    (estate) => estate.liners,
    function* (liner) {
      if (liner.condemn.value < liner.thickness.value) return;
      yield {
        origin: liner.condemn.origin,
        message: `${liner.name} is condemned at ${liner.condemn.text} and is ${liner.thickness.text} thick when new.`,
        related: [{ origin: liner.thickness.origin, message: 'its thickness' }],
      };
    },
  ),
};
