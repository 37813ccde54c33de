// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const gateOutOfTurn: Rule = {
  code: 'TL471',
  title: 'Gate moved out of turn',
  severity: 'error',
  restsOn: [],
  why: 'A barrier that is not where the order says protects nobody, and a gate that is stripped cannot be shut.',
  todo: 'Shut, open, strip and refit the gate in an order that can be.',
  given: 'job',
  bad: but(
    soundOrder,
    ['gas test run above Gate', 'gas test all'],
    ['  strip run', '  gate off Gate by Alpha attended by Bravo\n  strip run'],
    ['  clean run', '  «gate shut» Gate\n  clean run'],
    ['  remove iso', '  gate on Gate by Alpha attended by Bravo\n  remove iso'],
  ),
  good: but(
    soundOrder,
    ['  strip run', '  gate shut Gate\n  strip run'],
    ['  remove iso', '  gate open Gate\n  remove iso'],
  ),
  check: onViolation('gate out of turn'),
};
