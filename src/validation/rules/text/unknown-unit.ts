// A unit that the language does not have, or spells otherwise.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';
import { likelyUnits, numberOf } from '../../telling/likely-units.js';
import { replace } from '../../telling/fixes.js';
import { list } from '../../telling/wording.js';
import { parseQuantity } from '../../../domain/units/parse.js';

export const unknownUnit: Rule = {
  code: 'TL103',
  title: 'Unit that is not known',
  severity: 'error',
  restsOn: [],
  why: 'The value cannot be used until its unit is known, so the checks that need it say nothing.',
  todo: 'Write a unit that the language has.',
  given: 'conveyor',
  example: '  length «12 metr|12 m»',
  check: onProblem('unknown unit', (problem) => {
    const number = numberOf(problem.text);
    const choices = likelyUnits(problem.text, problem.expected, problem.fact).map(
      (unit) => `${number} ${unit}`,
    );
    const read = parseQuantity(problem.text, problem.expected);
    const note = read.ok ? undefined : read.note;
    return {
      message:
        `The ${problem.fact} is given as ${problem.text}, ` +
        `and "${problem.unit}" is not a unit that is known here${note === undefined ? '' : `: ${note}`}.`,
      todo: `Write ${list(choices, 'or')}.`,
      fixes: choices.map((text, index) =>
        replace(problem.origin, text, {
          preferred: index === 0 && !read.ok && read.suggestions?.length === 1,
        }),
      ),
    };
  }),
};
