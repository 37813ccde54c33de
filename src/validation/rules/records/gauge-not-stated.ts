// Is it known how sure the thicknesses of an inspection are?

import type { Conveyor } from '../../../domain/model/conveyor.js';
import { depthGaugeError } from '../../../domain/geometry/gauge.js';
import type { Estate } from '../../../domain/model/estate.js';
import { originOf, type Inspection } from '../../../domain/model/records.js';
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
  todo: 'Add the gauge and its error to the inspection, for example `gauge ultrasonic ± 0.2 mm`, to each look where it is known.',
  given: 'estate',
  example: `
inspection DG1 «2025-03-10» meter 6200 h {
  view downstream
  ‹|gauge ultrasonic ± 0.2 mm
  ›P1 thickness 9.8 mm
}`,
  cases: [
    {
      name: 'every look of one machine is one finding, at the first',
      text: `
inspection DG1 «2024-09-09» meter 3600 h {
  view downstream
  P1 thickness 10.4 mm
}
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  P1 thickness 9.8 mm
}`,
    },
  ],
  *check({ estate }) {
    for (const [conveyor, [first, ...others]] of unsureLooks(estate)) {
      const last = others.at(-1)?.inspection;
      if (!first) continue;
      const { inspection, unsure } = first;
      const more = !last
        ? ''
        : others.length === 1
          ? ` Nor does that of ${formatDay(last.date.day)}.`
          : ` Nor do ${others.length} later ones, the last of ${formatDay(last.date.day)}.`;
      yield {
        origin: inspection.date.origin,
        message:
          `The inspection of ${conveyor.name} on ${formatDay(inspection.date.day)} has ` +
          `${counted(unsure, 'thickness reading')} and names no gauge; ± ${lengthOn(conveyor, depthGaugeError)} is assumed.${more}`,
        related: others
          .slice(-3)
          .map((each) => ({ origin: each.inspection.date.origin, message: 'nor does this one' })),
        fixes: gaugesOn(conveyor).map((gauge) =>
          insertBefore(
            originOf(estate.readings, inspection.firstRow),
            `gauge ${gauge}\n  `,
            `Add gauge ${gauge}`,
          ),
        ),
      };
    }
  },
};

/** By conveyor, the looks that have such readings, in the order of the estate. */
function unsureLooks(
  estate: Estate,
): ReadonlyMap<Conveyor, readonly { readonly inspection: Inspection; readonly unsure: number }[]> {
  const looks = new Map<Conveyor, { inspection: Inspection; unsure: number }[]>();
  for (const inspection of estate.inspections) {
    const unsure = unsureOf(estate, inspection);
    if (unsure === 0) continue;
    const own = looks.get(inspection.conveyor);
    if (own) own.push({ inspection, unsure });
    else looks.set(inspection.conveyor, [{ inspection, unsure }]);
  }
  return looks;
}

/** Thicknesses of a look of which nobody says how sure they are. */
function unsureOf({ readings }: Estate, { gauge, firstRow, endRow }: Inspection): number {
  let unsure = 0;
  for (let row = firstRow; !gauge && row < endRow; row++)
    if (readings.kind[row] === ReadingKind.thickness && !((readings.error[row] ?? NaN) >= 0)) unsure++;
  return unsure;
}

function gaugesOn(conveyor: Conveyor): readonly string[] {
  return unitOfMachine(conveyor) === 'in'
    ? ['ultrasonic ± 0.008 in', 'depth gauge ± 0.02 in']
    : ['ultrasonic ± 0.2 mm', 'depth gauge ± 0.5 mm'];
}
