// Told by the order checker (domain/order), which also finds the repairs.

import { onViolation } from '../../telling/on-violation.js';
import type { Rule } from '../../rule.js';
import { but, soundOrder } from '../../telling/sound-order.js';

export const gasTestMissing: Rule = {
  code: 'TL407',
  title: 'Enclosed space opened without a gas test',
  severity: 'error',
  restsOn: [],
  why: 'Disturbed material gives off gas; hydrogen sulphide dulls the sense of smell before it kills.',
  todo: 'Test before anyone reaches in, and again after each break: `gas test all` before that step.',
  given: 'job',
  bad: but(soundOrder, ['  gas test run above Gate\n', ''], ['covers off', '«covers off»']),
  good: soundOrder,
  check: onViolation('gas test missing'),
};
