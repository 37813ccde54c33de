// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundScrewChange } from '../../telling/sound-order.js';

export const screwOutOfTurn: Rule = {
  code: 'TL415',
  title: 'Screw moved at the wrong moment',
  severity: 'error',
  restsOn: [],
  why: 'The new screw lies on the new liner: put in before it, it has to come out again; taken out late, nobody can fit beneath it.',
  todo: 'Remove the screw before stripping under it, insert the new one after fitting and before the hold-downs.',
  given: 'job',
  bad: but(soundScrewChange, [
    '  insert screw by Alpha attended by Bravo\n  bolt drive\n',
    '  «bolt drive»\n  insert screw by Alpha attended by Bravo\n',
  ]),
  good: soundScrewChange,
  check: onViolation('screw out of turn'),
};
