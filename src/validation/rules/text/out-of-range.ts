// A value that cannot be: a negative thickness, an incline beyond the vertical, a ratio above one.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';

export const outOfRange: Rule = {
  code: 'TL107',
  title: 'Value that cannot be',
  severity: 'error',
  restsOn: [],
  why: 'Nothing computed from such a value means anything.',
  todo: 'Check the number, its sign and its unit.',
  given: 'conveyor',
  example: '  incline «120 deg|20 deg»',
  check: onProblem('out of range', (problem) => ({
    message: `The ${problem.fact} is given as ${problem.text}; it must be ${problem.range}.`,
  })),
};
