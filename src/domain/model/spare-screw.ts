// Does a whole spare spiral lie in the store? The newest count up to a day holds, less what screw changes of the plant took since;
// none was ever counted is another thing than none is there.

import { formatDay, type CalendarDay } from '../units/calendar.js';
import type { OrderedScrew, Plant, SpareScrew } from './plant.js';
import type { ScrewChange } from './records.js';
import type { Stated } from './stated.js';

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

type Changes = readonly Pick<ScrewChange, 'conveyor' | 'date' | 'screw' | 'scope'>[];

function newestCount(
  { spareScrews }: Plant,
  screw: { readonly name: string },
  asOf: CalendarDay | undefined,
): SpareScrew | undefined {
  return spareScrews
    .filter(
      ({ screw: { name }, length, counted }) =>
        name === screw.name && length === undefined && counted.day <= (asOf ?? Infinity),
    )
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
  const fromLengths = new Set(lengthsLeft(plant, screw, asOf, changes).flatMap(({ takenBy }) => takenBy));
  return changes.filter(
    (each) =>
      isOf(each, plant, screw) &&
      each.date.day > (last?.counted.day ?? -Infinity) &&
      each.date.day <= (asOf ?? Infinity) &&
      !fromLengths.has(each),
  );
}

function isOf(change: Changes[number], plant: Plant, screw: { readonly name: string }): boolean {
  return change.conveyor.plant === plant && change.screw.name === screw.name;
}

/** Lengths of a spiral by the newest count of each, and the changes of a part that went by them. */
interface LengthsLeft {
  readonly count: SpareScrew;
  readonly length: Stated<'length'>;
  readonly takenBy: Changes[number][];
}

/** A change of a part takes the shortest length that is long enough, before it takes anything of a whole spiral. */
function lengthsLeft(
  plant: Plant,
  screw: { readonly name: string },
  asOf: CalendarDay | undefined,
  changes: Changes,
): readonly LengthsLeft[] {
  const newest = new Map<number, LengthsLeft>();
  for (const count of plant.spareScrews) {
    const { length } = count;
    if (count.screw.name !== screw.name || !length || count.counted.day > (asOf ?? Infinity)) continue;
    const known = newest.get(length.value);
    if (!known || known.count.counted.day < count.counted.day)
      newest.set(length.value, { count, length, takenBy: [] });
  }
  const lengths = [...newest.values()].sort((a, b) => a.length.value - b.length.value);
  const later = changes.toSorted((a, b) => a.date.day - b.date.day);
  for (const change of later) {
    const { scope, date } = change;
    if (!scope || !isOf(change, plant, screw)) continue;
    if (date.day > (asOf ?? Infinity)) continue;
    const need = scope.to.value - scope.from.value - sawn;
    lengths
      .find(
        ({ count, length, takenBy }) =>
          length.value >= need && count.counted.day < date.day && takenBy.length < count.count.count,
      )
      ?.takenBy.push(change);
  }
  return lengths;
}

/** A length may fall short of its place by so much, mm (judgement: what a tape and a weld gap leave). */
const sawn = 50;

/** `1 length of 9.5 m, counted on 2026-10-20 (“half of one”)`, of each that is left, and of each that is on its way. */
export function spiralLengthWords(
  plant: Plant,
  screw: { readonly name: string },
  asOf: CalendarDay | undefined,
  changes: Changes,
): readonly string[] {
  const left = lengthsLeft(plant, screw, asOf, changes);
  const words = (count: number, { text }: Stated<'length'>, note: string | undefined, when: string): string =>
    `${count} ${count === 1 ? 'length' : 'lengths'} of ${text} ${when}${note === undefined ? '' : ` (“${note}”)`}`;
  return [
    ...left.map(({ count, length, takenBy }) =>
      words(
        count.count.count - takenBy.length,
        length,
        count.note,
        `on the shelf, counted on ${formatDay(count.counted.day)}`,
      ),
    ),
    ...(plant.orderedScrews ?? []).flatMap(({ screw: { name }, length, count, note, ordered, arrives }) =>
      name === screw.name &&
      length &&
      (ordered?.day ?? -Infinity) <= (asOf ?? Infinity) &&
      !left.some((each) => each.length.value === length.value && each.count.counted.day >= arrives.day)
        ? [words(count.count, length, note, `ordered, promised for ${formatDay(arrives.day)}`)]
        : [],
    ),
  ];
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
      ({ screw: { name }, length, ordered, arrives }) =>
        name === screw.name &&
        length === undefined &&
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
