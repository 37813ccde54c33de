// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const notOpenedUp: Rule = {
  code: 'TL408',
  title: 'Work on what is still covered or held down',
  severity: 'error',
  restsOn: [],
  why: 'Nobody gets at the liner under covers, braces or hold-downs; the crew stands waiting while they are taken off.',
  todo: 'Take covers, braces and hold-downs off first, over the same stretch.',
  given: 'job',
  bad: but(soundOrder, ['  hold-downs off run above Gate\n', ''], ['strip', '«strip»']),
  good: soundOrder,
  check: onViolation('not opened up'),
};
