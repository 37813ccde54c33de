// Was a condition there before it was closed?

import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { followUp } from '../../../domain/conditions/follow-up.js';
import { conditionWords, samePlace } from '../../../domain/conditions/kinds.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';

export const conditionClosedBeforeSeen: Rule = {
  code: 'TL351',
  title: 'Closed before it was seen',
  severity: 'warning',
  restsOn: ['looks', 'history'],
  why: 'What was meant stays open under another place or name, and is carried from sheet to sheet though somebody has put it right.',
  todo: 'Use the words and the place of the record that found it; or correct the day.',
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  bolts loose 3 at 4.2 m
}
inspection DG1 2025-03-10 meter 6000 h {
  view downstream
  «closed bolts loose at 9.2 m|closed bolts loose at 4.2 m»‹
  bolts loose 3 at 4.2 m|›
}`,
  cases: [
    {
      name: 'nobody could look for it, then somebody did and found nothing',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  not seen material behind liner at 4.2 m "covers stayed on"
}
inspection DG1 2025-03-10 meter 6000 h {
  view downstream
  closed material behind liner at 4.2 m
}`,
    },
    {
      name: 'on a day before the look that found it',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  «bolts loose 3 at 4.2 m closed on 2024-09-01»
}`,
    },
    {
      name: 'on the day of the look',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  bolts loose 3 at 4.2 m closed on 2024-09-09
}`,
    },
  ],
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      const { stray } = followUp(estate, conveyor);
      for (const { line } of stray) {
        yield {
          origin: line.origin,
          message: `No ${conditionWords(line)} stood open here (within ${lengthOn(conveyor, samePlace)}), so nothing can be closed.`,
        };
      }
    }
    for (const { conditions, date } of estate.inspections) {
      for (const { closed, origin } of conditions) {
        if (!closed || closed.day >= date.day) continue;
        yield {
          origin,
          message: `This was seen on ${formatDay(date.day)}, and is said to be closed on ${formatDay(closed.day)}, before that.`,
        };
      }
    }
  },
};
