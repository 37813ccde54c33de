// Does an inspection point lie on the arc, from 3 o'clock through 6 to 9? Above it the sides are straight, and wear there
// does not follow the screw's.

import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const pointOutsideTheArc: Rule = {
  code: 'TL229',
  title: 'Inspection point above the arc',
  severity: 'warning',
  restsOn: [],
  why: 'On the straight side the screw hardly touches: readings there stay good while the arc below wears through.',
  todo: 'Move the point to between 3:00 and 9:00, best into the worn sector.',
  given: 'conveyor',
  example: `
  point P1 at 4 m clock «1:30|7:30»
  point P2 at 9 m clock 7:30`,
  cases: [
    {
      name: 'on its ends',
      text: `
  point P1 at 4 m clock 9:00
  point P2 at 9 m clock 3:00`,
    },
    {
      name: 'just above them',
      text: `
  point P1 at 4 m clock «9:15»
  point P2 at 9 m clock 7:30`,
    },
  ],
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      for (const point of conveyor.points) {
        if (point.clock.hours >= 3 && point.clock.hours <= 9) continue;
        yield {
          origin: point.clock.origin,
          message: `Point ${point.name} is at ${point.clock.text}, above the arc that reaches from 3:00 to 9:00.`,
        };
      }
    },
  ),
};
