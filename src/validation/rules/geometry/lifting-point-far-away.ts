// Does a lifting point stand near every piece of the spiral that has to be lifted?

import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '8 m',
  dimension: 'length',
  what: 'How far along the trough a load may be from the nearest lifting point.',
  basis: 'judgement: a piece of spiral of some 6 m hangs at its middle, and a trolley reaches a little',
};

export const liftingPointFarAway: Rule = {
  code: 'TL261',
  title: 'Stretch without a lifting point near it',
  severity: 'warning',
  restsOn: ['block'],
  why: 'A piece of spiral that is pulled sideways under a point swings and drags over the trough, or is carried by hand where nobody can stand.',
  todo: 'Declare the lifting point that is used there, plan one, or a crane; check the chainage of those declared.',
  threshold,
  given: 'conveyor',
  example: '  lifting point L1 at «1 m|6 m» limit 500 kg',
  cases: [
    { name: 'just near enough', text: '  lifting point L1 at 4 m limit 500 kg' },
    { name: 'just too far', text: '  lifting point L1 at «3.9 m» limit 500 kg' },
  ],
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      const { name, plant, length, liftingPoints } = conveyor;
      const points = [...liftingPoints].sort((a, b) => a.at.value - b.at.value);
      const [first] = points;
      const last = points.at(-1);
      if (!first || !last) return;
      const spots = [
        { at: 0, away: first.at.value, point: first },
        ...points.slice(1).map((point, index) => {
          const before = points[index] ?? point;
          const half = (point.at.value - before.at.value) / 2;
          return { at: before.at.value + half, away: half, point };
        }),
        { at: length.value, away: length.value - last.at.value, point: last },
      ];
      const worst = spots.reduce((a, b) => (b.away > a.away ? b : a));
      if (worst.away <= settled(plant, 'TL261', threshold)) return;
      yield {
        origin: worst.point.at.origin,
        message: `At ${chainageOn(conveyor, worst.at)} of ${name} the nearest lifting point, ${worst.point.name}, is ${chainageOn(conveyor, worst.away)} away.`,
      };
    },
  ),
};
