// A fact that needs a number and has none that can be read.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';

export const notANumber: Rule = {
  code: 'TL106',
  title: 'Not a number',
  severity: 'error',
  restsOn: [],
  why: 'The fact counts as not stated: quantities, masses and times that follow from it are missing.',
  todo: 'Write a plain number: digits, a point for decimals, or a fraction such as 3/8.',
  given: 'conveyor',
  example: '  length «12/0 m|12 m»',
  check: onProblem('not a number', (problem) => ({
    message: `The ${problem.fact} is given as ${problem.text}, which cannot be read as a number.`,
  })),
};
