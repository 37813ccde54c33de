// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const closedUpTooEarly: Rule = {
  code: 'TL411',
  title: 'Closed up before the work under it is done',
  severity: 'error',
  restsOn: [],
  why: 'What was put back has to come off again, and a panel is easily forgotten under a closed cover.',
  todo: 'Put hold-downs, braces and covers back after the fitting below them.',
  given: 'job',
  bad: but(soundOrder, [
    '  hold-downs on run above Gate\n  covers on run above Gate\n',
    '  «covers on» run above Gate\n  hold-downs on run above Gate\n',
  ]),
  good: soundOrder,
  check: onViolation('closed up too early'),
};
