// Can this thickness have been read? A panel that is missing has none, and neither has one that stays missing.

import { middleOf } from '../../../domain/conditions/kinds.js';
import { followUp } from '../../../domain/conditions/follow-up.js';
import { setSeen } from '../../../domain/model/exposure.js';
import { historyOf } from '../../../domain/model/history.js';
import { panelAt } from '../../../domain/model/panels.js';
import { originOf } from '../../../domain/model/records.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';
import { readingWords } from '../../telling/reading-words.js';
import type { Rule } from '../../rule.js';

export const conditionAgainstAReading: Rule = {
  code: 'TL353',
  title: 'Reading of a panel that is missing',
  severity: 'warning',
  restsOn: ['looks', 'history'],
  why:
    'One of the two is of another place. If it is the reading, a forecast rests on it; if it is the condition, bare ' +
    'steel is forgotten somewhere else.',
  todo:
    'Look again which panel it was, and correct chainage or point; if the panel was put back, write `closed` before ' +
    'the condition, or the reline.',
  given: 'inspection',
  example: `
  panel missing at 4.2 m
  plate at 4.2 m thickness 3.8 mm
  «P1 thickness 8.4 mm|P1 not seen "panel gone"»`,
  cases: [
    { name: 'of the panel beside it', text: '  panel missing at 5.9 m\n  P1 thickness 8.4 mm' },
    {
      name: 'of the panel beside it, by its number',
      text: '  panel missing at panel 4 of run 2\n  P1 thickness 8.4 mm',
    },
    { name: 'steel showing there', text: '  panel missing at 4.2 m\n  P2 colour ivory' },
  ],
  *check({ estate }) {
    const { readings, places } = estate;
    for (const conveyor of estate.conveyors) {
      const history = historyOf(estate, conveyor);
      for (const { first, closed } of followUp(estate, conveyor).conditions) {
        const at = middleOf(first.line);
        if (first.line.kind !== 'panel missing' || at === undefined) continue;
        const panel = panelAt(estate, conveyor, at, first.record.date.day);
        if (!panel) continue;
        for (const { inspection } of history.inspections) {
          const { day } = inspection.date;
          if (day < first.record.date.day || (closed && day >= closed.day)) continue;
          for (let row = inspection.firstRow; row < inspection.endRow; row++) {
            const kind = readings.kind[row];
            const place = places[readings.place[row] ?? -1];
            if (!place || place.at <= panel.from || place.at >= panel.to) continue;
            if (kind !== ReadingKind.thickness && kind !== ReadingKind.colour) continue;
            const liner = setSeen(history, place.at, inspection)?.liner ?? conveyor.liner;
            yield {
              origin: originOf(readings, row),
              message:
                `${readingWords(estate, row, liner)} is read at ${place.name}, ` +
                `on the panel that is missing since ${formatDay(first.record.date.day)}.`,
              related: [{ origin: first.line.origin, message: 'The panel was found missing here.' }],
            };
          }
        }
      }
    }
  },
};
