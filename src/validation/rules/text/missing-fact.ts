// A block without a fact that nothing can stand in for.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';

export const missingFact: Rule = {
  code: 'TL111',
  title: 'Fact that is needed and not stated',
  severity: 'error',
  restsOn: [],
  why: 'No default would be honest here, so the block is left out of every check and report until the fact is written.',
  todo: 'Add the fact as a line of its own inside the block.',
  given: 'whole',
  example: `
screw «Spiral315» {
  shaftless
  outside diameter 315 mm‹|
  pitch 280 mm›
}`,
  check: onProblem('missing fact', (problem) => ({
    message: `The ${problem.block} ${problem.name} states no ${problem.fact}.`,
    todo: `Add it, for example: ${problem.example}`,
    fixes: [
      {
        title: `Add ${problem.example} (an example: put in your own value)`,
        edits: [{ origin: problem.insertAt, text: `\n  ${problem.example}` }],
      },
    ],
  })),
};
