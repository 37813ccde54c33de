// More of one thing than any plant has: a slip of a program that writes such texts, or of a paste.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';

export const tooMany: Rule = {
  code: 'TL133',
  title: 'More of one thing than is reckoned with',
  severity: 'error',
  restsOn: [],
  why:
    'Planning looks at every crew, piece and step against every other, ' +
    'so such a text would keep the checker busy for minutes; the block is left out of every check, ' +
    'report and pack.',
  todo: 'Split the job, or take out what was pasted more than once.',
  given: 'liner',
  example:
    '  «panel length 1201 mm, 1202 mm, 1203 mm, 1204 mm, 1205 mm, 1206 mm, 1207 mm, 1208 mm, 1209 mm, ' +
    '1210 mm, 1211 mm, 1212 mm, 1213 mm|panel length 1200 mm, 1500 mm»',
  check: onProblem('too many', ({ block, what, count, most }) => ({
    message: `The ${block} has ${count} ${what}, and at most ${most} are reckoned with.`,
  })),
};
