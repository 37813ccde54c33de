// Is the flight of the screw that is still in worn to its limit? Judged by the newest round that read it.

import { screwSetSeen } from '../../../domain/model/lying-screw.js';
import { historyOf } from '../../../domain/model/history.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';

export const flightBelowItsLimit: Rule = {
  code: 'TL322',
  title: 'Flight worn to its limit',
  severity: 'warning',
  restsOn: ['history'],
  why: 'A thin flight bends, breaks at a weld and jams; the pieces tear the liner on their way out.',
  todo: 'Plan the screw change; change the liner with it if it has less left than a new screw lasts.',
  given: 'inspection',
  example: '  flight at 6 m depth «48 mm|62 mm»',
  cases: [
    { name: 'at the limit', text: '  flight at 6 m depth «50 mm»' },
    { name: 'just above it', text: '  flight at 6 m depth 50.1 mm' },
  ],
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      const history = historyOf(estate, conveyor);
      const newest = history.inspections.findLast(
        ({ inspection }) => inspection.flights.length > 0,
      )?.inspection;
      if (!newest) continue;
      for (const { at, depth } of newest.flights) {
        const set = screwSetSeen(history, newest, at.value);
        const limit = set?.screw.condemnFlight;
        if (!limit || set.removed || depth.value > limit.value) continue;
        if (limit.value >= (set.screw.flight?.width.value ?? Infinity)) continue; // no new flight meets such a limit: told where it is written
        yield {
          origin: depth.origin,
          message:
            `The flight of ${conveyor.name} has ${depth.text} left at ${at.text} ` +
            `(${formatDay(newest.date.day)}), and ${set.screw.name} is to be changed at ${limit.text}.`,
          related: [{ origin: limit.origin, message: `limit of ${set.screw.name}` }],
        };
      }
    }
  },
};
