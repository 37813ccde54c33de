// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundSideBySide } from '../../telling/sound-order.js';

export const workBelowLooseParts: Rule = {
  code: 'TL421',
  title: 'Work below loose parts',
  severity: 'error',
  restsOn: [],
  why: 'On a slope a panel or a piece of spiral let go slides down onto whoever works below.',
  todo: 'Let one step wait for the other, or keep a closed break between them.',
  given: 'job',
  bad: but(
    soundSideBySide,
    ['run above Inlet\n', 'panels 1 to 2 of run above Gate\n'],
    ['reline run above Gate', 'reline panels 3 to 4 of run above Gate'],
    ['strip run above Inlet', 'strip panels 1 to 2 of run above Gate'],
    ['strip run above Gate', '«strip» panels 3 to 4 of run above Gate'],
    ['  fit run above Inlet starting at head by Alpha attended by Bravo\n', ''],
  ),
  good: soundSideBySide,
  check: onViolation('work below loose parts'),
};
