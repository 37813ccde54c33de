// A unit of another kind of quantity: a length in kilograms.

import type { Rule } from '../../rule.js';
import { insertBefore } from '../../telling/fixes.js';
import { onProblem } from '../../telling/on-problem.js';
import { likelyUnits } from '../../telling/likely-units.js';
import type { Dimension } from '../../../domain/units/dimension.js';
import { withArticle } from '../../../domain/units/wording.js';
import { list } from '../../telling/wording.js';

/** Of what is seen of a part: a bearing has no length that anybody reads, and a temperature with its word. */
const measure = 'measure of the ';

export const wrongDimension: Rule = {
  code: 'TL104',
  title: 'Unit of another kind of quantity',
  severity: 'error',
  restsOn: [],
  why: 'The value says something else than its place asks for; most often two facts were swapped or a word is missing between them.',
  todo: 'Write the value that belongs here, in a unit of its own kind.',
  given: 'conveyor',
  example: '  length «12 kg|12 m»',
  check: onProblem('wrong dimension', (problem) => {
    const lacksWord = problem.found === 'temperature' && problem.fact.startsWith(measure);
    const part = problem.fact.slice(measure.length);
    return {
      message: `The ${problem.fact} is given as ${problem.text}, which is ${kindOf(problem.found)}; it must be ${kindOf(problem.expected)}.`,
      todo: lacksWord
        ? `Say \`temperature\` before it: \`${part} temperature ${problem.text}\`.`
        : `Write it in ${list(likelyUnits('', problem.expected, problem.fact), 'or')}.`,
      // Of what turns and is warm nothing else is read in degrees.
      ...(lacksWord &&
        warm.test(part) && {
          fixes: [
            {
              ...insertBefore(problem.origin, 'temperature ', 'Say `temperature` before it'),
              preferred: true,
            },
          ],
        }),
    };
  }),
};

const warm = /bearing$|^gearbox$|^motor$|^coupling$/;

/** As a sentence has it: `a length`, `an amount of money an hour`. */
function kindOf(dimension: Dimension): string {
  switch (dimension) {
    case 'money':
      return 'an amount of money';
    case 'money a duration':
      return 'an amount of money an hour';
    case 'money a length':
      return 'an amount of money a metre';
    default:
      return withArticle(dimension);
  }
}
