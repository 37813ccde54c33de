// Is a reading a thickness a liner can have? What is not was written in another unit; nought is bare steel.

import type { Estate } from '../../../domain/model/estate.js';
import { originOf } from '../../../domain/model/records.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { formatLength } from '../../../domain/units/format.js';
import { isPlausible } from '../../evidence/plausible.js';
import type { Rule } from '../../rule.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';

export const readingOfUnlikelySize: Rule = {
  code: 'TL335',
  title: 'Reading that no liner can have',
  severity: 'warning',
  restsOn: [],
  why:
    'A reading that no liner can have is left out of every rate and date, so its spot stands as if nobody had read it that day; ' +
    'one of next to nothing is believed, and calls its liner worn through.',
  todo: 'Check the unit, inches or millimetres; where the steel shows, write `trough showing` instead of a thickness of nought.',
  given: 'inspection',
  example: '  «P1 thickness 10.4 in|P1 thickness 10.4 mm»',
  *check({ estate }) {
    for (const row of unlikelyReadings(estate)) {
      const value = estate.readings.value[row] ?? 0;
      const look = estate.inspections[estate.readings.inspection[row] ?? -1];
      const words = look ? lengthOn(look.conveyor, value) : formatLength(value);
      const place = estate.places[estate.readings.place[row] ?? -1];
      yield {
        origin: originOf(estate.readings, row),
        message:
          value < 0.05
            ? `${place?.name ?? 'This reading'} has a thickness of ${words}.`
            : `${place?.name ?? 'This reading'} has ${words}, thicker than any liner.`,
        ...(value < 0.05
          ? { todo: 'Write `trough showing` if the steel was seen.' }
          : { todo: 'Check the unit: millimetres or inches?' }),
      };
    }
  },
};

function* unlikelyReadings({ readings, places }: Estate): Iterable<number> {
  for (let row = 0; row < readings.count; row++) {
    if (readings.kind[row] !== ReadingKind.thickness) continue;
    const value = readings.value[row] ?? 0;
    if (isPlausible('reading thickness', value)) continue;
    // A liner that is itself beyond the usual sizes has its own finding.
    const thickness = places[readings.place[row] ?? -1]?.conveyor.liner.thickness.value ?? 0;
    if (value < 0.05 || isPlausible('liner thickness', thickness)) yield row;
  }
}
