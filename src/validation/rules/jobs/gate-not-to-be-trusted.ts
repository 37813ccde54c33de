// Does an order shut a gate above people that was seen stuck or leaking, and nobody has written that it moves and holds again?

import { openConditions, type Condition } from '../../../domain/conditions/follow-up.js';
import { samePlace } from '../../../domain/conditions/kinds.js';
import type { Break } from '../../../domain/model/conveyor.js';
import type { Job } from '../../../domain/model/job.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';
import { soundRunBelow } from '../../telling/sound-order.js';

export const gateNotToBeTrusted: Rule = {
  code: 'TL556',
  title: 'Barrier that was seen stuck or leaking',
  severity: 'warning',
  restsOn: ['machine'],
  why: 'A gate that stops short or lets material through holds nothing back: what lies above it comes down on people who were told that it is shut.',
  todo:
    'See to the gate first, try it through its whole stroke and close the condition (`closed gate stuck at Gate`), ' +
    'or hold back what is above in another way.',
  given: 'job',
  around: { inspection: 'gate stuck at Gate‹| closed on 2025-03-20›' },
  bad: soundRunBelow.replace('gate shut Gate', 'gate shut «Gate»'),
  good: soundRunBelow,
  *check({ estate }) {
    for (const job of estate.jobs) {
      const { conveyor, order } = job;
      const shut = order?.steps.find(({ action }) => action === 'gate shut');
      if (!shut) continue;
      const seen = openConditions(estate, conveyor).filter(({ last: { line } }) =>
        line.kind.startsWith('gate '),
      );
      for (const condition of seen) yield* relied(job, condition);
    }
  },
};

function* relied({ conveyor, order }: Job, { last: { line, inspection } }: Condition) {
  const gate = conveyor.breaks.find((each) => each.kind === 'slide gate' && isAt(each, line.at?.value));
  const steps = order?.steps ?? [];
  const at = steps.findIndex((step) => step.action === 'gate shut' && step.gate?.name === gate?.name);
  const shut = steps[at];
  // Refitted by the same order, it has been through its whole stroke.
  if (
    !gate ||
    !shut?.gate ||
    steps.slice(0, at).some((step) => step.action === 'gate on' && step.gate?.name === gate.name)
  )
    return;
  yield {
    origin: shut.gate.origin,
    message:
      `${gate.name} of ${conveyor.name} is to hold back what is above people, ` +
      `and was seen ${line.kind.replace('gate ', '')} on ${formatDay(inspection.date.day)}.`,
    related: [{ origin: line.origin, message: line.kind }],
  };
}

function isAt({ from, to }: Break, at: number | undefined): boolean {
  return at !== undefined && at >= from.value - samePlace && at <= to.value + samePlace;
}
