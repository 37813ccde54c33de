// What lies on the shelf of a plant for a liner? The newest count up to a day of each item and length holds; what was never
// counted is another thing than an empty shelf.

import type { CalendarDay } from '../units/calendar.js';
import type { OrderedStock, Plant, ShelfCount, ShelfItem } from './plant.js';
import type { LinerSpecification } from './specifications.js';

/** Of one length; what is not known to be of any length is left out. */
export interface ShelfStock {
  readonly item: ShelfItem;
  /** mm; 0 for fixings. */
  readonly length: number;
  readonly count: number;
  /** The day it was counted, or that an order of it is promised for. */
  readonly counted: CalendarDay;
  /** It is ordered, and not there yet. */
  readonly isOrdered?: true;
}

/** The newest count up to a day of each item and length. */
export function shelfOn(
  plant: Pick<Plant, 'shelf'>,
  liner: { readonly name: string },
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

/** Orders of a liner that are known on a day and that no later count of the shelf has taken in. */
export function ordersOn(
  { shelf, ordered = [] }: Pick<Plant, 'shelf' | 'ordered'>,
  liner: { readonly name: string },
  asOf: CalendarDay,
): readonly OrderedStock[] {
  return ordered.filter(
    (order) =>
      order.liner.name === liner.name &&
      (order.ordered?.day ?? asOf) <= asOf &&
      !shelf.some((count) => takesIn(count, order) && count.counted.day <= asOf),
  );
}

/** A count of the same item on the day of an order's arrival, or later, has it. */
export function takesIn(count: ShelfCount, order: OrderedStock): boolean {
  return (
    count.liner.name === order.liner.name &&
    count.item === order.item &&
    (count.length === undefined || order.length === undefined || count.length.value === order.length.value) &&
    count.counted.day >= order.arrives.day
  );
}

/** Orders as stock of the day they are promised for; what was to be there by now counts as coming today. */
export function stockOrdered(
  orders: readonly OrderedStock[],
  liner: LinerSpecification,
  asOf: CalendarDay,
): readonly ShelfStock[] {
  return orders.flatMap((order) =>
    stockOf([{ ...order, counted: order.arrives }], liner).map((stock) => ({
      ...stock,
      counted: Math.max(asOf, stock.counted) as CalendarDay,
      isOrdered: true as const,
    })),
  );
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
