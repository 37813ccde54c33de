// Is the steel bare anywhere on a liner that is still in? The failure this whole tool is meant to prevent.

import { originOf } from '../../../domain/model/records.js';
import { latestRows } from '../../evidence/latest-rows.js';
import { dayOfRow } from '../../telling/reading-words.js';
import type { Rule } from '../../rule.js';

export const troughShowing: Rule = {
  code: 'TL309',
  title: 'Trough showing',
  severity: 'error',
  restsOn: ['history'],
  why: 'The liner is worn through and the screw runs on the steel: it cuts the plate, and then plates have to be welded on.',
  todo: 'Stop the conveyor as soon as the process allows, isolate, look at the plate, and reline the run; if it was relined already, write that down.',
  given: 'inspection',
  example: '  «P1 trough showing|P1 colour ivory»',
  *check({ estate }) {
    for (const { row, place, bareSince } of latestRows(estate)) {
      if (bareSince === undefined) continue;
      yield {
        origin: originOf(estate.readings, row),
        message: `The trough of ${place.conveyor.name} shows at ${place.name} since ${dayOfRow(estate, bareSince)}, and no reline is recorded after that.`,
      };
    }
  },
};
