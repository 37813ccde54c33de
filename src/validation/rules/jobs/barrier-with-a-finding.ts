// Does an order shut a gate above people of which something was found that is open still, in somebody's own words: that it creeps,
// does not shut, lets water through? What the words mean only a person can say; stuck and leaking have a rule of their own (TL556).

import { conditionWords } from '../../../domain/conditions/kinds.js';
import type { SeenLine } from '../../../domain/conditions/follow-up.js';
import { formatDay } from '../../../domain/units/calendar.js';
import { doubtedBarriers } from '../../evidence/doubted-barriers.js';
import type { Rule } from '../../rule.js';
import { soundRunBelow } from '../../telling/sound-order.js';

export const barrierWithAFinding: Rule = {
  code: 'TL538',
  title: 'Barrier with an open finding',
  severity: 'warning',
  restsOn: ['machine', 'conditions'],
  why:
    'People go below the gate because they are told that it is shut. Whether what was found of it means that it creeps, stops short ' +
    'or lets material through only a person can read in its words, and none has said that it is over.',
  todo:
    'Let a competent person try the gate through its whole stroke and under load, and write down what was found ' +
    '(`closed finding gate at Gate "…"`); until then hold back what is above in another way.',
  given: 'job',
  around: { inspection: 'finding ‹gate at Gate|trough at 3 m› serious "creeps open under load"' },
  bad: soundRunBelow.replace('gate shut Gate', 'gate shut «Gate»'),
  good: soundRunBelow,
  *check({ estate }) {
    for (const { gate, job, seen, earlier, since } of doubtedBarriers(estate)) {
      const { line } = seen;
      if (line.kind !== 'finding') continue;
      yield {
        origin: gate.origin,
        message:
          `${gate.name} of ${job.conveyor.name} is to hold back what is above people in ${job.name}, and this is open of it since ` +
          `${formatDay(since)}: ${conditionWords(line)}${saidBefore(earlier)}.`,
        related: [...earlier, seen].map((each) => ({
          origin: each.line.origin,
          message: conditionWords(each.line),
        })),
      };
    }
  },
};

/** The newest words may only say what became of it. */
function saidBefore(earlier: readonly SeenLine[]): string {
  const words = [...new Set(earlier.flatMap(({ line }) => line.words ?? []))];
  return words.length === 0 ? '' : ` (before: ${words.map((each) => `"${each}"`).join('; ')})`;
}
