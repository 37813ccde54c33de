// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const closingErrorTooLarge: Rule = {
  code: 'TL404',
  title: 'Closing panel whose error the break cannot take',
  severity: 'error',
  restsOn: ['machine'],
  why: 'Length errors add up towards the closing panel; what the break does not take up is cut on site at the end of a shift, or left as a gap.',
  todo: 'Start at the firm end and close at the break with the larger allowance.',
  given: 'job',
  bad: but(soundOrder, ['\norder {', '\nmeasuring tolerance 25 mm\norder {'], ['  fit', '  «fit»']),
  good: soundOrder,
  check: onViolation('closing error too large'),
};
