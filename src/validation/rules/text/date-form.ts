// 14/03/2026 and its kin. Dates are written as in ISO 8601; where day and month can be told apart the fix is offered.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';
import { replace } from '../../telling/fixes.js';
import { list } from '../../telling/wording.js';

export const dateForm: Rule = {
  code: 'TL108',
  title: 'Date not written year-month-day',
  severity: 'error',
  restsOn: [],
  why: '03/04/2026 is in March for some readers and in April for others, and a wear rate over the wrong month is wrong.',
  todo: 'Write dates as year-month-day (ISO 8601), for example 2026-03-14.',
  given: 'conveyor',
  example: '  commissioned «14/03/2024|2024-03-14» meter 0 h',
  check: onProblem('date form', (problem) => {
    const choices = problem.corrected === undefined ? (problem.readings ?? []) : [problem.corrected];
    return {
      message:
        choices.length > 1
          ? `${problem.text} may be ${list(choices, 'or')}: the date is not written year-month-day.`
          : `The date ${problem.text} is not written year-month-day.`,
      ...(choices.length === 0 ? {} : { todo: `Write ${list(choices, 'or')}.` }),
      fixes: choices.map((text) => replace(problem.origin, text, { preferred: choices.length === 1 })),
    };
  }),
};
