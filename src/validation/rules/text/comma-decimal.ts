// 22,4 m: the comma of many countries. The language writes a point, because commas separate lists; 12,000 h is left to
// the author, who alone knows whether twelve or twelve thousand was meant.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';
import { replace } from '../../telling/fixes.js';
import { list } from '../../telling/wording.js';

export const commaDecimal: Rule = {
  code: 'TL105',
  title: 'Comma in a number',
  severity: 'error',
  restsOn: [],
  why: 'A comma separates the items of a list here; 1,200 could be one thousand two hundred or one and a fifth.',
  todo: 'Write decimals with a point and thousands without a mark.',
  given: 'conveyor',
  example: '  length «12,0 m|12.0 m»',
  check: onProblem('comma decimal', (problem) => {
    const choices = problem.corrected === undefined ? (problem.readings ?? []) : [problem.corrected];
    return {
      message: `${problem.text} has a comma.`,
      ...(choices.length === 0 ? {} : { todo: `Write ${list(choices, 'or')}.` }),
      fixes: choices.map((text) => replace(problem.origin, text, { preferred: choices.length === 1 })),
    };
  }),
};
