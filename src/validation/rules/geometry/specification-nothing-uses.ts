// Is a liner or a screw specified that no conveyor, record or job names?

import type { Estate } from '../../../domain/model/estate.js';
import type { Rule } from '../../rule.js';

export const specificationNothingUses: Rule = {
  code: 'TL260',
  title: 'Specification that nothing uses',
  severity: 'information',
  restsOn: [],
  tags: ['unused'],
  why: 'Mostly the conveyor it was written for names another one by a slip, or an old specification was left standing beside the new one.',
  todo: 'Name it where it belongs, or take it out; the history of the files keeps it.',
  given: 'estate',
  bad: `
liner «Spare10» {
  layer grey 5 mm
  layer orange 5 mm
  panel length 1000 mm ± 1 mm
  condemn at 2.5 mm
}`,
  good: `
liner Spare10 {
  layer grey 5 mm
  layer orange 5 mm
  panel length 1000 mm ± 1 mm
  condemn at 2.5 mm
}
reline DG1 2025-03-10 meter 6200 h {
  liner Spare10
}`,
  *check({ estate, problems }) {
    // Before there is a conveyor, nothing can use anything; and a block that cannot be read may well be the user.
    if (estate.conveyors.length === 0 || problems.length > 0) return;
    const used = usedBy(estate);
    for (const [what, specifications] of [
      ['liner', estate.liners],
      ['screw', estate.screws],
    ] as const) {
      for (const { name, nameOrigin } of specifications.filter((one) => !used.has(one))) {
        yield { origin: nameOrigin, message: `The ${what} ${name} is used by nothing.` };
      }
    }
  },
};

function usedBy(estate: Estate): ReadonlySet<object> {
  return new Set<object>([
    ...estate.conveyors.flatMap(({ liner, screw }) => [liner, screw]),
    ...estate.conveyors.flatMap(({ linersAlong }) => linersAlong.map(({ liner }) => liner)),
    ...estate.relines.map(({ liner }) => liner),
    ...estate.screwChanges.map(({ screw }) => screw),
    ...estate.jobs.flatMap(({ relines, screwChange }) => [
      ...relines.map(({ liner }) => liner),
      ...(screwChange ? [screwChange.screw] : []),
    ]),
  ]);
}
