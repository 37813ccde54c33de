// A line that does not read as any fact of the language. The parser says where it stopped and what would have fitted.

import type { Problem } from '../../../domain/model/problem.js';
import type { Fix } from '../../finding.js';
import type { Rule } from '../../rule.js';
import { replace } from '../../telling/fixes.js';
import { onProblem } from '../../telling/on-problem.js';

export const syntax: Rule = {
  code: 'TL101',
  title: 'Text that does not read as a fact',
  severity: 'error',
  restsOn: [],
  why: 'What cannot be read is left out of every check, report and work pack: a break or a reading may be missing without anyone noticing.',
  todo: 'Mend this line; the others of its block are read. Hover over its first word, or ask for completion, to see how it goes.',
  given: 'whole',
  example: `
plant Tarnholt {
  outage ‹|Spring27 ›«2027-04-12» to 2027-04-23
}`,
  check: onProblem('syntax', (problem) => ({
    message: problem.message,
    ...(problem.mend ? { fixes: [mending(problem.mend)] } : {}),
  })),
};

type Mend = NonNullable<Extract<Problem, { kind: 'syntax' }>['mend']>;

/** One replacement is likeliest: what the line was meant to be is still for its author to say, unless only the order of its parts was wrong. */
function mending({ origin, text, isSure = false }: Mend): Fix {
  const word = text.trim();
  const fix = replace(origin, text, {
    title: word === '' ? 'Take it out' : `Write ${word}`,
    preferred: isSure,
  });
  return isSure ? fix : { ...fix, offered: true };
}
