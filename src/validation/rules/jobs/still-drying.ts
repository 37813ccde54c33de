// Told by the order checker (domain/order), which also finds the repairs. How long the wait is, the planner knows.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const stillDrying: Rule = {
  code: 'TL491',
  title: 'Work where a place still has to dry or cool',
  severity: 'warning',
  restsOn: [],
  why: 'What is wet under a panel stays wet and rusts; what is hot softens the panel and burns hands.',
  todo: 'Let the later step wait for the one that `dries` or `cools`; the plan then keeps the time between.',
  given: 'job',
  bad: but(
    soundOrder,
    [
      '  clean run above Gate by Alpha attended by Bravo',
      '  c: clean run above Gate by Alpha attended by Bravo\n  patch run above Gate by Bravo with 2 people after c cools 1 h cold work',
    ],
    [
      '  fit run above Gate starting at head by Alpha attended by Bravo',
      '  «fit» run above Gate starting at head by Alpha with 3 people after c',
    ],
  ),
  good: but(
    soundOrder,
    [
      '  clean run above Gate by Alpha attended by Bravo',
      '  c: clean run above Gate by Alpha attended by Bravo\n  p: patch run above Gate by Bravo with 2 people after c cools 1 h cold work',
    ],
    [
      '  fit run above Gate starting at head by Alpha attended by Bravo',
      '  fit run above Gate starting at head by Alpha attended by Bravo after p',
    ],
  ),
  check: onViolation('still drying'),
};
