// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundRunBelow } from '../../telling/sound-order.js';

export const gateOpenedAbove: Rule = {
  code: 'TL553',
  title: 'Gate opened while people still work below it',
  severity: 'error',
  restsOn: [],
  why: 'What the gate held back comes down the slope onto whoever is still in the trough below it.',
  todo: 'Open the gate once nobody has anything to do below it, and everybody is out of the trough.',
  given: 'job',
  bad: but(soundRunBelow, ['  gate open Gate\n', ''], ['  clean', '  «gate open» Gate\n  clean']),
  good: soundRunBelow,
  cases: [
    {
      name: 'shut again before anybody goes on',
      text: but(soundRunBelow, ['  clean', '  gate open Gate\n  gate shut Gate\n  clean']),
    },
  ],
  check: onViolation('gate opened above people'),
};
