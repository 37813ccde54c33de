// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundScrewChange } from '../../telling/sound-order.js';

export const screwNotRestrained: Rule = {
  code: 'TL414',
  title: 'Drive unbolted from a spiral that nothing holds',
  severity: 'error',
  restsOn: [],
  why: 'The spiral is a spring lying on a slope: unbolted it springs back and slides down with its whole weight.',
  todo: 'Restrain the screw before unbolting the drive plate.',
  given: 'job',
  bad: but(soundScrewChange, ['  restrain screw\n', ''], ['unbolt drive', '«unbolt drive»']),
  good: soundScrewChange,
  check: onViolation('screw not restrained'),
};
