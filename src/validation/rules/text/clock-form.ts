// 7.30 or 19:30 for a clock position. A face has twelve hours; positions are written with a colon.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';
import { replace } from '../../telling/fixes.js';

export const clockForm: Rule = {
  code: 'TL110',
  title: 'Clock position not written as on a clock face',
  severity: 'error',
  restsOn: [],
  why: 'A position half an hour off is 15 degrees round the liner: the reading belongs to another spot, and its rate is wrong.',
  todo: 'Write hours and minutes with a colon, from 12:00 at the top through 3:00, 6:00 and 9:00, for example 7:30.',
  given: 'conveyor',
  example: `
  point P1 at 4 m clock «7.30|7:30»
  point P2 at 9 m clock 7:30`,
  check: onProblem('clock form', (problem) => ({
    message: `${problem.text} is not a position on a clock face.`,
    ...(problem.corrected === undefined
      ? {}
      : {
          todo: `Write ${problem.corrected}.`,
          fixes: [replace(problem.origin, problem.corrected, { preferred: true })],
        }),
  })),
};
