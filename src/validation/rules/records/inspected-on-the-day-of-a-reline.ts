// Was a liner read on the day it was changed, with the same meter reading: the old one or the new?

import type { Estate } from '../../../domain/model/estate.js';
import { momentOf, historyOf } from '../../../domain/model/history.js';
import { scopeOf } from '../../../domain/model/liner-sets.js';
import { installedPanelEnds } from '../../../domain/model/panels.js';
import type { Inspection, Reline } from '../../../domain/model/records.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';

export const inspectedOnTheDayOfAReline: Rule = {
  code: 'TL314',
  title: 'Inspection on the day of a reline',
  severity: 'information',
  restsOn: [],
  why: 'Booked to the new liner, the last readings of the old one would show it half worn on its first day; booked to the old one, new readings make it grow.',
  todo: 'Put the thicknesses of the new liner into the reline block; the inspection is taken as of the liner that came out.',
  given: 'estate',
  example: `
inspection DG1 «2025-03-10|2025-03-07» meter ‹6200|6170› h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 4.1 mm
}
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
}`,
  cases: [
    {
      name: 'panels that no reading lies on',
      text: `
inspection DG1 2025-03-10 meter 6200 h {
  view downstream
  gauge ultrasonic ± 0.2 mm
  P1 thickness 9.8 mm
}
reline DG1 2025-03-10 meter 6200 h {
  liner TwoLayer12
  scope run 3
}`,
    },
  ],
  *check({ estate }) {
    if (estate.relines.length === 0) return;
    for (const inspection of estate.inspections) {
      if (inspection.firstRow >= inspection.endRow) continue;
      const history = historyOf(estate, inspection.conveyor);
      const reline = history.relines.find((one) => one.date.day === inspection.date.day);
      if (!reline || momentOf(history, reline).hours !== momentOf(history, inspection).hours) continue;
      if (!readsWithin(estate, inspection, reline)) continue;
      yield {
        origin: inspection.date.origin,
        message:
          `${inspection.conveyor.name} was inspected and relined on ${formatDay(inspection.date.day)} at the ` +
          'same meter reading; the readings are taken as of the liner that came out.',
        related: [{ origin: reline.date.origin, message: 'the reline' }],
      };
    }
  },
};

/** Of what stayed in there is nothing to settle. */
function readsWithin(estate: Estate, { firstRow, endRow }: Inspection, reline: Reline): boolean {
  const { conveyor, scope, date } = reline;
  if (scope.length === 0) return true;
  const stretches = scopeOf(conveyor, reline, installedPanelEnds(estate, date.day));
  return estate.readings.place.subarray(firstRow, endRow).some((place) => {
    const at = estate.places[place]?.at;
    return at !== undefined && stretches.some(({ from, to }) => at >= from && at <= to);
  });
}
