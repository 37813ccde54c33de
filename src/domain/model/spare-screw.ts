// Does a whole spare spiral lie in the store? The newest count up to a day holds, less what screw changes of the plant took since;
// none was ever counted is another thing than none is there.

import type { CalendarDay } from '../units/calendar.js';
import type { OrderedScrew, Plant, SpareScrew } from './plant.js';
import type { ScrewChange } from './records.js';

/** Undefined where spirals of that name were not counted by then. */
export function spareScrewOn(
  plant: Plant,
  screw: { readonly name: string },
  asOf: CalendarDay | undefined,
  changes: Changes,
): SpareScrew | undefined {
  const last = newestCount(plant, screw, asOf);
  if (!last) return undefined;
  const taken = changesSince(last, plant, screw, asOf, changes).length;
  return { ...last, count: { ...last.count, count: Math.max(0, last.count.count - taken) } };
}

type Changes = readonly Pick<ScrewChange, 'conveyor' | 'date' | 'screw'>[];

function newestCount(
  { spareScrews }: Plant,
  screw: { readonly name: string },
  asOf: CalendarDay | undefined,
): SpareScrew | undefined {
  return spareScrews
    .filter((each) => each.screw.name === screw.name && each.counted.day <= (asOf ?? Infinity))
    .reduce<SpareScrew | undefined>((a, b) => (a && a.counted.day > b.counted.day ? a : b), undefined);
}

/** All of them where nothing was counted. */
function changesSince(
  last: SpareScrew | undefined,
  plant: Plant,
  screw: { readonly name: string },
  asOf: CalendarDay | undefined,
  changes: Changes,
): Changes {
  return changes.filter(
    (each) =>
      each.conveyor.plant === plant &&
      each.screw.name === screw.name &&
      each.date.day > (last?.counted.day ?? -Infinity) &&
      each.date.day <= (asOf ?? Infinity),
  );
}

/** So many of an order are not counted yet and turn nowhere. */
export interface ScrewOnOrder {
  readonly order: OrderedScrew;
  readonly count: number;
}

/** The soonest first. A change takes what was counted before it takes what came since. */
export function screwsOrderedOn(
  plant: Plant,
  screw: { readonly name: string },
  asOf: CalendarDay | undefined,
  changes: Changes,
): readonly ScrewOnOrder[] {
  const { orderedScrews = [] } = plant;
  const last = newestCount(plant, screw, asOf);
  const open = orderedScrews
    .filter(
      ({ screw: { name }, ordered, arrives }) =>
        name === screw.name &&
        (ordered?.day ?? -Infinity) <= (asOf ?? Infinity) &&
        (last?.counted.day ?? -Infinity) < arrives.day,
    )
    .sort((a, b) => a.arrives.day - b.arrives.day)
    .map((order) => ({ order, count: order.count.count }));
  let shelf = last?.count.count ?? 0;
  const since = changesSince(last, plant, screw, asOf, changes);
  for (const change of since.toSorted((a, b) => a.date.day - b.date.day)) {
    const came = open.find(({ order, count }) => count > 0 && order.arrives.day <= change.date.day);
    if (shelf > 0) shelf--;
    else if (came) came.count--;
  }
  return open.filter(({ count }) => count > 0);
}
