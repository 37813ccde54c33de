// How long did the liners before these last, and how worn were they when they came out? Each set that was taken out, with the
// exposure it reached, the least that any look of it had left, and what the bench showed of the panels that came out. Whether it
// was worn out or taken out early is not known from the date alone, so its life is what it reached, no more.

import { unitOfMachine } from '../../../domain/model/unit-of-machine.js';
import { chainageText } from '../../../domain/units/length-words.js';
import type { Estate } from '../../../domain/model/estate.js';
import { exposureBetween, type ExposedReading, type Exposure } from '../../../domain/model/exposure.js';
import type { History } from '../../../domain/model/history.js';
import type { LinerSet } from '../../../domain/model/liner-sets.js';
import type { Place } from '../../../domain/model/records.js';
import type { CalendarDay } from '../../../domain/units/calendar.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';

export interface FormerSet {
  readonly set: LinerSet;
  /** Exposure when it was taken out. */
  readonly reached: Exposure;
  /** The least that was seen of it, mm (0: steel showed), where and when; undefined where no thickness was read. */
  readonly least: LeastSeen | undefined;
  /** Measured when it came out, thinnest first. */
  readonly onTheBench: readonly LeastSeen[];
}

export interface LeastSeen {
  readonly place: string;
  readonly thickness: number;
  readonly day: CalendarDay;
}

/** In order of the day they were taken out, then by chainage. */
export function formerSetsOf(
  estate: Estate,
  history: History,
  readings: ReadonlyMap<Place, readonly ExposedReading[]>,
): readonly FormerSet[] {
  const own = [...readings].filter(([place]) => place.conveyor === history.conveyor);
  return history.linerSets
    .flatMap((set) =>
      set.removed && !set.removed.reline.moved
        ? [
            {
              set,
              reached: exposureBetween(history, set, set.removed),
              least: leastOf(estate, set, own),
              onTheBench: benchOf(estate, set, own),
            },
          ]
        : [],
    )
    .sort((a, b) => (a.set.removed?.day ?? 0) - (b.set.removed?.day ?? 0) || a.set.from - b.set.from);
}

function benchOf(
  { readings: columns }: Estate,
  { removed, from, to }: LinerSet,
  readings: readonly (readonly [Place, readonly ExposedReading[]])[],
): readonly LeastSeen[] {
  return readings
    .filter(([place]) => place.at >= from && place.at <= to)
    .flatMap(([place, rows]) =>
      rows.flatMap(({ row, set, inspection }): readonly LeastSeen[] => {
        if (columns.bench.get(row) !== removed?.reline || set?.removed === undefined) return [];
        const thickness = columns.kind[row] === ReadingKind.trough ? 0 : (columns.value[row] ?? NaN);
        return [{ place: nameOf(place, set.removed), thickness, day: inspection.date.day }];
      }),
    )
    .sort((a, b) => a.thickness - b.thickness);
}

/** Without a clock position where none was written down: the one it has then is only taken for the arithmetic. */
function nameOf({ conveyor, name, at, declared }: Place, removed: LinerSet['removed']): string {
  const written = removed?.reline.oldPanels.some(
    ({ spot }) => spot.kind === 'chainage' && Math.abs(spot.at.value - at) < 1 && spot.clock === undefined,
  );
  return written && !declared ? chainageText(at, unitOfMachine(conveyor)) : name;
}

function leastOf(
  { readings: columns }: Estate,
  set: LinerSet,
  readings: readonly (readonly [Place, readonly ExposedReading[]])[],
): LeastSeen | undefined {
  let least: LeastSeen | undefined;
  for (const [place, rows] of readings) {
    if (place.at < set.from || place.at > set.to) continue;
    for (const { row, set: seen, inspection } of rows) {
      // Sets worked out at two times are two objects; the reline that fitted them is one.
      if (!seen || seen.reline !== set.reline || seen.removed?.day !== set.removed?.day) continue;
      const steel = columns.kind[row] === ReadingKind.trough;
      if (!steel && columns.kind[row] !== ReadingKind.thickness) continue;
      const thickness = steel ? 0 : (columns.value[row] ?? NaN);
      if (Number.isFinite(thickness) && thickness < (least?.thickness ?? Infinity))
        least = {
          place: columns.bench.has(row) ? nameOf(place, set.removed) : place.name,
          thickness,
          day: inspection.date.day,
        };
    }
  }
  return least;
}
