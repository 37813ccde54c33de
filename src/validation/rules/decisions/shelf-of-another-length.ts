// Does the shelf hold, or an order bring, panels that no liner of that name has? Without a length they are taken to be the liner's only
// one, and count for nothing where it has several.

import type { OrderedStock, ShelfCount } from '../../../domain/model/plant.js';
import { isNewerThan, takesIn } from '../../../domain/model/shelf.js';
import type { LinerSpecification } from '../../../domain/model/specifications.js';
import { lengthOn } from '../../../domain/model/unit-of-machine.js';
import { counted } from '../../../domain/units/wording.js';
import type { Rule } from '../../rule.js';
import { list } from '../../telling/wording.js';

export const shelfOfAnotherLength: Rule = {
  code: 'TL540',
  title: 'Stock or order of a panel that the liner does not have',
  severity: 'warning',
  restsOn: [],
  why: 'A reline planned from stock that does not fit ends with an open trough and nothing to put in.',
  todo: 'Write which length was counted or ordered, as in `6 panels length 1200 mm`; count again, or add the length to the liner if such panels are sold.',
  given: 'plant',
  bad: '  on the shelf TwoLayer12 6 panels length «1500 mm» counted 2025-02-10',
  good: '  on the shelf TwoLayer12 6 panels length 1200 mm counted 2025-02-10',
  cases: [
    {
      name: 'an order says the length, too',
      text: '  ordered TwoLayer12 6 panels length «1500 mm» arrives 2025-04-07',
    },
    {
      name: 'and then it counts',
      text: '  ordered TwoLayer12 6 panels length 1200 mm arrives 2025-04-07',
    },
    {
      name: 'of several counts the newest matters, and an order that it has taken in does not',
      text: `
  ordered TwoLayer12 2 panels length 1500 mm on 2025-01-06 arrives 2025-01-20
  on the shelf TwoLayer12 1 panel length 1500 mm counted 2025-01-28
  on the shelf TwoLayer12 6 panels length «1500 mm» counted 2025-02-10`,
    },
    {
      name: 'none is none of every length',
      text: '  on the shelf TwoLayer12 0 panels counted 2025-02-10',
    },
  ],
  *check({ estate }) {
    for (const { shelf, ordered = [] } of estate.plants) {
      for (const count of [...shelf, ...ordered]) {
        if (isCountedSince(count, shelf)) continue;
        const where = 'arrives' in count ? 'ordered' : 'on the shelf';
        const some = counted(count.count.count, count.item.replace(/s$/, ''), count.item);
        const are = count.count.count === 1 ? 'is' : 'are';
        const liner = estate.liners.find(({ name }) => name === count.liner.name);
        const sold = liner && soldLengths(liner, count);
        // None is none of every length.
        if (!liner || !sold || (!count.length && count.count.count === 0)) continue;
        const words = list(sold.map((each) => lengthOn({ liner }, each)));
        const have = `liner ${liner.name} has ${count.item} of ${sold.length === 0 ? 'no length stated' : words}`;
        if (count.length && !sold.some((each) => Math.abs(each - count.length!.value) < 0.5))
          yield {
            origin: count.length.origin,
            message: `${some} of ${count.length.text} ${are} ${where}, and ${have}.`,
          };
        else if (!count.length && sold.length > 1)
          yield {
            origin: count.origin,
            message:
              `${some} ${are} ${where} without ${count.count.count === 1 ? 'its length' : 'their length'}, and ${have}: ` +
              'nothing of it is taken as there.',
          };
      }
    }
  },
};

/** Undefined for fixings, which have no length, and for what was left of a sheet, which may have any. */
function soldLengths(
  liner: LinerSpecification,
  { item }: Pick<ShelfCount, 'item'>,
): readonly number[] | undefined {
  switch (item) {
    case 'panels':
      return liner.panelLengths.map(({ value }) => value);
    case 'stock lengths':
      return liner.stockLengths.map(({ value }) => value);
    case 'offcuts':
    case 'fixings':
      return undefined;
  }
}

/** The newest count holds: what was counted or ordered before is settled by it. */
function isCountedSince(count: ShelfCount | OrderedStock, shelf: readonly ShelfCount[]): boolean {
  return shelf.some((each) => ('arrives' in count ? takesIn(each, count) : isNewerThan(each, count)));
}
