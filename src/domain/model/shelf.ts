// What lies on the shelf of a plant for a liner? The newest count up to a day of each item and length holds; what was never
// counted is another thing than an empty shelf.

import { formatDay, type CalendarDay } from '../units/calendar.js';
import type { OrderedStock, Plant, ShelfCount, ShelfItem } from './plant.js';
import type { Reline } from './records.js';
import { linersBrought } from './same-again.js';
import type { LinerSpecification } from './specifications.js';

/** Of one length; what is not known to be of any length is left out. */
export interface ShelfStock {
  readonly item: ShelfItem;
  /** mm; 0 for fixings. */
  readonly length: number;
  readonly count: number;
  /** What was written beside the count. */
  readonly note?: string;
  /** The day it was counted, or from which an order of it counts. */
  readonly counted: CalendarDay;
  /** It is ordered, and not there yet. */
  readonly isOrdered?: true;
  /** The day an order of it is promised for, as written. */
  readonly promised?: CalendarDay;
  /** So many were ordered, and may lie in a trough by now: none of them counts. */
  readonly perhapsFitted?: { readonly count: number; readonly by: LinerWentIn };
}

/** A reline as far as the shelf goes. */
export type LinerWentIn = Pick<Reline, 'conveyor' | 'date' | 'liner' | 'again'>;

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

/** Orders of a liner that are known on a day, that no later count of the shelf has taken in and no reline can have used. */
export function ordersOn(
  plant: Plant,
  liner: { readonly name: string },
  asOf: CalendarDay,
  relines: readonly LinerWentIn[],
): readonly OrderedStock[] {
  return uncountedOn(plant, liner, asOf).filter(
    (order) => fittedSince(order, plant, relines, asOf) === undefined,
  );
}

/** An order that may lie in a trough by now, and the first reline that can have used it. */
export interface PerhapsFitted {
  readonly order: OrderedStock;
  readonly by: LinerWentIn;
}

export function perhapsFittedOn(
  plant: Plant,
  liner: { readonly name: string },
  asOf: CalendarDay,
  relines: readonly LinerWentIn[],
): readonly PerhapsFitted[] {
  return uncountedOn(plant, liner, asOf).flatMap((order) => {
    const by = fittedSince(order, plant, relines, asOf);
    return by ? [{ order, by }] : [];
  });
}

function uncountedOn(
  { shelf, ordered = [] }: Plant,
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

/** The first reline of the plant with this liner since the order came; how much of it went in nobody wrote down. */
export function fittedSince(
  { liner, arrives }: OrderedStock,
  plant: Plant,
  relines: readonly LinerWentIn[],
  asOf: CalendarDay,
): LinerWentIn | undefined {
  return relines
    .filter(
      (each) =>
        each.conveyor.plant === plant &&
        linersBrought(each).some(({ name }) => name === liner.name) &&
        each.date.day >= arrives.day &&
        each.date.day <= asOf,
    )
    .reduce<LinerWentIn | undefined>((a, b) => (a && a.date.day <= b.date.day ? a : b), undefined);
}

/** `4 panels of 2000 mm of TwoLayer12, ordered on 2024-01-30 and promised for 2024-03-04`. */
export function orderWords({ liner, item, count, length, ordered, arrives, note }: OrderedStock): string {
  return (
    `${count.count} ${item}${length ? ` of ${length.text}` : ''} of ${liner.name}, ` +
    `${ordered ? `ordered on ${formatDay(ordered.day)} and ` : ''}promised for ${formatDay(arrives.day)}` +
    (note === undefined ? '' : ` (“${note}”)`)
  );
}

/** The same in short, for a list of reasons. */
export function notThereWords({ order, by }: PerhapsFitted): string {
  const { count, item, liner, arrives } = order;
  return (
    `${count.count} ${item} of ${liner.name} ordered for ${formatDay(arrives.day)} are not taken as there ` +
    `(${by.conveyor.name} relined with it on ${formatDay(by.date.day)}, not counted since)`
  );
}

/** Why what was ordered is not taken as there. */
export function perhapsFittedWords(by: LinerWentIn): string {
  return (
    `${by.conveyor.name} was relined with it on ${formatDay(by.date.day)} ` +
    'and nobody has counted since, so none of it is taken as there'
  );
}

/** A count of the same panels or sheets on a later day, which holds instead. */
export function isNewerThan(count: ShelfCount, other: ShelfCount): boolean {
  return (
    count.liner.name === other.liner.name &&
    count.item === other.item &&
    count.length?.value === other.length?.value &&
    count.counted.day > other.counted.day
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

/**
 * Orders as stock of the day they are promised for: what was to be there by now counts as coming today, and of what may have been
 * fitted since nothing does.
 */
export function stockOrdered(
  plant: Plant,
  liner: LinerSpecification,
  asOf: CalendarDay,
  relines: readonly LinerWentIn[],
): readonly ShelfStock[] {
  const asStock = (order: OrderedStock): readonly ShelfStock[] =>
    stockOf([{ ...order, counted: order.arrives }], liner).map((stock) => ({
      ...stock,
      counted: Math.max(asOf, stock.counted) as CalendarDay,
      promised: stock.counted,
      isOrdered: true as const,
    }));
  return [
    ...ordersOn(plant, liner, asOf, relines).flatMap(asStock),
    ...perhapsFittedOn(plant, liner, asOf, relines).flatMap(({ order, by }) =>
      asStock(order).map((stock) => ({ ...stock, count: 0, perhapsFitted: { count: stock.count, by } })),
    ),
  ];
}

/** Counts of a liner with the length that is sold where no other is written. */
export function stockOf(counts: readonly ShelfCount[], liner: LinerSpecification): readonly ShelfStock[] {
  return counts.flatMap((each) => {
    const length = each.item === 'fixings' ? 0 : (each.length?.value ?? onlyLength(liner, each.item));
    return length === undefined
      ? []
      : [
          {
            item: each.item,
            length,
            count: each.count.count,
            counted: each.counted.day,
            ...(each.note === undefined ? {} : { note: each.note }),
          },
        ];
  });
}

function onlyLength(liner: LinerSpecification, item: ShelfItem): number | undefined {
  const sold = item === 'panels' ? liner.panelLengths : liner.stockLengths;
  return sold.length === 1 ? sold[0]?.value : undefined;
}
