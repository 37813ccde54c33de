// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundSideBySide } from '../../telling/sound-order.js';

export const accessUnitInTwoPlaces: Rule = {
  code: 'TL418',
  title: 'Access unit in two places at once',
  severity: 'error',
  restsOn: [],
  why: 'A platform serves one stretch at a time; moving it takes time that the plan does not have.',
  todo: 'Let one step come after the other, or name another unit.',
  given: 'job',
  bad: but(
    soundSideBySide,
    ['by Alpha with 3 people after open', 'by Alpha using MP1 with 3 people after open'],
    [
      'high: strip run above Gate by Bravo with 2 people after open',
      'high: «strip» run above Gate by Bravo using MP1 with 2 people after open',
    ],
  ),
  good: soundSideBySide,
  check: onViolation('access unit in two places'),
};
