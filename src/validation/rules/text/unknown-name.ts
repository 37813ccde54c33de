// A name that nothing of its kind has. Near spellings are offered.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';
import { replace } from '../../telling/fixes.js';
import { list } from '../../telling/wording.js';

export const unknownName: Rule = {
  code: 'TL114',
  title: 'Name that nothing has',
  severity: 'error',
  why: 'The fact hangs in the air: the record or the step it stands in is left out until the name is right.',
  todo: 'Correct the spelling, or add the block that the name is meant for.',
  given: 'conveyor',
  example: '  liner «TwoLayer21|TwoLayer12»',
  check: onProblem('unknown name', (problem) => ({
    message: `There is no ${problem.what} named ${problem.name}${problem.elsewhere === undefined ? '' : `; ${problem.elsewhere}`}.`,
    ...(problem.known.length === 0
      ? {}
      : { todo: `Choose ${list(problem.known, 'or')}, or add a ${problem.what} of that name.` }),
    fixes: problem.known.slice(0, 3).map((name) => replace(problem.origin, name)),
  })),
};
