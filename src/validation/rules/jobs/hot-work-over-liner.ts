// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const hotWorkOverLiner: Rule = {
  code: 'TL416',
  title: 'Hot work with liner in place',
  severity: 'error',
  why: 'Polyethylene burns and drips burning; the fire runs down the trough out of reach.',
  todo: 'Strip there first, or shield, wet and keep a fire watch, and say so in the step.',
  given: 'job',
  bad: but(soundOrder, ['  strip run', '  «patch» run above Gate\n  strip run']),
  good: soundOrder,
  check: onViolation('hot work over liner'),
};
