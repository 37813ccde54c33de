// Can the smallest closing piece allowed be cut from a panel?

import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Rule } from '../../rule.js';

export const closingPieceLongerThanAPanel: Rule = {
  code: 'TL452',
  title: 'Smallest closing piece longer than a panel',
  severity: 'error',
  restsOn: [],
  why: 'No run could be closed: every closing piece is cut from a panel.',
  todo: 'Write the shortest piece that may be fitted, usually 200 to 300 mm.',
  given: 'job',
  example: '  minimum closing piece «2500 mm|250 mm»',
  *check({ estate }) {
    for (const { conveyor, relines, minimumClosingPiece: least } of estate.jobs) {
      const longest = relines
        .flatMap(({ liner }) => [...liner.panelLengths, ...liner.stockLengths])
        .reduce((most, length) => Math.max(most, length.value), 0);
      if (longest === 0 || least.value <= longest) continue;
      yield {
        origin: least.origin,
        message: `The smallest closing piece is to be ${least.text}, and the longest panel is ${lengthOn(conveyor, longest)}.`,
      };
    }
  },
};
