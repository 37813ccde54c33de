// Is it known how sure the thicknesses of an inspection are?

import type { Conveyor } from '../../../domain/model/conveyor.js';
import { depthGaugeError } from '../../../domain/geometry/gauge.js';
import { originOf } from '../../../domain/model/records.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { unitOfMachine, lengthOn } from '../../../domain/model/unit-of-machine.js';
import { insertBefore } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';
import { counted } from '../../../domain/units/wording.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';

export const gaugeNotStated: Rule = {
  code: 'TL317',
  title: 'Thickness from an unnamed gauge',
  severity: 'information',
  restsOn: ['block'],
  tags: ['advice'],
  why: 'How far ahead the forecast can see depends on how sure the readings are; without a gauge a coarse one is assumed.',
  todo: 'Add the gauge and its error to the inspection, for example `gauge ultrasonic ± 0.2 mm`.',
  given: 'estate',
  example: `
inspection DG1 «2025-03-10» meter 6200 h {
  view downstream
  ‹|gauge ultrasonic ± 0.2 mm
  ›P1 thickness 9.8 mm
}`,
  *check({ estate }) {
    const { readings } = estate;
    for (const inspection of estate.inspections) {
      if (inspection.gauge) continue;
      let unsure = 0;
      for (let row = inspection.firstRow; row < inspection.endRow; row++) {
        if (readings.kind[row] === ReadingKind.thickness && !((readings.error[row] ?? NaN) >= 0)) unsure++;
      }
      if (unsure === 0) continue;
      yield {
        origin: inspection.date.origin,
        message:
          `The inspection of ${inspection.conveyor.name} on ${formatDay(inspection.date.day)} has ` +
          `${counted(unsure, 'thickness reading')} and names no gauge; ` +
          `± ${lengthOn(inspection.conveyor, depthGaugeError)} is assumed.`,
        fixes: gaugesOn(inspection.conveyor).map((gauge) =>
          insertBefore(originOf(readings, inspection.firstRow), `gauge ${gauge}\n  `, `Add gauge ${gauge}`),
        ),
      };
    }
  },
};

function gaugesOn(conveyor: Conveyor): readonly string[] {
  return unitOfMachine(conveyor) === 'in'
    ? ['ultrasonic ± 0.008 in', 'depth gauge ± 0.02 in']
    : ['ultrasonic ± 0.2 mm', 'depth gauge ± 0.5 mm'];
}
