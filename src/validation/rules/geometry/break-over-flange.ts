// Does an opening lie across a flanged joint of the trough?

import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const breakOverFlange: Rule = {
  code: 'TL215',
  title: 'Break across a trough joint',
  severity: 'warning',
  restsOn: [],
  why: 'A gate frame or a chute cannot be bolted over a flange, so one of the two is written down in the wrong place.',
  todo: 'Measure the break and the section joint again; if it really is built so, say how in a doc comment and silence this.',
  given: 'conveyor',
  example: '  break Gate at «5.8 m|7 m» to ‹6.3|7.5› m slide gate allowance 20 mm',
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      for (const section of conveyor.sections) {
        if (section.start <= 0.5) continue;
        for (const one of conveyor.breaks) {
          if (
            one.kind === 'joint ring' ||
            section.start <= one.from.value + 0.5 ||
            section.start >= one.to.value - 0.5
          )
            continue;
          yield {
            origin: one.from.origin,
            message:
              `Break ${one.name} reaches from ${one.from.text} to ${one.to.text}, ` +
              `across the joint of section ${section.name} at ${chainageOn(conveyor, section.start)}.`,
            related: [
              {
                origin: section.origin,
                message: `section ${section.name} starts at ${chainageOn(conveyor, section.start)}`,
              },
            ],
          };
        }
      }
    },
  ),
};
