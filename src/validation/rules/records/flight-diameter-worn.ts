// Has the screw become so small that too little of its flight is left?

import { screwSeen } from '../../../domain/model/lying-screw.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Rule } from '../../rule.js';

export const flightDiameterWorn: Rule = {
  code: 'TL364',
  title: 'Outside diameter worn beyond the flight’s limit',
  severity: 'warning',
  restsOn: ['history'],
  why:
    'The flight wears from its edge: what the diameter has lost is missing twice, at either side, and a thin flight ' +
    'bends, breaks at its weld and leaves material behind on the liner.',
  todo: 'Read the depth of the flight there as well, and order the spiral; measure the diameter across two turns.',
  given: 'inspection',
  example: '  flight at 5 m outside diameter «338 mm|342 mm»',
  cases: [
    { name: 'at the limit', text: '  flight at 5 m outside diameter 340 mm' },
    { name: 'larger than new', text: '  flight at 5 m outside diameter «403 mm»' },
  ],
  *check({ estate }) {
    for (const inspection of estate.inspections) {
      const { conveyor, flightDiameters } = inspection;
      for (const { at, diameter } of flightDiameters) {
        const screw = screwSeen(estate, inspection, at.value);
        const asNew = screw.outsideDiameter;
        if (diameter.value > asNew.value + 2) {
          yield {
            origin: diameter.origin,
            message: `${diameter.text} is read across the screw of ${conveyor.name}, and ${screw.name} has ${asNew.text} when new.`,
          };
          continue;
        }
        const limit = screw.condemnFlight?.value;
        const width = screw.flight?.width.value;
        if (limit === undefined || width === undefined) continue;
        if (limit >= width) continue; // no new flight meets such a limit: told where it is written
        const left = width - (asNew.value - diameter.value) / 2;
        if (left >= limit) continue;
        yield {
          origin: diameter.origin,
          message:
            `${diameter.text} across leaves ${lengthOn(conveyor, left)} of flight on ${conveyor.name}, and it is condemned at ` +
            `${lengthOn(conveyor, limit)}.`,
          related: [{ origin: asNew.origin, message: `new: ${asNew.text} across` }],
        };
      }
    }
  },
};
