// Does the inner flight fit into the hole that the outer flight leaves?

import { lengthWords, unitOf } from '../../../domain/units/length-words.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const innerFlightFoulsTheOuter: Rule = {
  code: 'TL204',
  title: 'Inner flight that fouls the outer one',
  severity: 'error',
  restsOn: [],
  why: 'The two ribbons would cut into one another; the inner one sits on stays inside the free bore of the outer.',
  todo: 'Measure the inner flight and the free bore again.',
  given: 'screw',
  example: '  inner flight outside diameter «260 mm|160 mm» inside diameter 80 mm thickness 12 mm',
  check: each(
    (estate) => estate.screws,
    function* (screw) {
      if (!screw.flight || !screw.innerFlight) return;
      const bore = screw.outsideDiameter.value - 2 * screw.flight.width.value;
      if (bore <= 0 || screw.innerFlight.outside.value < bore) return;
      yield {
        origin: screw.innerFlight.outside.origin,
        message:
          `The inner flight of ${screw.name} is ${screw.innerFlight.outside.text} across, and the outer flight ` +
          `leaves a bore of ${lengthWords(bore, unitOf([screw.outsideDiameter.text]))}.`,
        related: [{ origin: screw.flight.origin, message: 'the outer flight' }],
      };
    },
  ),
};
