// Does a whole spare spiral lie in the store? The newest count up to a day holds, less what screw changes of the plant took since;
// none was ever counted is another thing than none is there.

import type { CalendarDay } from '../units/calendar.js';
import type { Plant, SpareScrew } from './plant.js';
import type { ScrewChange } from './records.js';

/** Undefined where spirals of that name were not counted by then. */
export function spareScrewOn(
  plant: Plant,
  screw: { readonly name: string },
  asOf: CalendarDay | undefined,
  changes: readonly Pick<ScrewChange, 'conveyor' | 'date' | 'screw'>[],
): SpareScrew | undefined {
  const { spareScrews } = plant;
  const last = spareScrews
    .filter((each) => each.screw.name === screw.name && each.counted.day <= (asOf ?? Infinity))
    .reduce<SpareScrew | undefined>((a, b) => (a && a.counted.day > b.counted.day ? a : b), undefined);
  if (!last) return undefined;
  const taken = changes.filter(
    (each) =>
      each.conveyor.plant === plant &&
      each.screw.name === screw.name &&
      each.date.day > last.counted.day &&
      each.date.day <= (asOf ?? Infinity),
  ).length;
  return { ...last, count: { ...last.count, count: Math.max(0, last.count.count - taken) } };
}
