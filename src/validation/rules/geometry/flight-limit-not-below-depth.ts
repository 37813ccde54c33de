// Is there anything of the flight to wear between new and condemned? The limit is a depth of the section that remains, and no
// diameter.

import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const flightLimitNotBelowDepth: Rule = {
  code: 'TL274',
  title: 'Flight limit that a new spiral does not meet',
  severity: 'error',
  restsOn: [],
  why: 'A new spiral would be condemned on the day it is fitted, and each flight that is measured is told as worn out until nobody reads it any more.',
  todo: 'Write the depth of the flight’s section at which the spiral is to be changed, below its depth when new; no diameter.',
  given: 'screw',
  example: '  condemn flight at «335 mm|50 mm»',
  cases: [
    { name: 'as deep as new', text: '  condemn flight at «80 mm»' },
    { name: 'below', text: '  condemn flight at 79 mm' },
    {
      name: 'without a section, more than half the diameter',
      text: '  - flight\n  condemn flight at «200 mm»',
    },
    { name: 'without a section, less', text: '  - flight\n  condemn flight at 199 mm' },
  ],
  check: each(
    (estate) => estate.screws,
    function* ({ name, flight, condemnFlight, outsideDiameter }) {
      if (!condemnFlight) return;
      const whole = flight?.width ?? outsideDiameter;
      if (condemnFlight.value < (flight ? whole.value : whole.value / 2)) return;
      yield {
        origin: condemnFlight.origin,
        message: flight
          ? `The flight of ${name} is condemned at ${condemnFlight.text}, and is ${whole.text} deep when new.`
          : `The flight of ${name} is condemned at ${condemnFlight.text}, and half its diameter of ${whole.text} is no more.`,
        related: [{ origin: whole.origin, message: flight ? 'its depth when new' : 'its diameter' }],
      };
    },
  ),
};
