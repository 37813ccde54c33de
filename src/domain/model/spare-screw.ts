// Does a whole spare spiral lie in the store? The newest count up to a day holds; none was ever counted is another thing than none
// is there.

import type { CalendarDay } from '../units/calendar.js';
import type { Plant, SpareScrew } from './plant.js';

/** Undefined where spirals of that name were not counted by then. */
export function spareScrewOn(
  { spareScrews }: Pick<Plant, 'spareScrews'>,
  screw: { readonly name: string },
  asOf: CalendarDay | undefined,
): SpareScrew | undefined {
  return spareScrews
    .filter((each) => each.screw.name === screw.name && each.counted.day <= (asOf ?? Infinity))
    .reduce<SpareScrew | undefined>((a, b) => (a && a.counted.day > b.counted.day ? a : b), undefined);
}
