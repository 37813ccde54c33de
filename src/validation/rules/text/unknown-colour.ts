// A colour that no layer of the fitted liner has.

import type { Rule } from '../../rule.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { Reline } from '../../../domain/model/records.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Problem } from '../../../domain/model/problem.js';
import { toldTogether, type OfALiner } from '../../telling/told-together.js';
import { takenWords } from '../../telling/panel-words.js';
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
      return conveyor ? [toldOf(problem, conveyor, estate)] : [];
    });
    return toldTogether(found);
  },
};

function toldOf(
  problem: Extract<Problem, { readonly kind: 'unknown colour' }>,
  conveyor: Conveyor,
  estate: Estate,
): OfALiner {
  const { origin, known, liner, colour, chainage } = problem;
  const reline = broughtElsewhere(estate, conveyor, problem);
  return {
    ...(reline && {
      todo:
        `${reline.liner.name} has ${colour}. ${takenWords(estate, reline)}: if it renewed this spot, write the stretch ` +
        '(`scope from … to …`) or how the panels lie (`fitted run 1 panels …`). Else write the layer that shows.',
      related: [
        { origin: reline.conveyorUse.origin, message: `the reline that brought ${reline.liner.name}` },
      ],
    }),
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

/** The newest reline of a part before that look whose liner has the colour: it may have reached further, or lain elsewhere. */
function broughtElsewhere(
  { inspections, relines }: Estate,
  conveyor: Conveyor,
  { origin, colour }: Extract<Problem, { readonly kind: 'unknown colour' }>,
): Reline | undefined {
  const look = inspections.find(
    (each) =>
      each.origin.source === origin.source &&
      each.origin.start <= origin.start &&
      origin.end <= each.origin.end,
  );
  return relines
    .filter(
      (each) =>
        each.conveyor === conveyor &&
        each.scope.length > 0 &&
        each.date.day <= (look?.date.day ?? Infinity) &&
        each.liner.layers.some(({ name }) => name === colour),
    )
    .sort((a, b) => a.date.day - b.date.day)
    .at(-1);
}
