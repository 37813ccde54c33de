// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundRunBelow } from '../../telling/sound-order.js';

export const gateLeftOpenAbove: Rule = {
  code: 'TL552',
  title: 'Gate left open above people in the trough',
  severity: 'error',
  restsOn: ['machine'],
  why:
    'On a slope what stands or sticks above an open slide gate comes down without warning, faster than anybody gets out ' +
    'of the trough, and buries whoever is below it.',
  todo:
    'Shut the nearest gate above the work before anybody goes in, and before the isolation that locks its drive: ' +
    '`gate shut Gate`.',
  given: 'job',
  bad: but(soundRunBelow, ['  gate shut Gate\n', ''], ['  strip', '  «strip»'], ['  gate open Gate\n', '']),
  good: soundRunBelow,
  cases: [
    {
      name: 'shut only when the liner is out',
      text: but(
        soundRunBelow,
        ['  gate shut Gate\n', ''],
        ['  strip', '  «strip»'],
        ['  clean', '  gate shut Gate\n  clean'],
      ),
    },
  ],
  check: onViolation('gate above open'),
};
