// A unit of another kind of quantity: a length in kilograms.

import type { Rule } from '../../rule.js';
import { insertBefore } from '../../telling/fixes.js';
import { onProblem } from '../../telling/on-problem.js';
import { likelyUnits } from '../../telling/likely-units.js';
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
      message: `The ${problem.fact} is given as ${problem.text}, which is ${withArticle(problem.found)}; it must be ${withArticle(problem.expected)}.`,
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
