// Do two covers lie over the same stretch?

import { chainageOn } from '../../../domain/model/unit-of-machine.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const coversOverlap: Rule = {
  code: 'TL256',
  title: 'Covers that overlap',
  severity: 'warning',
  restsOn: [],
  why: 'The pack counts the covers that come off and go back; two in one place are one too many in the count and in the lifts.',
  todo: 'Correct the chainages of one of them.',
  given: 'conveyor',
  bad: '  cover every 1.2 m from 0 m to 12 m mass 18 kg\n  «cover at 3 m to 4 m mass 12 kg»',
  good: '  cover every 1.2 m from 0 m to 9.6 m mass 18 kg\n  cover at 9.6 m to 12 m mass 30 kg',
  check: each(
    (estate) => estate.conveyors,
    function* (conveyor) {
      const covers = [...conveyor.covers].sort((a, b) => a.from.value - b.from.value);
      const told = new Set<number>();
      for (let i = 1; i < covers.length; i++) {
        const [before, after] = [covers[i - 1]!, covers[i]!]; // 0 ≤ i − 1 < i < covers.length
        if (after.from.value >= before.to.value - 0.5) continue;
        const [first, second] = before.origin.start <= after.origin.start ? [before, after] : [after, before];
        if (told.has(second.origin.start)) continue;
        told.add(second.origin.start);
        yield {
          origin: second.origin,
          message:
            `This cover reaches from ${chainageOn(conveyor, second.from.value)} to ` +
            `${chainageOn(conveyor, second.to.value)}, ` +
            `over another from ${chainageOn(conveyor, first.from.value)} to ${chainageOn(conveyor, first.to.value)}.`,
          related: [{ origin: first.origin, message: 'the other cover' }],
        };
      }
    },
  ),
};
