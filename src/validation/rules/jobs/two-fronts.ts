// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const twoFronts: Rule = {
  code: 'TL402',
  title: 'Run with two fronts',
  severity: 'error',
  restsOn: [],
  why:
    'The last hole between two fronts is as long as all the errors before it made it. ' +
    'A panel too long will not drop in; one too short leaves a joint open, ' +
    'and material works its way behind the liner. Only a break could take the difference up.',
  todo: 'Fit the run from one end only, or declare a break where the fronts are to meet.',
  given: 'job',
  bad: but(soundOrder, [
    '  fit run above Gate starting at head by Alpha attended by Bravo\n',
    '  fit panels 3 to 4 of run above Gate starting at head by Alpha attended by Bravo\n  «fit» panels 1 to 2 of run above Gate starting at tail by Bravo attended by Alpha\n',
  ]),
  good: soundOrder,
  check: onViolation('two fronts'),
};
