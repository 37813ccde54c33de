// Has a hold-down more room above the spiral than a tenth of its diameter [judgement]? It then holds nothing down.

import { screwSeen } from '../../../domain/model/lying-screw.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { formatPercent } from '../../../domain/units/format.js';
import type { Rule } from '../../rule.js';
import { settled, type RuleThreshold } from '../../threshold.js';

const threshold: RuleThreshold = {
  usual: '10 %',
  dimension: 'ratio',
  what: 'Gap of a hold-down as a share of the spiral’s diameter.',
  basis: 'judgement',
};

export const holdDownGapWide: Rule = {
  code: 'TL321',
  title: 'Hold-down far above the spiral',
  severity: 'warning',
  restsOn: [],
  why: 'A spiral that can rise climbs over a lump, strikes the covers and drops back on the liner.',
  todo: 'Adjust or replace the block at the next stop, and check its bolts and bracket.',
  threshold,
  given: 'inspection',
  example: '  hold-down at 3.75 m gap «55 mm|14 mm»',
  cases: [
    { name: 'a tenth of the spiral', text: '  hold-down at 3.75 m gap 40 mm' },
    { name: 'just more', text: '  hold-down at 3.75 m gap «40.1 mm»' },
  ],
  *check({ estate }) {
    for (const inspection of estate.inspections) {
      const { conveyor, holdDownGaps } = inspection;
      if (holdDownGaps.length === 0) continue;
      const share = settled(conveyor.plant, 'TL321', threshold);
      for (const { at, gap } of holdDownGaps) {
        const limit = screwSeen(estate, inspection, at.value).outsideDiameter.value * share;
        if (gap.value <= limit) continue;
        yield {
          origin: gap.origin,
          message:
            `The hold-down of ${conveyor.name} at ${at.text} has a gap of ${gap.text}, ` +
            `more than ${lengthOn(conveyor, limit)}, ${formatPercent(share)} of the spiral's diameter.`,
        };
      }
    }
  },
};
