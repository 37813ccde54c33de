// Is a crew planned for two jobs on the same days?

import type { Rule } from '../../rule.js';

export const crewOnTwoJobs: Rule = {
  code: 'TL447',
  title: 'Crew on two jobs at the same time',
  severity: 'information',
  restsOn: ['jobs'],
  why: 'Each job is planned as if it had the crew to itself; together they may not fit into the outage.',
  todo: 'Check that the two fit one after the other, or give one of them to another crew.',
  given: 'estate',
  around: { conveyor: 'access Floor at 0 m to 12 m ground', neighbour: 'access Floor at 0 m to 12 m ground' },
  example: `
job J1 {
  conveyor DG1
  outage Spring27
  reline run above Gate
  crews Alpha
}
job J2 {
  conveyor DG2
  outage Spring27
  reline run above Gate
  crews «Alpha|Bravo»
}
`,
  cases: [
    {
      name: 'one is part of the other, which says that they fit',
      text: `
job J1 {
  conveyor DG1
  outage Spring27
  reline run above Gate
  crews Alpha
}
job J2 {
  conveyor DG1
  outage Spring27
  reline run below Gate
  part of J1
  crews Alpha
}
`,
    },
  ],
  *check({ estate }) {
    for (const [i, later] of estate.jobs.entries()) {
      for (const { use, crew } of later.crews) {
        const other = estate.jobs.slice(0, i).find(
          (one) =>
            crew !== undefined &&
            // One that is part of the other has its work planned into that one's.
            later.partOf?.name !== one.name &&
            one.partOf?.name !== later.name &&
            one.crews.some((its) => its.crew === crew) &&
            one.window !== undefined &&
            later.window !== undefined &&
            one.window.from.day <= later.window.to.day &&
            later.window.from.day <= one.window.to.day,
        );
        if (!other) continue;
        yield {
          origin: use.origin,
          message: `${use.name} is on job ${other.name} as well, and the windows of ${other.name} and ${later.name} share days.`,
          related: [{ origin: other.nameOrigin, message: `job ${other.name}` }],
        };
      }
    }
  },
};
