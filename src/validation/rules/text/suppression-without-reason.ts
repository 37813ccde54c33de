// A comment that silences a finding and does not say why.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../on-problem.js';

export const suppressionWithoutReason: Rule = {
  code: 'TL118',
  title: 'Finding silenced without a reason',
  severity: 'warning',
  why: 'The next person cannot tell a considered decision from a finding that was in the way.',
  todo: 'Write the reason in quotation marks after the code.',
  given: 'estate',
  bad: '',
  good: '',
  check: onProblem('suppression without reason', (problem) => ({
    message: `${problem.code} is silenced here without a reason.`,
  })),
};
