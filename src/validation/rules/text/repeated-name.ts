// Two things of the same kind and the same name in the same place.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';

export const repeatedName: Rule = {
  code: 'TL113',
  title: 'Name given twice',
  severity: 'error',
  restsOn: [],
  why: 'Records go by name: a reading or a step would land on the wrong one of the two.',
  todo: 'Give one of them another name, or take it out if it was pasted twice.',
  given: 'conveyor',
  example: `
  point P1 at 4 m clock 7:30
  point «P1|P2» at 9 m clock 7:30`,
  check: onProblem('repeated name', (problem) => ({
    message: `The name ${problem.name} is already given to another ${problem.what}.`,
    related: [{ origin: problem.first, message: `the first ${problem.name}` }],
  })),
};
