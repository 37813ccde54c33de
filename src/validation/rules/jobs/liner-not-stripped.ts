// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const linerNotStripped: Rule = {
  code: 'TL409',
  title: 'Old liner still in the way',
  severity: 'error',
  restsOn: [],
  why: 'Old and new panels cannot lie in the same place, and a trough can be looked at only when it is bare.',
  todo: 'Strip the stretch before it is cleaned and fitted.',
  given: 'job',
  bad: but(soundOrder, ['  strip run above Gate by Alpha attended by Bravo\n', ''], ['clean', '«clean»']),
  good: soundOrder,
  check: onViolation('liner not stripped'),
};
