// Has a look been made that a record asks for?

import { looksDue } from '../../../domain/model/asked-looks.js';
import { recordWord } from '../../../domain/model/dated-records.js';
import { historyOf } from '../../../domain/model/history.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';
import { todayOf, todayWords } from '../../telling/today.js';

export const askedLookNotMade: Rule = {
  code: 'TL574',
  title: 'Look that was asked for not made',
  severity: 'warning',
  restsOn: ['looks', 'history'],
  why: 'Whoever asked for it knew of something that no reading shows: bolts that settle, a new joint, a repair that may not hold.',
  todo: 'Look now, and write the inspection; the next day for it is asked for there.',
  given: 'estate',
  example: `
reline DG1 2026-01-12 meter 8000 h {
  «next look by 2026-02-09 "bolts retightened?"»
}
‹|inspection DG1 2026-02-06 meter 8300 h {
  finding bolts "all tight"
}
›serviced DG1 2026-03-16 tail bearing greased
`,
  byTheCalendar: true,
  *check(input) {
    const { estate } = input;
    const today = todayOf(input);
    if (today === undefined) return;
    for (const conveyor of estate.conveyors) {
      const history = historyOf(estate, conveyor);
      for (const { asked, record, day } of looksDue(history)) {
        const { after, by, note } = asked;
        // A day that had passed when it was asked for is told as such (TL575).
        if (day === undefined || day >= today || (by && by.day <= record.date.day)) continue;
        yield {
          origin: asked.origin,
          message:
            `The ${recordWord(record)} of ${conveyor.name} on ${formatDay(record.date.day)} asks for a look ` +
            `${after ? `after ${after.text}, which was about ${formatDay(day)}` : `by ${formatDay(day)}`}` +
            `${note === undefined ? '' : ` (${note})`}; none was made since, and ${todayWords(input, today)}.`,
        };
      }
    }
  },
};
