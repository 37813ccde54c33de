// Does an inspection point lie where there is no liner?

import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const pointInABreak: Rule = {
  code: 'TL228',
  title: 'Inspection point on a break',
  severity: 'warning',
  restsOn: [],
  why: 'The liner is interrupted there, so the point can never be read; readings booked to it were taken somewhere else.',
  todo: 'Move the point onto the liner of the run before or after the break.',
  given: 'conveyor',
  example: `
  point P1 at 4 m clock 7:30
  point P2 at «7.2 m|7.8 m» clock 7:30`,
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      for (const point of conveyor.points) {
        const at = point.at.value;
        const one = conveyor.breaks.find((candidate) => at > candidate.from.value && at < candidate.to.value);
        if (!one) continue;
        yield {
          origin: point.at.origin,
          message: `Point ${point.name} lies at ${point.at.text}, inside break ${one.name} from ${one.from.text} to ${one.to.text}.`,
          related: [{ origin: one.nameOrigin ?? one.origin, message: `break ${one.name}` }],
        };
      }
    },
  ),
};
