// Can the liner be thicker than when it was fitted? Fitted thickness, its purchased tolerance, and three standard deviations
// of the reading on top.

import { fittedThickness } from '../../../domain/model/fitted-thickness.js';
import { isImpossible } from '../../../domain/model/impossible-reading.js';
import { originOf } from '../../../domain/model/records.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { isOnAJoint } from '../../../domain/model/on-a-joint.js';
import { isPlausible } from '../../evidence/plausible.js';
import { toldTogether, type OfALiner } from '../../telling/told-together.js';
import type { Rule } from '../../rule.js';
import { eachSeen } from '../../evidence/seen-sets.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';

export const thickerThanFitted: Rule = {
  code: 'TL305',
  title: 'Reading thicker than the liner was new',
  severity: 'error',
  restsOn: ['history'],
  why:
    'Either another liner lies there than the records say, or the gauge was not set for PE: ' +
    'its other readings of that day are too good as well. It is left out of every rate and date, so its spot stands as if nobody had read it that day.',
  todo: 'Check the gauge on an offcut; if the panel was replaced, write the reline down.',
  given: 'inspection',
  example: '  «P1 thickness 14.6 mm|P1 thickness 11.6 mm»',
  cases: [
    { name: 'as thick as tolerance and gauge allow', text: '  P1 thickness 12.9 mm' },
    { name: 'beyond both', text: '  «P1 thickness 13 mm»' },
    {
      name: 'many of one run are one finding',
      text: '  «at 3 m clock 6:00 thickness 15 mm»\n  at 4 m clock 6:00 thickness 15 mm\n  at 5 m clock 6:00 thickness 15 mm',
    },
  ],
  check({ estate }) {
    const { readings, places } = estate;
    const found: OfALiner[] = [];
    eachSeen(estate, (row, index, set) => {
      const place = places[index];
      if (!place || readings.kind[row] !== ReadingKind.thickness) return;
      if (!isImpossible(estate, row, set, place)) return;
      if (isOnAJoint(estate, place)) return;
      const value = readings.value[row] ?? 0;
      const fitted = fittedThickness(set, place);
      if (!isPlausible('reading thickness', value) || !isPlausible('liner thickness', fitted.value)) return;
      found.push({
        alike: set.liner.name,
        conveyor: place.conveyor,
        at: place.at,
        origin: originOf(readings, row),
        message:
          `${place.name} of ${place.conveyor.name} reads ${lengthOn(place.conveyor, value)}, ` +
          `and ${set.liner.name} was ${lengthOn(place.conveyor, fitted.value)} thick ` +
          `${fitted.measured ? 'there when fitted' : 'when new'}.`,
        related: [{ origin: set.liner.thickness.origin, message: `thickness of ${set.liner.name}` }],
      });
    });
    return toldTogether(found);
  },
};
