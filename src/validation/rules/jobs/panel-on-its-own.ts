// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const panelOnItsOwn: Rule = {
  code: 'TL401',
  title: 'Panel fitted away from its neighbour',
  severity: 'error',
  restsOn: [],
  why: 'A panel is tapped tight against its neighbour before it is drilled; one fitted on its own fixes a gap that no panel matches later.',
  todo: 'Fit the panels of a run one after the other from one end.',
  given: 'job',
  bad: but(
    soundOrder,
    ['\norder {', '\nreline panels 1 to 2 of run above Gate\norder {'],
    ['strip run above Gate', 'strip panels 1 to 2 of run above Gate'],
    ['clean run above Gate', 'clean panels 1 to 2 of run above Gate'],
    ['  fit run above Gate starting at head', '  «fit» panel 1 of run above Gate starting at head'],
  ),
  good: soundOrder,
  check: onViolation('not contiguous'),
};
