// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const circularOrder: Rule = {
  code: 'TL426',
  title: 'Steps that wait for each other',
  severity: 'error',
  restsOn: [],
  why: 'None of them can ever start, so the crews stand waiting for each other and the window runs out.',
  todo: 'Drop one of the "after" that close the circle.',
  given: 'job',
  bad: but(
    soundOrder,
    ['  hold-downs off', '  open: hold-downs off'],
    [
      '  strip run above Gate by Alpha attended by Bravo',
      '  a: «strip» run above Gate by Alpha attended by Bravo after open, b',
    ],
    [
      '  clean run above Gate by Alpha attended by Bravo',
      '  b: clean run above Gate by Alpha attended by Bravo after a',
    ],
  ),
  good: soundOrder,
  check: onViolation('circular order'),
};
