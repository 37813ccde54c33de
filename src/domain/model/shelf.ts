// What lies on the shelf of a plant for a liner? The newest count up to a day of each item and length holds; what was never
// counted is another thing than an empty shelf.

import type { CalendarDay } from '../units/calendar.js';
import type { Plant, ShelfCount, ShelfItem } from './plant.js';
import type { LinerSpecification } from './specifications.js';

/** Of one length; what is not known to be of any length is left out. */
export interface ShelfStock {
  readonly item: ShelfItem;
  /** mm; 0 for fixings. */
  readonly length: number;
  readonly count: number;
  readonly counted: CalendarDay;
}

/** The newest count up to a day of each item and length. */
export function shelfOn(
  plant: Pick<Plant, 'shelf'>,
  liner: LinerSpecification,
  asOf: CalendarDay,
): readonly ShelfCount[] {
  const newest = new Map<string, ShelfCount>();
  for (const count of plant.shelf) {
    if (count.liner.name !== liner.name || count.counted.day > asOf) continue;
    const key = `${count.item} ${count.length?.value ?? ''}`;
    const known = newest.get(key);
    if (!known || known.counted.day < count.counted.day) newest.set(key, count);
  }
  return [...newest.values()];
}

/** Counts of a liner with the length that is sold where no other is written. */
export function stockOf(counts: readonly ShelfCount[], liner: LinerSpecification): readonly ShelfStock[] {
  return counts.flatMap((each) => {
    const length = each.item === 'fixings' ? 0 : (each.length?.value ?? onlyLength(liner, each.item));
    return length === undefined
      ? []
      : [{ item: each.item, length, count: each.count.count, counted: each.counted.day }];
  });
}

function onlyLength(liner: LinerSpecification, item: ShelfItem): number | undefined {
  const sold = item === 'panels' ? liner.panelLengths : liner.stockLengths;
  return sold.length === 1 ? sold[0]?.value : undefined;
}
