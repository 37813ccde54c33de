// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const emptiedTooLate: Rule = {
  code: 'TL470',
  title: 'Trough emptied after isolation',
  severity: 'error',
  restsOn: [],
  why: 'Only a turning screw empties the trough; what stays in is weight on the spiral, gas, and dirt under the new liner.',
  todo: 'Put the step before isolate.',
  given: 'job',
  bad: but(soundOrder, ['  prove dead', '  prove dead\n  «empty»']),
  good: but(soundOrder, ['  isolate', '  empty\n  isolate']),
  check: onViolation('emptied too late'),
};
