// Does a job line one run with two liners?

import { runsOf } from '../../../domain/model/runs.js';
import { concerns } from '../../../domain/order/layout.js';
import type { Rule } from '../../rule.js';

export const runWithTwoLiners: Rule = {
  code: 'TL494',
  title: 'Run relined with two liners in one job',
  severity: 'error',
  restsOn: [],
  why:
    'Panels, cut list and as-fitted form of a run are made for one liner: the other would be neither bought nor cut, ' +
    'and its panels would stand proud of their neighbours.',
  todo: 'Reline the run with one liner, or write a job for each liner, the second part of the first.',
  given: 'estate',
  example: `
liner Thin {
  layer ivory 4 mm
  layer teal 4 mm
  panel length 1200 mm ± 1 mm
  condemn at 2 mm
}
job J1 {
  conveyor DG1
  outage Spring27
  reline from 7.5 m to 9.6 m with Thin
  «reline from 9.6 m to 12 m with TwoLayer12|reline from 9.6 m to 12 m with Thin»
  crews Alpha
}`,
  *check({ estate }) {
    for (const job of estate.jobs) {
      for (const run of runsOf(job.conveyor)) {
        const [first, ...others] = job.relines.filter(({ stretch }) => concerns(job, stretch, run));
        for (const other of others) {
          if (!first || other.liner === first.liner) continue;
          yield {
            origin: other.origin,
            message:
              `Run ${run.number} of ${job.conveyor.name} is relined with ${first.liner.name} and with ` +
              `${other.liner.name}; the plan fits ${first.liner.name} only.`,
            related: [{ origin: first.origin, message: `with ${first.liner.name}` }],
          };
        }
      }
    }
  },
};
