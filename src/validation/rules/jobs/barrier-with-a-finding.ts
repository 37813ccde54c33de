// Does an order shut a gate above people of which something was found that is open still, in somebody's own words: that it creeps,
// does not shut, lets water through? What the words mean only a person can say; stuck and leaking have a rule of their own (TL556).

import { gateOfFinding } from '../../../domain/conditions/at-a-gate.js';
import { openConditions } from '../../../domain/conditions/follow-up.js';
import { conditionWords } from '../../../domain/conditions/kinds.js';
import { formatDay } from '../../../domain/units/calendar.js';
import type { Rule } from '../../rule.js';
import { soundRunBelow } from '../../telling/sound-order.js';

export const barrierWithAFinding: Rule = {
  code: 'TL538',
  title: 'Barrier with an open finding',
  severity: 'warning',
  restsOn: ['machine', 'looks'],
  why:
    'People go below the gate because they are told that it is shut. Whether what was found of it means that it creeps, stops short ' +
    'or lets material through nobody has said yet.',
  todo:
    'Let a competent person try the gate through its whole stroke and under load, and write down what was found ' +
    '(`closed finding gate at Gate "…"`); until then hold back what is above in another way.',
  given: 'job',
  around: { inspection: 'finding ‹gate at Gate|trough at 3 m› serious "creeps open under load"' },
  bad: soundRunBelow.replace('gate shut Gate', 'gate shut «Gate»'),
  good: soundRunBelow,
  *check({ estate }) {
    for (const { conveyor, order, name } of estate.jobs) {
      const steps = order?.steps ?? [];
      if (!steps.some(({ action }) => action === 'gate shut')) continue;
      for (const { last } of openConditions(estate, conveyor)) {
        const gate = gateOfFinding(conveyor, last.line)?.name;
        const at = steps.findIndex((step) => step.action === 'gate shut' && step.gate?.name === gate);
        const shut = steps[at]?.gate;
        // Refitted by the same order, it has been through its whole stroke.
        const refitted = steps
          .slice(0, at)
          .some((step) => step.action === 'gate on' && step.gate?.name === gate);
        if (gate === undefined || !shut || refitted) continue;
        yield {
          origin: shut.origin,
          message:
            `${gate} of ${conveyor.name} is to hold back what is above people in ${name}, and this is open of it since ` +
            `${formatDay(last.inspection.date.day)}: ${conditionWords(last.line)}.`,
          related: [{ origin: last.line.origin, message: conditionWords(last.line) }],
        };
      }
    }
  },
};
