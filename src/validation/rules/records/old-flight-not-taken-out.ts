// Did the screw change take out anything where an old flight was measured?

import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { changedBy } from '../../../domain/model/screw-sets.js';
import type { Rule } from '../../rule.js';

export const oldFlightNotTakenOut: Rule = {
  code: 'TL564',
  title: 'Old flight measured where none came out',
  severity: 'warning',
  restsOn: ['history'],
  why: 'The last word on how fast the old spiral wore is booked to no spiral at all: in a screw change a flight is of what came out.',
  todo: 'Correct the place, or the scope of the change; a flight that turns on is read in an inspection.',
  given: 'estate',
  example: `
screw change DG1 2024-10-07 meter 3900 h {
  scope from 0 m to 6 m
  «flight at 7 m depth 61 mm|flight at 5 m depth 61 mm»
}`,
  cases: [
    {
      name: 'at the joint, and of the whole spiral anywhere along it',
      text: `
screw change DG1 2024-10-07 meter 3900 h {
  flight at 7 m depth 61 mm outside diameter 382 mm "on the bench"
}`,
    },
    {
      name: 'beyond the end of the machine',
      text: `
screw change DG1 2024-10-07 meter 3900 h {
  «flight at 31 m outside diameter 382 mm»
}`,
    },
  ],
  *check({ estate }) {
    for (const change of estate.screwChanges) {
      const { conveyor, conveyorUse, taken } = change;
      const { from, to } = changedBy(change);
      for (const { at, origin } of [...(taken?.flights ?? []), ...(taken?.flightDiameters ?? [])])
        if (at.value < from || at.value > to)
          yield {
            origin,
            message: `This change took nothing out at ${chainageOn(conveyor, at.value)} of ${conveyor.name}.`,
            related: [{ origin: conveyorUse.origin, message: 'the screw change' }],
          };
    }
  },
};
