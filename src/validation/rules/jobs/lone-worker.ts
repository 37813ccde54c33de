// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const loneWorker: Rule = {
  code: 'TL474',
  title: 'One person alone inside an enclosed trough',
  severity: 'error',
  restsOn: [],
  why: 'Whoever is overcome by gas cannot call, and the next one through the hatch is the second victim.',
  todo: 'Send two, or let another crew stand by outside: `attended by`.',
  given: 'job',
  bad: but(
    soundOrder,
    ['\norder {', '\ncrews Alpha, Bravo, Solo\norder {'],
    ['  strip run above Gate by Alpha attended by Bravo', '  «strip» run above Gate by Solo'],
  ),
  good: but(
    soundOrder,
    ['\norder {', '\ncrews Alpha, Bravo, Solo\norder {'],
    ['  strip run above Gate by Alpha attended by Bravo', '  strip run above Gate by Solo attended by Alpha'],
  ),
  check: onViolation('lone worker'),
};
