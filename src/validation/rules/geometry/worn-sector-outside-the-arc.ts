// Does the worn sector lie on the arc of the trough, from 3 o'clock through 6 to 9, written clockwise (3:00 first)?

import { clockToAngle } from '../../../domain/units/clock.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const wornSectorOutsideTheArc: Rule = {
  code: 'TL210',
  title: 'Worn sector that is not on the arc',
  severity: 'error',
  restsOn: [],
  why: 'The screw lies in the arc and wears it there; a sector over the straight side or the open top sends the inspector to the wrong place.',
  todo: 'Write the sector clockwise as seen in the direction of flow, between 3:00 and 9:00, for example 6:00 to 8:30.',
  given: 'conveyor',
  example: '  worn sector «8:30|6:00» to ‹6:00|8:30›',
  check: each(
    (estate) => estate.conveyors,
    function* ({ name, wornSector: sector }) {
      if (!sector) return;
      const from = clockToAngle(sector.from.hours);
      const to = clockToAngle(sector.to.hours);
      if (from >= -90 && to <= 90 && from < to) return;
      const swap = to >= -90 && from <= 90 && to < from;
      yield {
        origin: sector.from.origin,
        message:
          `The worn sector of ${name} runs clockwise from ${sector.from.text} to ${sector.to.text}, ` +
          `${swap ? 'over the open top' : 'beyond the arc from 3:00 to 9:00'}.`,
        ...(swap
          ? {
              fixes: [
                {
                  title: `Swap: ${sector.to.text} to ${sector.from.text}`,
                  edits: [
                    { origin: sector.from.origin, text: sector.to.text },
                    { origin: sector.to.origin, text: sector.from.text },
                  ],
                },
              ],
            }
          : {}),
      };
    },
  ),
};
