// A line that does not read as any fact of the language. The parser says where it stopped and what would have fitted.

import type { Rule } from '../../rule.js';
import { replace } from '../../telling/fixes.js';
import { onProblem } from '../../telling/on-problem.js';

export const syntax: Rule = {
  code: 'TL101',
  title: 'Text that does not read as a fact',
  severity: 'error',
  why: 'What cannot be read is left out of every check, report and work pack: a break or a reading may be missing without anyone noticing.',
  todo: 'Write one fact a line in the order the language has it; completion shows what may stand here.',
  given: 'whole',
  example: `
plant Tarnholt {
  outage ‹|Spring27 ›«2027-04-12» to 2027-04-23
}`,
  check: onProblem('syntax', (problem) => ({
    message: problem.message,
    ...(problem.corrected === undefined ? {} : { fixes: [replace(problem.origin, problem.corrected)] }),
  })),
};
