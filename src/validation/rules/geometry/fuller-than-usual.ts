// Is the trough filled more than such screws run? Spirals up to 80 %, shafted screws up to 45 % (makers' practice and
// CEMA 350, from memory).

import { formatPercent } from '../../../domain/units/format.js';
import { each } from '../../telling/each.js';
import type { Rule } from '../../rule.js';

export const fullerThanUsual: Rule = {
  code: 'TL225',
  title: 'Trough fuller than a screw can run',
  severity: 'warning',
  restsOn: [],
  why: 'Capacity and power follow from the fill; an overfilled shafted screw wears its hangers, an overfilled spiral climbs out of its material.',
  todo: 'Look into the trough under load and write down what part of the screw is covered.',
  given: 'conveyor',
  example: '  fill «90 %|60 %»',
  cases: [
    { name: 'as full as a spiral runs', text: '  fill 80 %' },
    { name: 'just fuller', text: '  fill «81 %»' },
  ],
  check: each(
    (estate) => estate.conveyors,
    function* ({ name, screw, fill }) {
      const limit = screw.kind.kind === 'shaftless' ? 0.8 : 0.45;
      if (!fill || fill.value <= limit + 1e-9) return;
      yield {
        origin: fill.origin,
        message:
          `${name} is said to run ${fill.text} full, ` +
          `and a ${screw.kind.kind === 'shaftless' ? 'spiral' : 'shafted screw'} runs at ` +
          `${formatPercent(limit)} at most.`,
      };
    },
  ),
};
