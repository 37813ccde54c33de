// Does an order shut a gate above people that was seen stuck or leaking, and nobody has written that it moves and holds again?

import { formatDay } from '../../../domain/units/calendar.js';
import { doubtedBarriers } from '../../evidence/doubted-barriers.js';
import type { Rule } from '../../rule.js';
import { soundRunBelow } from '../../telling/sound-order.js';

export const gateNotToBeTrusted: Rule = {
  code: 'TL556',
  title: 'Barrier that was seen stuck or leaking',
  severity: 'warning',
  restsOn: ['machine'],
  why: 'A gate that stops short or lets material through holds nothing back: what lies above it comes down on people who were told that it is shut.',
  todo:
    'See to the gate first, try it through its whole stroke and close the condition, ' +
    'or hold back what is above in another way.',
  given: 'job',
  around: { inspection: 'gate stuck at Gate‹| closed on 2025-03-20›' },
  bad: soundRunBelow.replace('gate shut Gate', 'gate shut «Gate»'),
  good: soundRunBelow,
  *check({ estate }) {
    for (const { gate, job, seen } of doubtedBarriers(estate)) {
      const { line, record } = seen;
      if (line.kind === 'finding') continue;
      yield {
        origin: gate.origin,
        message:
          `${gate.name} of ${job.conveyor.name} is to hold back what is above people, ` +
          `and was seen ${line.kind.replace('gate ', '')} on ${formatDay(record.date.day)}.`,
        todo:
          'See to the gate first, try it through its whole stroke and close the condition ' +
          `(\`closed ${line.kind} at ${gate.name}\`), or hold back what is above in another way.`,
        related: [{ origin: line.origin, message: line.kind }],
      };
    }
  },
};
