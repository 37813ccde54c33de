// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const scopeNotDone: Rule = {
  code: 'TL424',
  title: 'Scope that no step does',
  severity: 'warning',
  restsOn: [],
  why: 'The records would say that this was renewed when it was not.',
  todo: 'Add the missing steps, or take the stretch out of the scope.',
  given: 'job',
  bad: but(soundOrder, ['\norder {', '\nreline run above Gate\nreline run above Inlet\n«order» {']),
  good: soundOrder,
  check: onViolation('scope not done'),
};
