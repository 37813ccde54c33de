// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const notPutBack: Rule = {
  code: 'TL423',
  title: 'Taken off and not put back',
  severity: 'error',
  restsOn: [],
  why: 'What is left off, or locked off, is found when somebody starts the machine, or lies on the ground when it runs.',
  todo: 'Add the steps that put it back and hand the machine over.',
  given: 'job',
  bad: but(soundOrder, ['order {', '«order» {'], ['  remove isolation\n  run empty\n  run loaded\n', '']),
  good: soundOrder,
  check: onViolation('not put back'),
};
