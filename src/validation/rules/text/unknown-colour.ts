// A colour that no layer of the fitted liner has.

import type { Rule } from '../../rule.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Problem } from '../../../domain/model/problem.js';
import { toldTogether, type OfALiner } from '../../telling/told-together.js';
import { replace } from '../../telling/fixes.js';
import { list } from '../../telling/wording.js';

export const unknownColour: Rule = {
  code: 'TL117',
  title: 'Colour the liner does not have',
  severity: 'error',
  restsOn: ['history'],
  why: 'The colour says how deep the wear is only if it is one of the layers; otherwise another liner is fitted than the records say.',
  todo: 'Write the name of the layer that shows; if the colour is right, record the reline that brought it.',
  given: 'inspection',
  example: '  P1 colour «ivor|ivory»',
  cases: [
    {
      name: 'many of one run are one finding',
      text: '  at 3 m clock 6:00 colour «black»\n  at 4 m clock 6:00 colour black\n  at 5 m clock 6:00 colour black',
    },
  ],
  check({ estate, problems }) {
    const found = problems.flatMap((problem): readonly OfALiner[] => {
      if (problem.kind !== 'unknown colour') return [];
      const conveyor = estate.conveyors.find(({ name }) => name === problem.conveyor);
      return conveyor ? [toldOf(problem, conveyor)] : [];
    });
    return toldTogether(found);
  },
};

function toldOf(
  problem: Extract<Problem, { readonly kind: 'unknown colour' }>,
  conveyor: Conveyor,
): OfALiner {
  const { origin, known, liner, colour, chainage } = problem;
  return {
    origin,
    conveyor,
    at: chainage,
    alike: `${liner} ${colour}`,
    message:
      known.length === 0
        ? `The liner ${liner} has one layer only, so that no second colour can show.`
        : `The liner ${liner} has no layer named ${colour}; its layers are ${list(known)}.`,
    fixes: known.slice(0, 4).map((name) => replace(origin, name)),
  };
}
