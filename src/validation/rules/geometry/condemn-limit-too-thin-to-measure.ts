// Can the limit be seen with a gauge? Depth gauges read to ± 0.5 mm and ultrasonic ones to about ± 0.2 mm [judgement], so
// below 1 mm a reading cannot tell a liner at its limit from one worn through.

import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const condemnLimitTooThinToMeasure: Rule = {
  code: 'TL249',
  title: 'Condemn limit too thin to measure',
  severity: 'warning',
  restsOn: [],
  why: 'By the time a gauge shows such a limit, the screw may already be cutting the trough a hand away, and plates have to be welded on.',
  todo: 'Choose a limit of at least 1 mm; a quarter of the thickness is common practice.',
  given: 'liner',
  example: '  condemn at «0.5 mm|3 mm»',
  cases: [
    { name: 'at 1 mm', text: '  condemn at 1 mm' },
    { name: 'just below', text: '  condemn at «0.9 mm»' },
  ],
  check: each(
    (estate) => estate.liners,
    function* (liner) {
      if (liner.condemn.value >= 1) return;
      yield {
        origin: liner.condemn.origin,
        message: `${liner.name} is condemned at ${liner.condemn.text}, which is no more than the error of a gauge on site.`,
      };
    },
  ),
};
