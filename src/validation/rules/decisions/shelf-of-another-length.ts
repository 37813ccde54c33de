// Does the shelf hold panels that no liner of that name has? Without a length they are taken to be the liner's only one.

import type { ShelfCount } from '../../../domain/model/plant.js';
import type { LinerSpecification } from '../../../domain/model/specifications.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import type { Rule } from '../../rule.js';
import { list } from '../../telling/wording.js';

export const shelfOfAnotherLength: Rule = {
  code: 'TL540',
  title: 'Stock of a panel that the liner does not have',
  severity: 'warning',
  restsOn: [],
  why: 'A reline planned from stock that does not fit ends with an open trough and nothing to put in.',
  todo: 'Write which length was counted, as in `6 panels length 1200 mm`; count again, or add the length to the liner if such panels are sold.',
  given: 'plant',
  bad: '  on the shelf TwoLayer12 6 panels length «1500 mm» counted 2025-02-10',
  good: '  on the shelf TwoLayer12 6 panels length 1200 mm counted 2025-02-10',
  cases: [
    {
      name: 'none is none of every length',
      text: '  on the shelf TwoLayer12 0 panels counted 2025-02-10',
    },
  ],
  *check({ estate }) {
    for (const { shelf } of estate.plants) {
      for (const count of shelf) {
        const liner = estate.liners.find(({ name }) => name === count.liner.name);
        const sold = liner && soldLengths(liner, count);
        // None is none of every length.
        if (!liner || !sold || (!count.length && count.count.count === 0)) continue;
        const words = list(sold.map((each) => lengthOn({ liner }, each)));
        const have = `liner ${liner.name} has ${count.item} of ${sold.length === 0 ? 'no length stated' : words}`;
        if (count.length && !sold.some((each) => Math.abs(each - count.length!.value) < 0.5))
          yield {
            origin: count.length.origin,
            message: `${count.count.count} ${count.item} of ${count.length.text} are on the shelf, and ${have}.`,
          };
        else if (!count.length && sold.length > 1)
          yield {
            origin: count.origin,
            message: `${count.count.count} ${count.item} are on the shelf without their length, and ${have}.`,
          };
      }
    }
  },
};

/** Undefined for fixings, which have no length. */
function soldLengths(liner: LinerSpecification, { item }: ShelfCount): readonly number[] | undefined {
  switch (item) {
    case 'panels':
      return liner.panelLengths.map(({ value }) => value);
    case 'stock lengths':
      return liner.stockLengths.map(({ value }) => value);
    case 'fixings':
      return undefined;
  }
}
