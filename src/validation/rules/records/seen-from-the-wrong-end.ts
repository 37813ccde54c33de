// Were clock positions taken from the wrong end? Where every reading with a clock of its own lies outside the worn sector that
// the conveyor declares, and would lie inside it in the mirror, the view was most likely the other one.

import { formatClock, mirrorClock } from '../../../domain/units/clock.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { insertBefore, replace } from '../../telling/fixes.js';
import { originOf } from '../../../domain/model/records.js';
import type { Rule } from '../../rule.js';

export const seenFromTheWrongEnd: Rule = {
  code: 'TL319',
  title: 'Clock positions on the far side of the wear',
  severity: 'warning',
  restsOn: ['block', 'looks', 'machine'],
  why: 'Read from the other end, 4:30 becomes 7:30: the side that wears then has no readings, and the good side is watched instead.',
  todo: 'Ask which way the inspector looked and write the view down; `view upstream` mirrors the positions.',
  given: 'specifications',
  example: `
conveyor DG1 {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  worn sector 6:30 to 8:30
  commissioned 2024-01-08 meter 0 h
  break Discharge at 11.4 m to 12 m discharge allowance 20 mm
  access A1 at 0 m to 12 m platform
  isolation Q1 electrical
  isolation Feed material
}
inspection DG1 «2025-03-10» meter 6200 h {
  view ‹downstream|upstream›
  gauge ultrasonic ± 0.2 mm
  at 4 m clock 4:30 thickness 9.8 mm
  at 9 m clock 4:30 thickness 10.1 mm
}`,
  *check({ estate }) {
    const { readings, places } = estate;
    for (const inspection of estate.inspections) {
      const { conveyor, view } = inspection;
      const sector = conveyor.wornSector;
      if (!sector) continue;
      const inside = (clock: number): boolean => clock >= sector.from.hours && clock <= sector.to.hours;
      let own = 0;
      let mirrored = 0;
      let clock = 0;
      for (let row = inspection.firstRow; row < inspection.endRow; row++) {
        const place = places[readings.place[row] ?? -1];
        if (!place || place.declared) continue;
        own++;
        if (!inside(place.clock) && inside(mirrorClock(place.clock))) mirrored++;
        clock = place.clock;
      }
      if (own < 2 || mirrored < own) continue;
      const other = view.direction === 'upstream' ? 'downstream' : 'upstream';
      yield {
        origin: inspection.date.origin,
        message:
          `Seen with the flow, the ${own} readings of ${conveyor.name} on ${formatDay(inspection.date.day)} ` +
          `that have a clock lie at ${formatClock(clock)} and thereabouts, ` +
          `and it wears from ${sector.from.text} to ${sector.to.text}, the other side.`,
        related: [{ origin: sector.from.origin, message: 'the worn sector' }],
        fixes: [
          view.stated
            ? replace(view.origin, `view ${other}`)
            : insertBefore(originOf(readings, inspection.firstRow), `view ${other}\n  `, `Add view ${other}`),
        ],
      };
    }
  },
};
