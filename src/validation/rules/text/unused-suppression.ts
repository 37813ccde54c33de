// A comment that silences nothing any more.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';
import { remove } from '../../telling/fixes.js';

export const unusedSuppression: Rule = {
  code: 'TL120',
  title: 'Silencing comment that hides nothing',
  severity: 'warning',
  restsOn: [],
  tags: ['unused'],
  why: 'Left standing, it would hide the next finding of that code on this line, which nobody has judged.',
  todo: 'Take the comment out.',
  given: 'liner',
  bad: '  condemn at 3 mm «// allow TL208 because "measured at every round, never judged by colour"»',
  good: '  condemn at 3 mm',
  check: onProblem('unused suppression', (problem) => ({
    message: `This comment hides nothing: there is no ${problem.code} here.`,
    ...(problem.isOneOfSeveral
      ? { todo: `Take ${problem.code} out of the comment; its other codes stay.` }
      : { fixes: [remove(problem.origin, 'Take the comment out')] }),
  })),
};
