// Do the sides of the trough reach over the screw? New, the axis lies the clearance below the centre line, and the top of the
// screw half a diameter above that.

import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { each } from '../../telling/each.js';
import { clearanceOf } from '../../evidence/lined-section.js';
import type { Rule } from '../../rule.js';

export const screwAboveTheTrough: Rule = {
  code: 'TL226',
  title: 'Screw that stands above the trough',
  severity: 'warning',
  restsOn: [],
  why: 'Covers would lie on the turning screw, and its guard would not be one.',
  todo: 'The side height counts from the centre line of the trough to its upper edge: measure it again.',
  given: 'conveyor',
  example: '  trough inside radius 226 mm side height «150 mm|260 mm» plate 4 mm',
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      const { trough, screw } = conveyor;
      const clearance = clearanceOf(conveyor, conveyor.liner, screw);
      if (clearance === undefined || clearance <= 0) return;
      const top = screw.outsideDiameter.value / 2 - clearance;
      if (top < trough.sideHeight.value) return;
      yield {
        origin: trough.sideHeight.origin,
        message:
          `${screw.name} reaches ${lengthOn(conveyor, top)} above the centre line of ${conveyor.name}, ` +
          `and the sides of the trough ${trough.sideHeight.text}.`,
        related: [
          { origin: conveyor.screwUse.origin, message: `screw, ${screw.outsideDiameter.text} across` },
        ],
      };
    },
  ),
};
