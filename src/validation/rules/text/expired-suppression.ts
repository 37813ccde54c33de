// A comment whose `until` date has passed, judged by the newest record or the date given, never by the clock.

import type { Rule } from '../../rule.js';
import { remove } from '../../telling/fixes.js';
import { onProblem } from '../../telling/on-problem.js';

export const expiredSuppression: Rule = {
  code: 'TL121',
  title: 'Silencing comment past its date',
  severity: 'warning',
  restsOn: [],
  why: 'Someone promised to deal with the finding by that date; it is reported again so that it is not forgotten.',
  todo: 'Deal with the finding, or give a new date and the reason for it.',
  given: 'estate',
  bad: `
inspection DG1 2025-03-10 meter 6200 h {
  view downstream «// allow TL311 until 2025-01-31 because "the shift is asked for its view"»
  P1 colour ivory
}`,
  good: `
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  P1 colour ivory
}`,
  check: onProblem('expired suppression', (problem) => ({
    message: `${problem.code} was silenced until ${problem.until}, and the records have reached ${problem.asOf}.`,
    fixes: [remove(problem.origin, 'Take the comment out')],
  })),
};
