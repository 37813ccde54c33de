// Is there a stretch without a hold-down in a row that is otherwise regular? Two and a half times the usual spacing
// [judgement]; a break within the stretch explains a wider one.

import { chainageOn, lengthOn } from '../../../domain/model/unit-of-machine.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '2.5',
  dimension: 'ratio',
  what: 'How many usual spacings a stretch without a hold-down may be long.',
  basis: 'judgement',
};

export const holdDownMissingInTheRow: Rule = {
  code: 'TL235',
  title: 'Wide stretch without a hold-down',
  severity: 'information',
  restsOn: ['block'],
  why: 'A hold-down that is not written down is left off after a reline; one that is not there lets the spiral rise in that place.',
  todo: 'Look whether there is one, and add it; if there is none, watch the spiral there when it runs loaded.',
  threshold,
  given: 'conveyor',
  bad: '  hold-down every 1.2 m from 1.8 m to 4.2 m both sides\n  «hold-down every 1.2 m from 8.4 m to 10.8 m both sides»',
  good: '  hold-down every 1.2 m from 1.8 m to 10.2 m both sides',
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      const row = [...conveyor.holdDowns].sort((a, b) => a.from.value - b.from.value);
      if (row.length < 5) return;
      const steps = row.slice(1).map((one, i) => one.from.value - (row[i]?.from.value ?? 0));
      const usual = [...steps].sort((a, b) => a - b)[Math.floor(steps.length / 2)] ?? 0;
      for (const [i, step] of steps.entries()) {
        const before = row[i];
        const after = row[i + 1];
        if (!before || !after || usual <= 50) continue;
        const open = conveyor.breaks.filter(
          (one) => one.from.value >= before.from.value && one.to.value <= after.from.value,
        );
        const covered = step - open.reduce((sum, one) => sum + one.to.value - one.from.value, 0);
        if (covered <= settled(conveyor.plant, 'TL235', threshold) * usual + 1) continue;
        yield {
          origin: after.origin,
          message:
            `Between the hold-downs of ${conveyor.name} at ${chainageOn(conveyor, before.from.value)} and ` +
            `${chainageOn(conveyor, after.from.value)} there is none for ${lengthOn(conveyor, step)}; ` +
            `they are ${lengthOn(conveyor, usual)} apart elsewhere.`,
          related: [{ origin: before.origin, message: 'the hold-down before' }],
        };
      }
    },
  ),
};
