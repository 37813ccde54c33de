// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const panelWouldSlide: Rule = {
  code: 'TL405',
  title: 'Panels fitted uphill with nothing to rest on',
  severity: 'error',
  restsOn: ['machine'],
  why: 'On a slope a panel that rests on nothing slides down onto the people below before it is bolted.',
  todo: 'Fit from the top down, each panel butted up against the one above, or start at a lower end that holds the panels.',
  given: 'job',
  bad: but(
    soundOrder,
    ['\norder {', '\nreline run above Inlet\norder {\n  gate shut Gate'],
    ['  remove iso', '  gate open Gate\n  remove iso'],
    ['gas test run above Gate', 'gas test run above Inlet'],
    ['covers off run above Gate', 'covers off run above Inlet'],
    ['hold-downs off run above Gate', 'hold-downs off run above Inlet'],
    ['strip run above Gate', 'strip run above Inlet'],
    ['clean run above Gate', 'clean run above Inlet'],
    ['hold-downs on run above Gate', 'hold-downs on run above Inlet'],
    ['  covers on run above Gate', '  covers on run above Inlet'],
    ['  fit run above Gate starting at head', '  «fit» run above Inlet starting at tail'],
  ),
  good: soundOrder,
  check: onViolation('panel would slide'),
};
