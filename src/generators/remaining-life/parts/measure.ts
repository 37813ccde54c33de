// Do hours or tonnes explain the wear better? Asked of every conveyor whose records carry both, and of all of them together: within
// one conveyor tonnes follow hours so closely that its own records seldom tell, while conveyors of unlike throughput do. Said,
// never acted on: what wear goes by is the author's to declare.

import type { ExposedReading } from '../../../domain/model/exposure.js';
import { fittedThickness } from '../../../domain/model/fitted-thickness.js';
import type { Estate } from '../../../domain/model/estate.js';
import { momentOf, type History } from '../../../domain/model/history.js';
import type { LinerSet } from '../../../domain/model/liner-sets.js';
import type { LinerSpecification } from '../../../domain/model/specifications.js';
import type { Pool } from '../../../domain/wear/fit.js';
import type { Place } from '../../../domain/model/records.js';
import { compareExposures } from '../../../domain/wear/exposures.js';
import { layerDepths } from '../../../domain/wear/colour-bounds.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';

export interface MeasureComparison {
  /** Conveyors whose records were compared. */
  readonly conveyors: number;
  readonly better: 'hours' | 'tonnes' | 'cannot tell';
  readonly readings: number;
  /** How many times more likely the records are by the better measure. */
  readonly ratio: number;
}

/** Of one conveyor or of several; undefined where no tonnes are recorded or too little was read. */
export function compareMeasures(
  estate: Estate,
  histories: readonly History[],
  readings: ReadonlyMap<Place, readonly ExposedReading[]>,
): MeasureComparison | undefined {
  const counted = new Map(histories.flatMap((h) => (h.tonnes ? [[h.conveyor, h] as const] : [])));
  if (counted.size === 0) return undefined;
  const units: { place: Place; set: LinerSet }[] = [];
  const columns = {
    unit: [] as number[],
    hours: [] as number[],
    tonnes: [] as number[],
    kind: [] as number[],
    value: [] as number[],
  };
  for (const [place, rows] of readings) {
    const history = counted.get(place.conveyor);
    if (!history) continue;
    for (const { row, inspection, set } of rows) {
      const kind = estate.readings.kind[row];
      const moment = momentOf(history, inspection);
      const from = set?.fitted;
      if (
        !set ||
        from?.turned === undefined ||
        from.tonnes === undefined ||
        moment.turned === undefined ||
        moment.tonnes === undefined
      )
        continue;
      if (kind !== ReadingKind.thickness && kind !== ReadingKind.colour && kind !== ReadingKind.trough)
        continue;
      let unit = units.findIndex((u) => u.place === place && u.set === set);
      if (unit < 0) unit = units.push({ place, set }) - 1;
      columns.unit.push(unit);
      columns.hours.push(moment.turned - from.turned);
      columns.tonnes.push(moment.tonnes - from.tonnes);
      columns.kind.push(kind);
      columns.value.push(estate.readings.value[row] ?? NaN);
    }
  }
  const shared = { unit: columns.unit, kind: columns.kind, value: columns.value };
  const comparison = compareExposures(
    { ...shared, exposure: columns.hours },
    { ...shared, exposure: columns.tonnes },
    {
      count: units.length,
      fitted: units.map((u) => fittedThickness(u.set, u.place).value),
      build: units.map((_, i) => i),
      builds: units.map(({ set: { liner } }) => ({
        depths: layerDepths(liner.layers.map((l) => l.thickness.value)).slice(1),
        tolerance: liner.layerTolerance.value,
      })),
    },
    linersApart(units.map(({ set }) => set.liner)),
  );
  if (comparison.kind === 'cannot say') return undefined;
  return {
    conveyors: new Set(units.map(({ place }) => place.conveyor)).size,
    better:
      comparison.better === 'first' ? 'hours' : comparison.better === 'second' ? 'tonnes' : 'cannot tell',
    readings: comparison.readings,
    ratio: Math.exp(Math.min(Math.abs(comparison.difference), 50)),
  };
}

/** Liners may differ in what they stand; conveyors are not told apart, or each would hide what its throughput tells. */
function linersApart(liners: readonly LinerSpecification[]): readonly Pool[] {
  const known = [...new Set(liners)];
  return known.length < 2 ? [] : [{ name: 'liner', level: liners.map((liner) => known.indexOf(liner)) }];
}
