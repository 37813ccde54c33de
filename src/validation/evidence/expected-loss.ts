// How much should a spot have lost between two of its readings? At the rates that its own readings told up to the first of them: of
// the liner that lies there since it was fitted, and of each set before it up to its last thickness. Judgement: what happens
// between two looks lies between half the slowest and three times the fastest of these, product, speed and season apart.

import type { Estate } from '../../domain/model/estate.js';
import { exposedReadings, type ExposedReading } from '../../domain/model/exposure.js';
import { fittedThickness } from '../../domain/model/fitted-thickness.js';
import type { LinerSet } from '../../domain/model/liner-sets.js';
import type { Place } from '../../domain/model/records.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';

/** mm, not negative. */
export interface ExpectedLoss {
  readonly least: number;
  readonly middle: number;
  readonly most: number;
}

const known = new WeakMap<Estate, ReturnType<typeof exposedReadings>>();

/** Worked out once an estate. */
export function exposedOf(estate: Estate): ReturnType<typeof exposedReadings> {
  const all = known.get(estate) ?? exposedReadings(estate);
  known.set(estate, all);
  return all;
}

/** Undefined where no reading tells a rate, or the running between the two is not known. */
export function expectedLoss(
  estate: Estate,
  place: Place,
  before: number,
  row: number,
): ExpectedLoss | undefined {
  const rows = exposedOf(estate).get(place) ?? [];
  const [first, last] = [before, row].map((each) => rows.find((one) => one.row === each));
  if (!first?.exposure.known || !last?.exposure.known || first.set !== last.set) return undefined;
  const ran = last.exposure.value - first.exposure.value;
  const rates = ratesUntil(estate, place, rows, first);
  if (!(ran > 0) || rates.length === 0) return undefined;
  const [slowest, fastest] = [Math.min(...rates), Math.max(...rates)];
  return { least: (ran * slowest) / 2, middle: (ran * (slowest + fastest)) / 2, most: ran * fastest * 3 };
}

/** mm per unit of exposure, above 0: of each set up to its last thickness before a reading, that one counted. */
function ratesUntil(
  { readings }: Estate,
  place: Place,
  rows: readonly ExposedReading[],
  until: ExposedReading,
): readonly number[] {
  const last = new Map<LinerSet, ExposedReading>();
  for (const each of rows) {
    if (each.set && each.exposure.known && readings.kind[each.row] === ReadingKind.thickness)
      last.set(each.set, each);
    if (each === until) break;
  }
  return [...last].flatMap(([set, { row, exposure }]) => {
    const worn = fittedThickness(set, place).value - (readings.value[row] ?? NaN);
    return exposure.known && exposure.value > 0 && worn > 0 ? [worn / exposure.value] : [];
  });
}
