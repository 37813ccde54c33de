// A comment that silences a code no rule has: most often a slip of a digit.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';

export const suppressionOfUnknownCode: Rule = {
  code: 'TL119',
  title: 'Silenced code that no rule has',
  severity: 'warning',
  restsOn: [],
  why: 'The finding that was meant is still reported, or a finding that was never looked at may be taken as settled.',
  todo: 'Correct the code; `explain` lists them all.',
  given: 'liner',
  example:
    '  condemn at ‹3|7› mm «// allow TL298 because "measured at every round, ' +
    'never judged by colour"|// allow TL208 because "measured at every round, never judged by colour"»',
  check: onProblem('suppression of unknown code', (problem) => ({
    message: `No rule has the code ${problem.code}.`,
  })),
};
