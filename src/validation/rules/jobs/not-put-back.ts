// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const notPutBack: Rule = {
  code: 'TL423',
  title: 'Taken off and not put back',
  severity: 'warning',
  why: 'What is left off is found on the ground when the machine runs.',
  todo: 'Add the step that puts it back over the same stretch.',
  given: 'job',
  bad: but(
    soundOrder,
    ['order {', '«order» {'],
    ['  covers on run above Gate', '  covers on from 9 m to 12 m'],
  ),
  good: soundOrder,
  check: onViolation('not put back'),
};
