// Is a flight deeper than it was made? Then another screw was read, or across the wrong edge.

import { screwSeen } from '../../../domain/model/lying-screw.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '2 mm',
  dimension: 'length',
  what: 'By how much a flight may read deeper than it was made.',
  basis: 'judgement: scale and tape',
};

export const flightDeeperThanNew: Rule = {
  code: 'TL328',
  title: 'Flight deeper than when new',
  severity: 'warning',
  restsOn: ['history'],
  why: 'The wear of the screw is judged from this reading; one that cannot be hides how far it has gone.',
  todo: 'Read the depth radially, from the outer edge to the inner edge of the bar, and check which screw is fitted.',
  threshold,
  given: 'inspection',
  example: '  flight at 6 m depth «95 mm|75 mm»',
  *check({ estate }) {
    for (const inspection of estate.inspections) {
      for (const { at, depth } of inspection.flights) {
        const screw = screwSeen(estate, inspection, at.value);
        const width = screw.flight?.width;
        if (!width || depth.value <= width.value + settled(inspection.conveyor.plant, 'TL328', threshold))
          continue;
        yield {
          origin: depth.origin,
          message: `The flight of ${inspection.conveyor.name} reads ${depth.text} at ${at.text}, and ${screw.name} was made ${width.text} deep.`,
          related: [{ origin: width.origin, message: `flight of ${screw.name}` }],
        };
      }
    }
  },
};
