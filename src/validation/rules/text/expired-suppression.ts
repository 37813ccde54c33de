// A comment whose `until` date has passed, judged by the newest record or the date given, never by the clock.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../on-problem.js';

export const expiredSuppression: Rule = {
  code: 'TL121',
  title: 'Silencing comment past its date',
  severity: 'warning',
  why: 'Someone promised to deal with the finding by that date; it is reported again so that it is not forgotten.',
  todo: 'Deal with the finding, or give a new date and the reason for it.',
  given: 'estate',
  bad: '',
  good: '',
  check: onProblem('expired suppression', (problem) => ({
    message: `${problem.code} was silenced until ${problem.until}, and the records have reached ${problem.asOf}.`,
  })),
};
