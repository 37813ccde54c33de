// Was an old panel far thinner on the bench than the spot can have become since its last reading (evidence/expected-loss.ts: three
// times the fastest of its own rates), and than both gauges can miss?

import { exposedReadings } from '../../../domain/model/exposure.js';
import { originOf } from '../../../domain/model/records.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';
import { expectedLoss } from '../../evidence/expected-loss.js';
import { errorOf } from '../../../domain/model/reading-error.js';
import type { Rule } from '../../rule.js';

export const oldPanelThinnerThanRead: Rule = {
  code: 'TL546',
  title: 'Old panel far thinner than it was read',
  severity: 'warning',
  restsOn: ['looks', 'history'],
  why:
    'Either the bench is wrong, a slip of a digit or another panel, or the gauge in the trough showed too much and the liner ' +
    'was nearer to steel than anybody knew: the rate of that liner, and what the next ones inherit from it, hang on which.',
  todo: 'Measure the panel again where it was thinnest, and check which panel it was; if the gauge in the trough was wrong, correct its readings.',
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 8.2 mm
}
reline DG1 2024-10-07 meter 3900 h {
  liner TwoLayer12
  «old panel at P1 thickness 0.3 mm|old panel at P1 thickness 7.6 mm»
}`,
  cases: [
    {
      name: 'fast, and within three times its rate',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 8.2 mm
}
reline DG1 2025-10-07 meter 7900 h {
  liner TwoLayer12
  old panel at P1 thickness 0.3 mm
}`,
    },
  ],
  *check({ estate }) {
    const { readings } = estate;
    if (readings.bench.size === 0) return;
    for (const [place, rows] of exposedReadings(estate))
      for (const { row, set } of rows) {
        if (!readings.bench.has(row) || !set || readings.kind[row] !== ReadingKind.thickness) continue;
        const before = rows.findLast(
          (each) =>
            each.set === set &&
            !readings.bench.has(each.row) &&
            readings.kind[each.row] === ReadingKind.thickness,
        );
        const loss = before && expectedLoss(estate, place, before.row, row);
        if (!loss) continue;
        const [was, now] = [readings.value[before.row] ?? NaN, readings.value[row] ?? NaN];
        const error = 3 * Math.hypot(errorOf(estate, row), errorOf(estate, before.row));
        if (!(was - now > loss.most + error)) continue;
        yield {
          origin: originOf(readings, row),
          message:
            `${lengthOn(place.conveyor, now)} on the bench, and ${lengthOn(place.conveyor, was)} were read at ${place.name} on ` +
            `${formatDay(before.inspection.date.day)}: about ${lengthOn(place.conveyor, Math.round(loss.middle * 10) / 10)} less was to be ` +
            `expected, and ${lengthOn(place.conveyor, Math.round(loss.most * 10) / 10)} at three times its rate.`,
          related: [
            {
              origin: originOf(readings, before.row),
              message: `the reading of ${formatDay(before.inspection.date.day)}`,
            },
          ],
        };
      }
  },
};
