// Is the trough's steel still thick enough where it was measured?

import { troughState } from '../../../domain/conditions/trough.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { chainageOn, lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Rule } from '../../rule.js';

export const plateAtItsMinimum: Rule = {
  code: 'TL354',
  title: 'Trough plate at its minimum',
  severity: 'error',
  restsOn: ['history'],
  why: 'Behind this plate there is nothing: the trough leaks, loses its stiffness between the supports, and the next stone goes through it.',
  todo: 'Stop the conveyor as soon as the process allows, isolate, have a competent person judge the trough, and patch it; write the patch down.',
  given: 'inspection',
  around: { conveyor: 'minimum plate 2 mm' },
  example: '  plate at 4.2 m thickness «2.0 mm|2.1 mm»',
  cases: [{ name: 'nominal thickness', text: '  plate at 4.2 m thickness 4 mm' }],
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      for (const place of troughState(estate, conveyor).places) {
        const last = place.readings.at(-1);
        if (!last || !place.belowMinimum) continue;
        const line = estate.inspections
          .flatMap(({ plates }) => plates)
          .find(({ origin }) => origin === last.origin);
        yield {
          origin: line?.thickness.origin ?? last.origin,
          message:
            `${line?.thickness.text ?? lengthOn(conveyor, last.thickness)} of steel were left at ${chainageOn(conveyor, place.at)} of ` +
            `${conveyor.name} on ${formatDay(last.day)}, ` +
            `and ${conveyor.minimumPlate.text} must ` +
            `be${conveyor.minimumPlate.assumed === undefined ? '' : ' (half of the plate, as no minimum is stated)'}.`,
        };
      }
    }
  },
};
