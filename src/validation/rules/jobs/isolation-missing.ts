// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const isolationMissing: Rule = {
  code: 'TL406',
  title: 'Work without isolation proved',
  severity: 'error',
  restsOn: [],
  why: 'A screw that starts, or springs back, takes hold of whoever reaches into the trough.',
  todo: 'Isolate and prove dead before anything is opened; isolation ends after everything is closed.',
  given: 'job',
  bad: but(soundOrder, ['  prove dead\n', ''], ['  gas test run', '  «gas test» run']),
  good: soundOrder,
  check: onViolation('isolation missing'),
};
