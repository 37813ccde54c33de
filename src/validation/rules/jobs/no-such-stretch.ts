// Told by the order checker (domain/order): a step over a run or a panel that is not there, or where no liner lies.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const noSuchStretch: Rule = {
  code: 'TL427',
  title: 'Step over a stretch that is not there',
  severity: 'error',
  restsOn: [],
  why: 'The step does nothing, and what was meant by it is left undone.',
  todo: 'Runs are numbered from the tail, panels from the tail end of their run; correct the stretch.',
  given: 'job',
  bad: but(soundOrder, ['  fit run', '  clean «run 5» by Alpha attended by Bravo\n  fit run']),
  good: soundOrder,
  check: onViolation('no such stretch'),
};
