// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const handedBackTooEarly: Rule = {
  code: 'TL412',
  title: 'Isolation removed while the trough is open',
  severity: 'error',
  restsOn: [],
  why: 'Once the isolation is off the screw can turn, with people at an open trough.',
  todo: 'Put everything back first, then remove the isolation.',
  given: 'job',
  bad: but(soundOrder, [
    '  covers on run above Gate\n  remove isolation\n',
    '  «remove isolation»\n  covers on run above Gate\n',
  ]),
  good: soundOrder,
  check: onViolation('handed back too early'),
};
