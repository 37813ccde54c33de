// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const noTrialRun: Rule = {
  code: 'TL425',
  title: 'Order that ends without a trial run',
  severity: 'warning',
  restsOn: [],
  why: 'A new liner is proved by the empty and the loaded current; without them the first fault shows in service.',
  todo: 'End with run empty and run loaded.',
  given: 'job',
  bad: but(soundOrder, ['order {', '«order» {'], ['  run loaded\n', '']),
  good: soundOrder,
  check: onViolation('no trial run'),
};
