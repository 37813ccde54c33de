// Can what was counted have been used up since? A reline with that liner after the newest count may have taken from the shelf.

import { linersBrought } from '../../../domain/model/same-again.js';
import { isNewerThan } from '../../../domain/model/shelf.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';

export const shelfCountedBeforeAReline: Rule = {
  code: 'TL543',
  title: 'Stock counted before the last reline',
  severity: 'warning',
  restsOn: ['looks', 'history', 'jobs'],
  why: 'The panels may lie in a trough by now, and the reline that counts on them cannot be closed.',
  todo: 'Count the shelf again and write the count down with its day.',
  given: 'specifications',
  example: `
plant Works {
  on the shelf TwoLayer12 6 panels counted «2025-02-10|2025-04-22»
}
conveyor DG1 {
  plant Works
  length 12 m
  incline 20 deg
  trough inside radius 226 mm side height 260 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  duty 110 h/week
  commissioned 2024-01-08 meter 0 h
  break Gate at 7 m to 7.5 m slide gate allowance 20 mm
  access Floor at 0 m to 12 m ground
  isolation Q1 electrical
  isolation Feed material
  point P1 at 4 m clock 7:30
}
reline DG1 2025-04-14 meter 6000 h {
  liner TwoLayer12
  scope run above Gate
  fitting temperature 12 degC
  by "Alpha"
}`,
  *check({ estate }) {
    for (const plant of estate.plants) {
      const { shelf } = plant;
      for (const count of shelf) {
        const newer = shelf.some((other) => isNewerThan(other, count));
        const reline = estate.relines.find(
          (each) =>
            each.conveyor.plant === plant &&
            linersBrought(each).some(({ name }) => name === count.liner.name) &&
            each.date.day > count.counted.day,
        );
        if (newer || !reline || count.count.count === 0) continue;
        yield {
          origin: count.counted.origin,
          message:
            `${count.count.count} ${count.item} of ${count.liner.name} were counted on ` +
            `${formatDay(count.counted.day)}, ` +
            `and ${reline.conveyor.name} was relined with it on ${formatDay(reline.date.day)}.`,
          related: [{ origin: reline.origin, message: `reline of ${reline.conveyor.name}` }],
        };
      }
    }
  },
};
