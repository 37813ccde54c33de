// Does a job say what is to be renewed?

import type { Rule } from '../../rule.js';

export const jobWithNothingToDo: Rule = {
  code: 'TL434',
  title: 'Job without a scope',
  severity: 'warning',
  restsOn: ['block', 'machine'],
  why: 'Nothing is bought, nothing is cut and nothing planned for it.',
  todo: 'Add `reline` with the stretch, or `change screw`.',
  given: 'estate',
  example: `
job «J1» {
  conveyor DG1
  outage Spring27
  ‹|reline run above Gate
  ›crews Alpha
}`,
  *check({ estate }) {
    for (const { name, nameOrigin, relines, screwChange } of estate.jobs) {
      if (relines.length > 0 || screwChange) continue;
      yield { origin: nameOrigin, message: `Job ${name} renews neither liner nor screw.` };
    }
  },
};
