// Is a panel still held, with so many of its bolts loose or gone?

import { openConditions } from '../../../domain/conditions/follow-up.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '33 %',
  dimension: 'ratio',
  what: 'Share of a panel’s bolts that may be loose or missing.',
  basis: 'judgement: with a third gone the free spacing doubles somewhere',
};

export const panelShortOfBolts: Rule = {
  code: 'TL362',
  title: 'Panel short of bolts',
  severity: 'warning',
  restsOn: ['history'],
  why:
    'The spacing between the bolts that hold is what keeps a warm panel from lifting into the screw; with a third ' +
    'of them gone it goes at the next hot day.',
  todo: 'Replace the bolts at the next stop, look why they went (heads worn through, holes torn, loose thread), and write the condition closed.',
  threshold,
  given: 'inspection',
  example: '  «bolts missing 5 at 4.2 m|bolts missing 3 at 4.2 m»',
  cases: [{ name: 'loose ones count too', text: '  «bolts loose 6 at 4.2 m»' }],
  *check({ estate }) {
    for (const conveyor of estate.conveyors) {
      const { bolt, panelLengths } = conveyor.liner;
      const rows = bolt?.rows?.count ?? 2;
      const pitch = bolt?.pitch?.value;
      const length = panelLengths.reduce((most, each) => Math.max(most, each.value), 0);
      if (pitch === undefined || pitch <= 0 || length <= 0) continue;
      const bolts = rows * Math.max(1, Math.round(length / pitch));
      for (const { last } of openConditions(estate, conveyor)) {
        const count = last.line.count?.count;
        if (count === undefined || count <= bolts * settled(conveyor.plant, 'TL362', threshold)) continue;
        yield {
          origin: last.line.origin,
          message:
            `${count} bolts are ${last.line.kind === 'bolts loose' ? 'loose' : 'missing'} on a panel of ${conveyor.name} ` +
            `that has about ${bolts}.`,
        };
      }
    }
  },
};
