// Is a hatch large enough for a hand at all?

import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '100 mm',
  dimension: 'length',
  what: 'Smallest opening for a hand with a tool.',
  basis: 'EN 547, from memory; judgement',
};

export const hatchTooSmall: Rule = {
  code: 'TL487',
  title: 'Hatch smaller than a hand',
  severity: 'warning',
  restsOn: [],
  why: 'Nobody looks or reaches in through it, so what is planned through it is not done, or a glove stays in the trough.',
  todo: 'Check the unit; write the clear opening, from one edge to the other.',
  threshold,
  given: 'conveyor',
  example: `
hatch H1 at 9 m to «9.05 m|9.5 m»`,
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      const { hatches, plant } = conveyor;
      const hand = settled(plant, 'TL487', threshold);
      for (const { from, to, width, name } of hatches) {
        const length = to.value - from.value;
        if (length > 0 && length < hand)
          yield {
            origin: to.origin,
            message: `Hatch ${name ?? ''} is ${lengthOn(conveyor, length)} long, less than a hand (${lengthOn(conveyor, hand)}).`,
          };
        else if (width && width.value < hand)
          yield {
            origin: width.origin,
            message: `Hatch ${name ?? ''} is ${width.text} wide, less than a hand (${lengthOn(conveyor, hand)}).`,
          };
      }
    }
  },
};
