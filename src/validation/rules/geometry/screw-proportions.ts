// 0 < inside < outside: is there a screw between the two diameters?

import { lengthWords, unitOf } from '../../../domain/units/length-words.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const screwProportions: Rule = {
  code: 'TL203',
  title: 'Screw whose inside is not inside its outside',
  severity: 'error',
  restsOn: [],
  why: 'No such screw can be made; masses, blanks and lifts computed from it would be nonsense.',
  todo: 'Write diameters as diameters, and the flight as its radial width first, then its thickness.',
  given: 'screw',
  example: '  flight «220 mm|80 mm» by 25 mm',
  cases: [
    { name: 'half the diameter', text: '  flight «200 mm» by 25 mm' },
    { name: 'just less', text: '  flight 199 mm by 25 mm' },
  ],
  check: each(
    (estate) => estate.screws,
    function* (screw) {
      const outside = screw.outsideDiameter;
      if (screw.kind.kind === 'shafted' && screw.kind.shaft.value >= outside.value) {
        yield {
          origin: screw.kind.shaft.origin,
          message: `The shaft of ${screw.name} is ${screw.kind.shaft.text}, and its outside diameter is ${outside.text}.`,
        };
      }
      if (screw.flight && 2 * screw.flight.width.value >= outside.value) {
        yield {
          origin: screw.flight.width.origin,
          message:
            `The flight of ${screw.name} is ${screw.flight.width.text} wide, ` +
            `and half its outside diameter is ${lengthWords(outside.value / 2, unitOf([outside.text]))}.`,
          related: [{ origin: outside.origin, message: 'the outside diameter' }],
        };
      }
      const inner = screw.innerFlight;
      if (inner && inner.inside.value >= inner.outside.value) {
        yield {
          origin: inner.inside.origin,
          message: `The inner flight of ${screw.name} is ${inner.outside.text} outside and ${inner.inside.text} inside.`,
        };
      }
    },
  ),
};
