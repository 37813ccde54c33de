// Is each length of a spiral long enough to be one?

import { historyOf } from '../../../domain/model/history.js';
import { changedBy, type ScrewSet } from '../../../domain/model/screw-sets.js';
import { chainageOn, lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Rule } from '../../rule.js';

export const lengthShorterThanATurn: Rule = {
  code: 'TL277',
  title: 'Length of a spiral shorter than a turn',
  severity: 'warning',
  restsOn: ['history'],
  why:
    'A piece shorter than a turn cannot be held by a flange or a weld at either end: one of the joints lies elsewhere, ' +
    'and wear is counted from the wrong day beside it.',
  todo: 'Give the length by the two joints that it lies between, the same chainages that the record of its neighbour has.',
  given: 'estate',
  around: { plant: '- outage\n- lead' },
  example: `
screw change DG1 2024-10-07 meter 3900 h {
  scope from 0 m to 6 m
}
screw change DG1 2024-11-07 meter 4500 h {
  «scope from 6.2 m to 12 m|scope from 6 m to 12 m»
}`,
  cases: [
    {
      name: 'a length of no length',
      text: 'screw change DG1 2024-10-07 meter 3900 h {\n  «scope from 6 m to 6 m»\n}',
    },
    {
      name: 'what is left of an older one',
      text: `
screw change DG1 2024-10-07 meter 3900 h {
  scope from 0 m to 6 m
}
screw change DG1 2025-10-07 meter 6900 h {
  scope from 5.8 m to 12 m
}
screw change DG1 2026-10-07 meter 9900 h {
  «scope from 0 m to 5.6 m»
}`,
    },
  ],
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      const { screwSets } = historyOf(estate, conveyor);
      const scoped = [...new Set(screwSets.flatMap(({ change }) => change ?? []))].filter(
        ({ scope }) => scope,
      );
      for (const set of screwSets) {
        const turn = set.screw.pitch.value;
        // The last that gave it one of its ends.
        const scope = scoped.findLast((change) => meets(changedBy(change), set))?.scope;
        if (set.removed || set.to - set.from >= turn || !scope) continue;
        yield {
          origin: scope.origin,
          message:
            `Between ${chainageOn(conveyor, set.from)} and ${chainageOn(conveyor, set.to)} this makes a length of ` +
            `${lengthOn(conveyor, set.to - set.from)} of the spiral of ${conveyor.name}, and a turn of ${set.screw.name} is ` +
            `${set.screw.pitch.text}.`,
        };
      }
    }
  },
};

type Ends = Pick<ScrewSet, 'from' | 'to'>;

function meets(one: Ends, other: Ends): boolean {
  return [one.from, one.to].some((end) => Math.min(Math.abs(end - other.from), Math.abs(end - other.to)) < 1);
}
