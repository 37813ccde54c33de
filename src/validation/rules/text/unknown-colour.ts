// A colour that no layer of the fitted liner has.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';
import { replace } from '../../telling/fixes.js';
import { list } from '../../telling/wording.js';

export const unknownColour: Rule = {
  code: 'TL117',
  title: 'Colour the liner does not have',
  severity: 'error',
  why: 'The colour says how deep the wear is only if it is one of the layers; otherwise another liner is fitted than the records say.',
  todo: 'Write the name of the layer that shows; if the colour is right, record the reline that brought it.',
  given: 'inspection',
  example: '  P1 colour «ivor|ivory»',
  check: onProblem('unknown colour', (problem) => ({
    message:
      problem.known.length === 0
        ? `The liner ${problem.liner} has one layer only, so that no second colour can show.`
        : `The liner ${problem.liner} has no layer named ${problem.colour}; its layers are ${list(problem.known)}.`,
    fixes: problem.known.slice(0, 4).map((name) => replace(problem.origin, name)),
  })),
};
