// Was an old panel thicker on the bench than the gauge had shown it in the trough, or than it was new?

import { exposedReadings, type ExposedReading } from '../../../domain/model/exposure.js';
import { fittedThickness } from '../../../domain/model/fitted-thickness.js';
import { originOf } from '../../../domain/model/records.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';
import { errorOf } from '../../../domain/model/reading-error.js';
import type { Rule } from '../../rule.js';

export const oldPanelThickerThanRead: Rule = {
  code: 'TL371',
  title: 'Old panel thicker than it was read',
  severity: 'warning',
  restsOn: ['looks', 'history'],
  why:
    'On the bench a panel is measured best: where it is thicker there, the gauge in the trough read too little, ' +
    'or another panel was measured, and every rate of that liner is off by as much.',
  todo: 'Measure the panel again where it was thinnest, and check which panel it was; if the gauge in the trough was wrong, correct its readings.',
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 6.4 mm
}
reline DG1 2024-10-07 meter 3900 h {
  liner TwoLayer12
  «old panel at P1 thickness 8.1 mm|old panel at P1 thickness 6.3 mm»
}`,
  cases: [
    {
      name: 'by less than the two can tell',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 6.4 mm
}
reline DG1 2024-10-07 meter 3900 h {
  liner TwoLayer12
  old panel at P1 thickness 6.9 mm ± 0.1 mm
}`,
    },
    {
      name: 'thicker than it was new, and never read before',
      text: `
reline DG1 2024-10-07 meter 3900 h {
  liner TwoLayer12
  «old panel at P1 thickness 14 mm ± 0.1 mm»
}`,
    },
  ],
  *check({ estate }) {
    const { readings } = estate;
    if (readings.bench.size === 0) return;
    for (const [place, rows] of exposedReadings(estate))
      for (const { row, set } of rows) {
        if (!readings.bench.has(row) || !set || readings.kind[row] !== ReadingKind.thickness) continue;
        const now = readings.value[row] ?? NaN;
        const isBefore = (each: ExposedReading): boolean =>
          each.set === set &&
          !readings.bench.has(each.row) &&
          readings.kind[each.row] === ReadingKind.thickness;
        const before = rows.findLast(isBefore);
        const most = before ? (readings.value[before.row] ?? NaN) : fittedThickness(set, place).value;
        const errors = [errorOf(estate, row), before ? errorOf(estate, before.row) : 0];
        if (!(now - most > 3 * Math.hypot(...errors))) continue;
        yield {
          origin: originOf(readings, row),
          message: before
            ? `${lengthOn(place.conveyor, now)} on the bench, ` +
              `and ${lengthOn(place.conveyor, most)} were read at ${place.name} on ${formatDay(before.inspection.date.day)}.`
            : `${lengthOn(place.conveyor, now)} on the bench, and the liner was ${lengthOn(place.conveyor, most)} when it was new.`,
        };
      }
  },
};
