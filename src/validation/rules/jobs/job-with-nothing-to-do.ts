// Does a job say what is to be renewed?

import type { Step, StepAction } from '../../../domain/model/job.js';
import type { Rule } from '../../rule.js';

export const jobWithNothingToDo: Rule = {
  code: 'TL434',
  title: 'Job without a scope',
  severity: 'warning',
  restsOn: ['block', 'machine'],
  why: 'Nothing is bought, nothing is cut and nothing planned for it.',
  todo: 'Add `reline` with the stretch, or `change screw`; work of another kind is a step of its order, `other work takes 2 h "…"`.',
  given: 'estate',
  example: `
job «J1» {
  conveyor DG1
  outage Spring27
  ‹|reline run above Gate
  ›crews Alpha
}`,
  cases: [
    {
      name: 'work of another kind is a scope, too',
      text: `
job J1 {
  conveyor DG1
  outage Spring27
  crews Alpha
  order {
    isolate
    prove dead
    other work by Alpha takes 4 h "new cylinder of the gate"
    remove isolation
  }
}`,
    },
    {
      name: 'isolating alone is no work',
      text: `
job «J1» {
  conveyor DG1
  outage Spring27
  crews Alpha
  order {
    isolate
    remove isolation
  }
}`,
    },
  ],
  *check({ estate }) {
    for (const { name, nameOrigin, relines, screwChange, order } of estate.jobs) {
      if (relines.length > 0 || screwChange || order?.steps.some(isWork) === true) continue;
      yield { origin: nameOrigin, message: `Job ${name} renews neither liner nor screw.` };
    }
  },
};

/** What is done by itself, and not to make way for something else. */
function isWork({ action }: Step): boolean {
  return byItself.has(action);
}

const byItself: ReadonlySet<StepAction> = new Set(['other work', 'patch', 'clean', 'gate off']);
