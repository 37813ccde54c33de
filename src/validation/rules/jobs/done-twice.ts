// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const doneTwice: Rule = {
  code: 'TL422',
  title: 'Step done twice',
  severity: 'warning',
  restsOn: [],
  why: 'What is counted twice hides what is not done at all.',
  todo: 'Take one of the two out, or correct its stretch.',
  given: 'job',
  bad: but(soundOrder, [
    '  covers on run above Gate\n',
    '  covers on run above Gate\n  «covers on» run above Gate\n',
  ]),
  good: soundOrder,
  check: onViolation('done twice'),
};
