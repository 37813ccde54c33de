// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const runTooEarly: Rule = {
  code: 'TL413',
  title: 'Run before the machine is ready for it',
  severity: 'error',
  restsOn: [],
  why: 'A spiral that turns in an open or half-fitted trough takes hold of whatever and whoever is there; loaded first, it cuts before anyone notices.',
  todo: 'Remove isolation when all is closed, run empty, read the current, then run loaded.',
  given: 'job',
  bad: but(soundOrder, ['  run empty\n  run loaded\n', '  «run loaded»\n']),
  good: soundOrder,
  check: onViolation('run too early'),
};
