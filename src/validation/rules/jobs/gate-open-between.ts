// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundSideBySide } from '../../telling/sound-order.js';

export const gateOpenBetween: Rule = {
  code: 'TL476',
  title: 'Gate left open between two crews',
  severity: 'warning',
  restsOn: [],
  why: 'Fitting one run while the next is stripped is safe only behind a barrier; through an open gate a panel slides onto the crew below.',
  todo: 'Shut the gate as a barrier first (`gate shut`), or let one step wait for the other.',
  given: 'job',
  bad: but(
    soundSideBySide,
    ['  fit run above Gate starting at head by Bravo attended by Alpha\n', ''],
    [
      '  hold-downs on\n  covers on\n  gate open Gate\n',
      `  opened: gate open Gate
  rim: hold-downs on run above Inlet by Alpha after opened
  top: «fit» run above Gate starting at head by Bravo with 2 people after opened
  hold-downs on run above Gate
  covers on
`,
    ],
  ),
  good: soundSideBySide,
  check: onViolation('gate open between'),
};
