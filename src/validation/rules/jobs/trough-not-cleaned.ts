// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const troughNotCleaned: Rule = {
  code: 'TL410',
  title: 'Fitted over an uncleaned trough',
  severity: 'error',
  restsOn: [],
  why: 'Dirt under a panel lifts it towards the spiral, and steel worn thin is hidden for the life of the new liner.',
  todo: 'Clean and look at the trough after stripping, and patch it if need be.',
  given: 'job',
  bad: but(soundOrder, ['  clean run above Gate by Alpha attended by Bravo\n', ''], ['  fit', '  «fit»']),
  good: soundOrder,
  check: onViolation('trough not cleaned'),
};
