// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const nobodyOutside: Rule = {
  code: 'TL550',
  title: 'Everybody inside an enclosed trough',
  severity: 'error',
  restsOn: [],
  why: 'Gas takes all who are inside at the same time, and nobody is left to call for rescue or to keep the next one from going in after them.',
  todo: 'Let another crew stand by outside (`attended by`), or fewer be inside than come (`with 2 people`): one of the others stays outside and does nothing else.',
  given: 'job',
  bad: but(soundOrder, [
    '  strip run above Gate by Alpha attended by Bravo',
    '  «strip» run above Gate by Alpha',
  ]),
  good: but(soundOrder, [
    '  strip run above Gate by Alpha attended by Bravo',
    '  strip run above Gate by Alpha with 3 people',
  ]),
  check: onViolation('nobody outside'),
};
