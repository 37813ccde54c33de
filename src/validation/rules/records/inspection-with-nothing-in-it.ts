// Does an inspection say anything at all?

import { isTrial } from '../../../domain/conditions/trials.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';

export const inspectionWithNothingInIt: Rule = {
  code: 'TL324',
  title: 'Inspection without a single observation',
  severity: 'information',
  restsOn: ['block'],
  why: 'Its date makes the conveyor look recently inspected, and nothing was learnt.',
  todo: 'Write what was seen, and `not seen` with the reason for what was not.',
  given: 'estate',
  example: `
inspection DG1 «2025-03-10» meter 6200 h {
  by "day shift"‹|
  P1 not seen "cover seized"›
}`,
  cases: [
    {
      name: 'safeguards were tried',
      text: '\ninspection DG1 2025-03-10 meter 6200 h {\n  emergency stop tried at tail\n}',
    },
  ],
  *check({ estate }) {
    for (const inspection of estate.inspections) {
      const {
        conveyor,
        date,
        firstRow,
        endRow,
        holdDownGaps,
        flights,
        wornWidths,
        currents,
        remarks,
        photos,
        conditions,
        plates,
        flightDiameters,
        speeds,
        notLooked,
      } = inspection;
      const others = [
        holdDownGaps,
        flights,
        wornWidths,
        currents,
        remarks,
        photos,
        conditions,
        plates,
        flightDiameters,
        speeds,
        notLooked,
      ].reduce((sum, list) => sum + list.length, 0);
      if (endRow > firstRow || others > 0) continue;
      const trials = estate.services.filter(
        (each) => isTrial(each) && each.conveyor === conveyor && each.date.day === date.day,
      );
      if (trials.length > 0) continue;
      yield {
        origin: date.origin,
        message: `The inspection of ${conveyor.name} on ${formatDay(date.day)} states nothing that was seen.`,
      };
    }
  },
};
