// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundScrewChange } from '../../telling/sound-order.js';

/** The lower part of the spiral is taken out from below the gate. */
const shutGate = but(
  soundScrewChange,
  ['  isolate', '  gate shut Gate\n  isolate'],
  ['  remove iso', '  gate open Gate\n  remove iso'],
);

export const spiralFromTheMiddle: Rule = {
  code: 'TL483',
  title: 'Spiral taken out from the middle first',
  severity: 'error',
  restsOn: [],
  why: 'Cut free at both ends at once, the piece springs and jams, and the part without restraint is let go and slides.',
  todo: 'Take the pieces from an end, or beside a piece that is out already.',
  given: 'job',
  bad: but(shutGate, [
    '  remove screw',
    '  «remove screw» from 4 m to 8 m by Alpha attended by Bravo\n  remove screw from 8 m to 12 m by Alpha attended by Bravo\n  remove screw from 0 m to 4 m',
  ]),
  good: but(shutGate, [
    '  remove screw',
    '  remove screw from 8 m to 12 m by Alpha attended by Bravo\n  remove screw from 4 m to 8 m by Alpha attended by Bravo\n  remove screw from 0 m to 4 m',
  ]),
  check: onViolation('spiral from the middle'),
};
