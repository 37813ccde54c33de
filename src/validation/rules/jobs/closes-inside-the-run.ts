// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const closesInsideTheRun: Rule = {
  code: 'TL403',
  title: 'Run closed between two panels that stay',
  severity: 'error',
  restsOn: [],
  why: 'Between two panels that stay the hole is never exactly one panel long; a run is closed at a break, or with a piece cut to the hole.',
  todo: 'Take out the panels up to the next break as well, and close there; or measure the gap on site and cut the last panel to it (`fit … cut to fit`).',
  given: 'job',
  bad: but(
    soundOrder,
    ['\norder {', '\nreline panels 2 to 3 of run above Gate\norder {'],
    ['strip run above Gate', 'strip panels 2 to 3 of run above Gate'],
    ['clean run above Gate', 'clean panels 2 to 3 of run above Gate'],
    ['  fit run above Gate starting at head', '  «fit» panels 2 to 3 of run above Gate starting at head'],
  ),
  good: soundOrder,
  cases: [
    {
      name: 'with a piece cut to the gap as measured',
      text: but(
        soundOrder,
        ['\norder {', '\nreline panels 2 to 3 of run above Gate\norder {'],
        ['strip run above Gate', 'strip panels 2 to 3 of run above Gate'],
        ['clean run above Gate', 'clean panels 2 to 3 of run above Gate'],
        [
          '  fit run above Gate starting at head',
          '  fit panels 2 to 3 of run above Gate starting at head cut to fit',
        ],
      ),
    },
  ],
  check: onViolation('closes inside the run'),
};
