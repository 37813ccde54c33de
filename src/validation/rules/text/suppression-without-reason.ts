// A comment that silences a finding and does not say why. Without a reason it silences nothing.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';

export const suppressionWithoutReason: Rule = {
  code: 'TL118',
  title: 'Finding silenced without a reason',
  severity: 'warning',
  restsOn: [],
  why: 'The next person cannot tell a considered decision from a finding that was in the way.',
  todo: 'Write the reason after the code: because "…".',
  given: 'liner',
  example:
    '  condemn at ‹3|7› mm «// allow TL208»‹| because "measured at every round, never judged by colour"›',
  check: onProblem('suppression without reason', (problem) => ({
    message: `${problem.code} is silenced here without a reason.`,
  })),
};
