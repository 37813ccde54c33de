// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundSideBySide } from '../../telling/sound-order.js';

export const crewInTwoPlaces: Rule = {
  code: 'TL417',
  title: 'Crew in two places at once',
  severity: 'error',
  restsOn: [],
  why: 'One of the two steps waits, and the window is planned as if it did not.',
  todo: 'Let one step come after the other, or give it to another crew.',
  given: 'job',
  bad: but(soundSideBySide, ['high: strip run above Gate by Bravo', 'high: «strip» run above Gate by Alpha']),
  good: soundSideBySide,
  check: onViolation('crew in two places'),
};
