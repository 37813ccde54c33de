// Was a gap read at a hold-down that the conveyor does not have? Within 150 mm counts as the same one.

import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import type { Rule } from '../../rule.js';

export const holdDownNotDeclared: Rule = {
  code: 'TL329',
  title: 'Gap at a hold-down that is not declared',
  severity: 'warning',
  restsOn: ['machine'],
  why: 'The pack counts hold-downs to take off and put back by the declaration: one that is missing there is left off, or the chainage is wrong.',
  todo: 'Correct the chainage, or add the hold-down to the conveyor.',
  given: 'inspection',
  example: '  hold-down at «4.5 m|3.75 m» gap 8 mm',
  *check({ estate }) {
    for (const { conveyor, holdDownGaps } of estate.inspections) {
      if (conveyor.holdDowns.length === 0) continue;
      for (const { at } of holdDownGaps) {
        if (at.value > conveyor.length.value + 0.5) continue; // beyond the conveyor: another finding
        const distances = conveyor.holdDowns.map((one) => ({
          at: one.from.value,
          off: Math.max(one.from.value - at.value, at.value - one.to.value, 0),
        }));
        const nearest = distances.reduce((a, b) => (b.off < a.off ? b : a));
        if (nearest.off <= 150) continue;
        yield {
          origin: at.origin,
          message: `${conveyor.name} has no hold-down at ${at.text}; the nearest is at ${chainageOn(conveyor, nearest.at)}.`,
        };
      }
    }
  },
};
