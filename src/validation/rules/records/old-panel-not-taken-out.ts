// Did the reline take out anything where an old panel was measured?

import { exposedReadings } from '../../../domain/model/exposure.js';
import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { originOf } from '../../../domain/model/records.js';
import { runAt } from '../../../domain/model/runs.js';
import { panelWords, relinesByNumber, takenWords } from '../../telling/panel-words.js';
import type { Rule } from '../../rule.js';

export const oldPanelNotTakenOut: Rule = {
  code: 'TL370',
  title: 'Old panel measured where none came out',
  severity: 'warning',
  restsOn: ['history'],
  why:
    'The last word on how fast the old liner wore is booked to no liner at all, and the panel that still lies ' +
    'there keeps its place in the forecast unmeasured.',
  todo: 'Correct the place, or add the stretch to the scope of the reline.',
  given: 'estate',
  example: `
reline DG1 2024-10-07 meter 3900 h {
  liner TwoLayer12
  scope run 2
  «old panel at 16.2 m thickness 5.1 mm|old panel at 4.2 m thickness 5.1 mm»
}`,
  *check({ estate }) {
    const { readings } = estate;
    if (readings.bench.size === 0) return;
    for (const [place, rows] of exposedReadings(estate))
      for (const { row, set } of rows) {
        const reline = readings.bench.get(row);
        if (!reline || set) continue;
        const run = runAt(place.conveyor, place.at);
        const counted = run !== undefined && relinesByNumber(estate, run).includes(reline);
        yield {
          origin: originOf(readings, row),
          ...(counted && {
            todo:
              `${takenWords(estate, reline)}: if it renewed another stretch, write which ` +
              '(`scope from … to …`), or the panels as they lie. Else correct the place.',
          }),
          message:
            `This reline took nothing out at ${chainageOn(place.conveyor, place.at)} of ${place.conveyor.name}` +
            `${panelWords(estate, place, reline.date.day)}.`,
          related: [{ origin: reline.conveyorUse.origin, message: 'the reline' }],
        };
      }
  },
};
