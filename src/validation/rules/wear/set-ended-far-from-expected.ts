// Did a liner that was taken out last about as long as its specification expects?

import { exposureBetween } from '../../../domain/model/exposure.js';
import { historyOf } from '../../../domain/model/history.js';
import { formatNumber } from '../../../domain/units/format.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

/** Spread of an expected life that states none (judgement); two of them are far. */
const usualSpread = 0.4;

const threshold: RuleThreshold = {
  usual: '2',
  dimension: 'ratio',
  what: 'How many spreads of the expected life a set may end away from it.',
  basis: 'judgement',
};

export const setEndedFarFromExpected: Rule = {
  code: 'TL523',
  title: 'Liner that ended far from its expected life',
  severity: 'information',
  restsOn: ['history'],
  tags: ['advice'],
  why: 'Every forecast of a liner nobody has seen starts from the expected life; left as it is, orders come much too early or much too late.',
  todo: 'Correct the expected life of the specification, or say in the reline why this set was taken out when it was.',
  threshold,
  given: 'estate',
  around: { liner: 'expected life ‹14000|4500› h ± 20 %' },
  example: 'reline «DG1» 2024-10-07 meter 3900 h {\n  liner TwoLayer12\n}',
  cases: [
    {
      name: 'a panel fitted singly shortly before does not speak for the set',
      text:
        'reline DG1 2024-09-16 meter 3700 h {\n  liner TwoLayer12\n  scope panel 1 of run 1\n}\n' +
        'reline DG1 2024-10-07 meter 3900 h {\n  liner TwoLayer12\n}',
    },
  ],
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      const history = historyOf(estate, conveyor);
      const judged = new Set<object>();
      // Of all that one reline took out the longest piece speaks: a panel fitted singly has a life of its own.
      const longestFirst = [...history.linerSets].sort((a, b) => b.to - b.from - (a.to - a.from));
      for (const set of longestFirst) {
        const expected = set.liner.expectedLife;
        const { removed } = set;
        if (
          !removed ||
          removed.reline.moved ||
          set.reline?.moved ||
          !expected ||
          judged.has(removed.reline) ||
          history.wearBy === 'tonnes'
        )
          continue;
        const reached = exposureBetween(history, set, removed);
        if (!reached.known) continue;
        judged.add(removed.reline);
        const nominal = expected.nominal.value;
        const { tolerance } = expected;
        const spread =
          tolerance === undefined
            ? usualSpread
            : tolerance.dimension === 'ratio'
              ? tolerance.value
              : tolerance.value / nominal;
        const ratio = reached.value / nominal;
        if (Math.abs(ratio - 1) <= settled(conveyor.plant, 'TL523', threshold) * spread) continue;
        yield {
          origin: removed.reline.conveyorUse.origin,
          message:
            `The ${set.liner.name} taken out here had run ${formatNumber(reached.value, 0)} h, and ` +
            `${expected.nominal.text} were expected of it${tolerance ? ` (± ${tolerance.text})` : ''}.`,
          related: [{ origin: expected.nominal.origin, message: 'the expected life' }],
        };
      }
    }
  },
};
