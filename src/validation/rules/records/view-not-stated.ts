// Does an inspection that gives clock positions of its own say from which side they were seen? Named points carry their own.

import { formatDay } from '../../../domain/units/calendar.js';
import { originOf } from '../../../domain/model/records.js';
import { insertBefore } from '../../telling/fixes.js';
import type { Rule } from '../../rule.js';

export const viewNotStated: Rule = {
  code: 'TL311',
  title: 'Clock positions without a view',
  severity: 'information',
  restsOn: ['block'],
  tags: ['advice'],
  why: 'Seen from the other side 7:30 is 4:30: wear is then booked to the side of the trough where there is none.',
  todo: 'Add `view downstream` (looking with the flow) or `view upstream` (against it) to the inspection.',
  given: 'estate',
  example: `
inspection DG1 «2025-03-10» meter 6200 h {‹|
  view downstream›
  gauge ultrasonic ± 0.2 mm
  at 5.2 m clock 7:30 thickness 9.8 mm
}`,
  *check({ estate }) {
    const { readings, places } = estate;
    for (const inspection of estate.inspections) {
      if (inspection.view.stated) continue;
      let own = inspection.wornWidths.length;
      for (let row = inspection.firstRow; row < inspection.endRow && own === 0; row++) {
        const place = places[readings.place[row] ?? -1];
        if (place && !place.declared && place.clock !== 6 && place.clock !== 12) own++;
      }
      if (own === 0) continue;
      yield {
        origin: inspection.date.origin,
        message:
          `The inspection of ${inspection.conveyor.name} on ${formatDay(inspection.date.day)} gives clock ` +
          'positions and no view; looking with the flow is assumed.',
        fixes:
          inspection.firstRow === inspection.endRow
            ? []
            : ['downstream', 'upstream'].map((view) =>
                insertBefore(originOf(readings, inspection.firstRow), `view ${view}\n  `, `Add view ${view}`),
              ),
      };
    }
  },
};
