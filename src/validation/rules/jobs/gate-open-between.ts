// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundSideBySide } from '../../telling/sound-order.js';

export const gateOpenBetween: Rule = {
  code: 'TL476',
  title: 'Gate left open between two crews',
  severity: 'warning',
  why: 'Fitting one run while the next is stripped is safe only behind a barrier; through an open gate a panel slides onto the crew below.',
  todo: 'Shut the gate as a barrier first (`gate shut`), or let one step wait for the other.',
  given: 'job',
  bad: but(
    soundSideBySide,
    ['  gate shut Gate\n', ''],
    ['  gate open Gate\n', ''],
    ['high: strip run above Gate', 'high: «strip» run above Gate'],
  ),
  good: soundSideBySide,
  check: onViolation('gate open between'),
};
