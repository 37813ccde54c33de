// A number without its unit. Which unit was meant is the author's to say: those that would make a plausible value are offered,
// and none is taken without asking.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';
import { likelyUnits } from '../../telling/likely-units.js';
import { replace } from '../../telling/fixes.js';
import { list } from '../../telling/wording.js';

export const missingUnit: Rule = {
  code: 'TL102',
  title: 'Number without a unit',
  severity: 'error',
  restsOn: [],
  why: 'A length read in the wrong unit is wrong by 25 or by 1000; steel and liners have been cut to such numbers.',
  todo: 'Write the unit after the number.',
  given: 'conveyor',
  example: '  length «12»‹| m›',
  check: onProblem('missing unit', (problem) => {
    const choices = likelyUnits(problem.text, problem.expected, problem.fact).map(
      (unit) => `${problem.text} ${unit}`,
    );
    return {
      message: `The ${problem.fact} is given as ${problem.text}, without a unit.`,
      todo: `Write the unit: ${list(choices, 'or')}.`,
      fixes: choices.map((text) => replace(problem.origin, text)),
    };
  }),
};
