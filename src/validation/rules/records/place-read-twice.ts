// Is one spot read twice in one inspection, with readings that differ?

import { originOf } from '../../../domain/model/records.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Found } from '../../finding.js';
import type { Rule } from '../../rule.js';
import { eachSeen } from '../../evidence/seen-sets.js';
import { errorOf } from '../../../domain/model/reading-error.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';

export const placeReadTwice: Rule = {
  code: 'TL330',
  title: 'Spot read twice with two results',
  severity: 'warning',
  restsOn: [],
  why: 'One of the two belongs to another point; the one that was meant has no reading at all.',
  todo: "Look at the sheet: correct the point's name, or keep the reading that was repeated for good reason.",
  given: 'inspection',
  example: `
  P1 thickness 10.4 mm
  «P1 thickness 8.4 mm|P2 thickness 8.4 mm»`,
  check({ estate }) {
    const { readings, places } = estate;
    const found: Found[] = [];
    const last = new Int32Array(places.length).fill(-1);
    eachSeen(estate, (row, index) => {
      if (readings.kind[row] !== ReadingKind.thickness) return;
      const before = last[index] ?? -1;
      last[index] = row;
      const place = places[index];
      if (!place || before < 0 || readings.inspection[before] !== readings.inspection[row]) return;
      const [a, b] = [readings.value[before] ?? 0, readings.value[row] ?? 0];
      if (Math.abs(a - b) <= 3 * Math.hypot(errorOf(estate, before), errorOf(estate, row))) return;
      found.push({
        origin: originOf(readings, row),
        message: `${place.name} has two thicknesses in one inspection: ${lengthOn(place.conveyor, a)} and ${lengthOn(place.conveyor, b)}.`,
        related: [{ origin: originOf(readings, before), message: lengthOn(place.conveyor, a) }],
      });
    });
    return found;
  },
};
