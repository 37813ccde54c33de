// Does a line that closes a finding mean all that stood open there? A part has many things that nobody says the place of.

import { followUp, type Closing, type Condition } from '../../../domain/conditions/follow-up.js';
import { conditionWords } from '../../../domain/conditions/kinds.js';
import { listing } from '../../../domain/order/words.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { ConditionLine } from '../../../domain/model/records.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';

const two = `inspection DG1 2024-09-09 meter 3600 h {
  view downstream
  finding drive slight "glass of the hour meter fogged"
}
inspection DG1 2025-03-10 meter 6000 h {
  view downstream
  finding drive slight "key for reverse is lost"
  finding drive slight "glass of the hour meter fogged"
}`;

export const closedSeveralFindings: Rule = {
  code: 'TL539',
  title: 'Several findings closed by one line',
  severity: 'information',
  restsOn: ['conditions', 'history'],
  why: 'One was put right; the others of that part and place are off every sheet, and nobody looks for them any more.',
  todo:
    'Where all were put right, nothing is to be done. Where only one was, write its own words, or one of them, behind the closing: ' +
    '`serviced DG1 2025-03-11 closed finding drive "key for reverse is lost"`.',
  given: 'estate',
  example: `${two}
serviced DG1 2025-03-11 «closed finding drive "by the electrician"|closed finding drive "new key"»`,
  cases: [
    {
      name: 'without words, by a look',
      text: `${two}
inspection DG1 2025-09-08 meter 9000 h {
  view downstream
  «closed finding drive»
}`,
    },
    {
      name: 'in the words of one, and the other after it',
      text: `${two}
serviced DG1 2025-03-11 closed finding drive "key for reverse is lost"
serviced DG1 2025-03-12 closed finding drive "by the electrician"`,
    },
  ],
  *check({ estate }) {
    for (const conveyor of estate.conveyors)
      for (const [line, closed] of closedBy(estate, conveyor)) {
        if (closed.length < 2) continue;
        yield {
          origin: line.origin,
          message:
            `This closes ${closed.length} findings of ${conveyor.name}: ` +
            `${listing(closed.map(({ first, last }) => `${conditionWords(last.line)} (found on ${formatDay(first.record.date.day)})`))}.`,
          related: closed.map(({ last }) => ({ origin: last.line.origin, message: 'closed with it' })),
        };
      }
  },
};

/** Findings by the line that closed them. */
function closedBy(estate: Estate, conveyor: Conveyor): ReadonlyMap<ConditionLine, readonly Condition[]> {
  const found = new Map<ConditionLine, readonly Condition[]>();
  for (const condition of followUp(estate, conveyor).conditions) {
    const line = condition.last.line.kind === 'finding' ? closingLine(condition.closed) : undefined;
    if (line) found.set(line, [...(found.get(line) ?? []), condition]);
  }
  return found;
}

function closingLine(closed: Closing | undefined): ConditionLine | undefined {
  switch (closed?.by) {
    case 'look':
      return closed.look.line;
    case 'service':
      return closed.record.ended;
    default:
      return undefined;
  }
}
