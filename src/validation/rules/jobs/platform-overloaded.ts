// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const platformOverloaded: Rule = {
  code: 'TL478',
  title: 'More on a platform than it is rated for',
  severity: 'error',
  restsOn: ['machine'],
  why: 'An overloaded platform tips or fails under everybody on it.',
  todo: 'Let fewer people be on it at a time (`using MP1 with 2 people`), or take a larger one.',
  given: 'job',
  bad: but(
    soundOrder,
    ['\norder {', '\naccess units MP1, Small\norder {'],
    [
      '  strip run above Gate by Alpha attended by Bravo',
      '  «strip» run above Gate by Alpha attended by Bravo using Small',
    ],
  ),
  good: but(
    soundOrder,
    ['\norder {', '\naccess units MP1, Small\norder {'],
    [
      '  strip run above Gate by Alpha attended by Bravo',
      '  strip run above Gate by Alpha attended by Bravo using Small with 2 people',
    ],
  ),
  check: onViolation('platform overloaded'),
};
