// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const notClearedUp: Rule = {
  code: 'TL490',
  title: 'Closed up over tools and litter',
  severity: 'warning',
  restsOn: [],
  why: 'A spanner or an offcut under the covers is dragged along by the spiral: it scores the new liner and jams where it is hardest to reach.',
  todo: 'Clear up once the work under the covers is done, and before they go on.',
  given: 'job',
  bad: but(soundOrder, [
    '  hold-downs on run above Gate\n  covers on',
    '  clear up run above Gate\n  hold-downs on run above Gate\n  «covers on»',
  ]),
  good: but(soundOrder, ['  covers on run', '  clear up run above Gate\n  covers on run']),
  check: onViolation('not cleared up'),
};
