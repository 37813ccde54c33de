// Does a job ask for spares of something that it does not use?

import type { Job } from '../../../domain/model/job.js';
import type { Rule } from '../../rule.js';

export const spareOfNothing: Rule = {
  code: 'TL497',
  title: 'Spares of what the job does not use',
  severity: 'warning',
  restsOn: [],
  why: 'They stand in the job and in no list of materials: nobody orders them, and whoever wrote them counts on them.',
  todo: 'Say what is relined, or what bolts the liner has; or take the line out.',
  given: 'job',
  around: { liner: '‹- bolt|bolt M10 rows 2 pitch 250 mm countersink 4 mm›' },
  example: '  «spare 30 fixings»',
  cases: [
    { name: 'panels of a job that relines', text: '  spare 2 panels' },
    { name: 'panels of a job that relines nothing', text: '  - reline\n  change screw\n  «spare 2 panels»' },
    {
      name: 'fixings of a job that relines nothing',
      text: '  - reline\n  change screw\n  «spare 3 fixings»',
    },
  ],
  *check({ estate }) {
    for (const job of estate.jobs)
      for (const { item, count, origin } of job.spares ?? []) {
        const lacks = missing(job, item);
        if (lacks !== undefined)
          yield { origin, message: `Job ${job.name} asks for ${count.count} spare ${item}, and ${lacks}.` };
      }
  },
};

function missing({ relines }: Job, item: 'panels' | 'fixings'): string | undefined {
  if (relines.length === 0) return 'relines nothing';
  if (item === 'fixings' && relines.every(({ liner }) => !liner.bolt))
    return `${relines[0]?.liner.name} declares no bolt`;
  return undefined;
}
