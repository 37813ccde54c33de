// Is a crew or an access unit named twice on one job or one step?

import type { NameUse } from '../../../domain/model/stated.js';
import type { Found } from '../../finding.js';
import type { Rule } from '../../rule.js';

export const crewNamedTwice: Rule = {
  code: 'TL432',
  title: 'Crew or access unit named twice',
  severity: 'warning',
  restsOn: [],
  why: 'The plan would count more hands or platforms than there are.',
  todo: 'Take one of the two out, or name the other crew that was meant.',
  given: 'job',
  example: '  crews Alpha, «Alpha|Bravo»',
  *check({ estate }) {
    for (const { name, crews, accessUnits, order } of estate.jobs) {
      yield* twice(
        `job ${name}`,
        'crew',
        crews.map(({ use }) => use),
      );
      yield* twice(
        `job ${name}`,
        'access unit',
        accessUnits.map(({ use }) => use),
      );
      for (const step of order?.steps ?? [])
        yield* twice(
          `this ${step.action}`,
          'crew',
          step.crews.map(({ use }) => use),
        );
    }
  },
};

function* twice(where: string, what: string, uses: readonly NameUse[]): Iterable<Found> {
  const first = new Map<string, NameUse>();
  for (const use of uses) {
    const before = first.get(use.name);
    if (!before) first.set(use.name, use);
    else
      yield {
        origin: use.origin,
        message: `The ${what} ${use.name} is named twice for ${where}.`,
        related: [{ origin: before.origin, message: 'the first time' }],
      };
  }
}
