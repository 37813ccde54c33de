// Does a point watch the side of the trough that does not wear? Outside the worn sector, and inside it in the mirror: most
// likely its clock was read from the other end.

import { formatClock, mirrorClock } from '../../../domain/units/clock.js';
import { each } from '../../telling/each.js';
import { replace } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';

export const pointOnTheFarSide: Rule = {
  code: 'TL240',
  title: 'Inspection point on the side that does not wear',
  severity: 'information',
  restsOn: [],
  why: 'Its readings stay good while the liner wears through opposite; clock positions count as seen in the direction of flow.',
  todo: 'Stand so that the material moves away from you and read the clock again; points may lie outside the sector on purpose, as a reference.',
  given: 'conveyor',
  example: `
  worn sector 6:30 to 8:30
  point P1 at 4 m clock «4:30|7:30»
  point P2 at 9 m clock 7:30`,
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      const sector = conveyor.wornSector;
      if (!sector) return;
      const inside = (clock: number): boolean => clock >= sector.from.hours && clock <= sector.to.hours;
      const told = new Set<number>();
      for (const point of conveyor.points) {
        const mirrored = mirrorClock(point.clock.hours);
        if (inside(point.clock.hours) || !inside(mirrored) || told.has(point.clock.origin.start)) continue;
        told.add(point.clock.origin.start);
        yield {
          origin: point.clock.origin,
          message:
            `Point ${point.name} is at ${point.clock.text}, ` +
            `and ${conveyor.name} wears from ${sector.from.text} to ${sector.to.text}; ` +
            `from the other end it would be ${formatClock(mirrored)}.`,
          related: [{ origin: sector.from.origin, message: 'the worn sector' }],
          fixes: [replace(point.clock.origin, formatClock(mirrored))],
        };
      }
    },
  ),
};
