// A reading at a point that the inspected conveyor does not have. A misspelling, or the sheet of another conveyor.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';
import { replace } from '../../telling/fixes.js';
import { list } from '../../telling/wording.js';

export const unknownPoint: Rule = {
  code: 'TL116',
  title: 'Reading at a point the conveyor does not have',
  severity: 'error',
  restsOn: [],
  why: 'The reading is left out of the wear history, or worse, was taken on another machine than the one it is booked to.',
  todo: 'Check the inspection sheet: correct the point or the conveyor, or add the point to the conveyor.',
  given: 'inspection',
  example: '  «P7|P2» thickness 10.4 mm',
  check: onProblem('unknown point', (problem) => ({
    message:
      `${problem.conveyor} has no point ${problem.point}` +
      (problem.elsewhere.length === 0
        ? '.'
        : `, but ${list(problem.elsewhere)} ${problem.elsewhere.length === 1 ? 'has' : 'have'}: is this the sheet of another conveyor?`),
    ...(problem.known.length === 0
      ? {}
      : { todo: `Write ${list(problem.known, 'or')}, or add ${problem.point} to ${problem.conveyor}.` }),
    fixes: problem.known.slice(0, 3).map((name) => replace(problem.origin, name)),
  })),
};
