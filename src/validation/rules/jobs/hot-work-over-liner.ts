// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const hotWorkOverLiner: Rule = {
  code: 'TL416',
  title: 'Hot work with liner in reach',
  severity: 'error',
  restsOn: [],
  why: 'Polyethylene burns and drips burning; the fire runs down the trough out of reach. A word in a note protects nobody.',
  todo: 'Strip there first, do it cold (`cold work`), or say on the step what is done: `hot work shielded wet fire watch 60 min`.',
  given: 'job',
  bad: but(soundOrder, [
    '  strip run',
    '  «patch» run above Gate by Alpha attended by Bravo "shield and fire watch?"\n  fire watch run above Gate\n  strip run',
  ]),
  good: but(soundOrder, [
    '  strip run',
    '  patch run above Gate by Alpha attended by Bravo hot work shielded wet fire watch 60 min\n  fire watch run above Gate\n  strip run',
  ]),
  check: onViolation('hot work over liner'),
};
