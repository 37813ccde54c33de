// Was a condition there before it was closed?

import { datedRecords } from '../../../domain/model/dated-records.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { ConditionLine } from '../../../domain/model/records.js';
import { followUp } from '../../../domain/conditions/follow-up.js';
import { conditionWords, isSameCondition, samePlace, saysNoPlace } from '../../../domain/conditions/kinds.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Found } from '../../finding.js';
import type { Rule } from '../../rule.js';

export const conditionClosedBeforeSeen: Rule = {
  code: 'TL351',
  title: 'Closed before it was seen',
  severity: 'warning',
  restsOn: ['conditions', 'history'],
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
      name: 'by work, a year before it was found',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  bolts loose 3 at 4.2 m
}
serviced DG1 2024-08-12 «closed bolts loose at 4.2 m»
serviced DG1 2024-09-16 closed bolts loose at 4.2 m`,
    },
    {
      name: 'by work, on the day it was found',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  bolts loose 3 at 4.2 m
  finding gate at Gate serious "bent"
}
serviced DG1 2024-09-09 closed bolts loose at 4.2 m
serviced DG1 2024-10-07 closed finding gate at Gate "straightened"`,
    },
    {
      name: 'by an answer that does not say which of two, and of the only one',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  bolts loose 3 at 4.2 m
  bolts loose 2 at 9 m
  panel torn at 9 m
}
inspection DG1 2025-03-10 meter 6000 h {
  view downstream
  «closed bolts loose»
  closed panel torn
  bolts loose 3 at 4.2 m
  bolts loose 2 at 9 m
}`,
    },
    {
      name: 'by work in a look, at another place',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  bolts loose 3 at 4.2 m
  serviced «closed bolts loose at 9.2 m»
  serviced closed bolts loose at 4.2 m
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
      for (const { line } of stray)
        yield {
          origin: line.origin,
          message: saysNoPlace(line)
            ? `This does not say where, and no ${conditionWords(line)} stood open, or more than one: nothing is closed.`
            : `No ${conditionWords(line)} stood open here${withinWords(conveyor, line)}, so nothing can be closed.`,
        };
    }
    yield* closedByWork(estate);
    for (const { conditions, date } of datedRecords(estate)) {
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

/** A safeguard that is named is that one, and nothing that lies near it. */
function withinWords(conveyor: Conveyor, { safeguard }: ConditionLine): string {
  return safeguard ? '' : ` (within ${lengthOn(conveyor, samePlace)})`;
}

/** Work that says what it closes, where nothing of the kind had been seen by that day. */
function* closedByWork(estate: Estate): Iterable<Found> {
  for (const { conveyor, ended, date } of estate.services) {
    if (!ended) continue;
    const { conditions, notLooked } = followUp(estate, conveyor);
    const same = conditions.filter(({ first, last }) =>
      [first, last].some(({ line }) => isSameCondition(line, ended)),
    );
    const doubted = notLooked.some(({ line }) => isSameCondition(line, ended));
    if (conditions.some(({ closed }) => closed?.by === 'service' && closed.record.ended === ended)) continue;
    if (doubted || same.some(({ first }) => first.record.date.day <= date.day)) continue;
    const later = same[0]?.first.record.date.day;
    yield {
      origin: ended.origin,
      message:
        `No ${conditionWords(ended)} had been seen${withinWords(conveyor, ended)} by ${formatDay(date.day)}, ` +
        `so nothing can be closed${later === undefined ? '' : `; it was seen first on ${formatDay(later)}`}.`,
    };
  }
}
