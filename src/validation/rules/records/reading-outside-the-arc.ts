// Was a thickness read on the straight side, above 3 and 9 o'clock, at a chainage of its own? Declared points have TL229.

import { isOnArc } from '../../../domain/geometry/trough.js';
import { originOf } from '../../../domain/model/records.js';
import { formatClock } from '../../../domain/units/clock.js';
import type { Found } from '../../finding.js';
import type { Rule } from '../../rule.js';
import { eachSeen } from '../../evidence/seen-sets.js';

export const readingOutsideTheArc: Rule = {
  code: 'TL312',
  title: 'Reading above the arc',
  severity: 'warning',
  restsOn: [],
  why: 'The screw lies in the arc; a reading on the straight side stays good while the liner below wears through.',
  todo: 'Check the clock position and the view; to follow the wear, read between 3:00 and 9:00.',
  given: 'inspection',
  example: '  «at 5.2 m clock 10:30 thickness 11.6 mm|at 5.2 m clock 7:30 thickness 10.6 mm»',
  cases: [
    { name: 'on its upper end', text: '  at 5.2 m clock 9:00 thickness 10.6 mm' },
    { name: 'just above', text: '  «at 5.2 m clock 9:30 thickness 11.6 mm»' },
  ],
  check({ estate }) {
    const found: Found[] = [];
    const above = estate.places.map((place) => !place.declared && !isOnArc(place.clock));
    if (!above.includes(true)) return found;
    eachSeen(estate, (row, index) => {
      const place = estate.places[index];
      if (!place || !above[index]) return;
      found.push({
        origin: originOf(estate.readings, row),
        message: `This reading of ${place.conveyor.name} is at ${formatClock(place.clock)}, seen with the flow, above the arc from 3:00 to 9:00.`,
      });
    });
    return found;
  },
};
