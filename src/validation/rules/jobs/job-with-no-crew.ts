// Has a job anyone to do it?

import type { Rule } from '../../rule.js';

export const jobWithNoCrew: Rule = {
  code: 'TL433',
  title: 'Job without a crew',
  severity: 'information',
  restsOn: ['block'],
  why: 'Without a crew no duration can be planned, and whether the outage is long enough is not known.',
  todo: 'Add `crews` with the crews of the plant that will do it.',
  given: 'estate',
  around: { conveyor: 'access Floor at 0 m to 12 m ground' },
  example: `
job «J1» {
  conveyor DG1
  outage Spring27
  reline run above Gate‹|
  crews Alpha›
}`,
  *check({ estate }) {
    for (const { name, nameOrigin, crews, order } of estate.jobs) {
      if (crews.length > 0 || order?.steps.some((step) => step.crews.length > 0)) continue;
      yield { origin: nameOrigin, message: `Job ${name} names no crew.` };
    }
  },
};
