// Do the bolts of a liner reach through it, the trough's plate, a washer and a nut? (geometry/fixing.ts)

import { boltSize, leastBoltLength } from '../../../domain/geometry/fixing.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Rule } from '../../rule.js';

export const boltTooShort: Rule = {
  code: 'TL457',
  title: 'Bolt that does not reach through',
  severity: 'warning',
  restsOn: [],
  why: 'The nut does not hold on its whole thread, or not at all, and is found out when the panel is already in the trough.',
  todo: 'Take the next longer bolt, or check thickness and unit.',
  given: 'liner',
  example: `
bolt M10 rows 2 pitch 250 mm countersink 4 mm
bolt length «25 mm|30 mm»`,
  *check({ estate }) {
    const told = new Set<object>();
    for (const { liner, trough, name } of estate.conveyors) {
      const { bolt, boltLength: length } = liner;
      const size = bolt && boltSize(bolt.size);
      if (!size || !length || told.has(liner)) continue;
      const least = leastBoltLength(size, {
        liner: liner.thickness.value,
        plate: trough.plate.value,
        countersink: bolt.countersink?.value ?? 0,
        hole: liner.drill?.size.value ?? size.hole,
      });
      if (length.value >= least) continue;
      told.add(liner);
      yield {
        origin: length.origin,
        message:
          `Bolts of ${length.text} hold ${liner.name} on ${name}: liner ${liner.thickness.text}, plate ${trough.plate.text}, ` +
          `washer and nut take at least ${lengthOn({ liner }, Math.ceil(least))}.`,
      };
    }
  },
};
