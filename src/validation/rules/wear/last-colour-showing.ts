// Can the condemn limit have been passed behind the last colour? A colour is an interval: what was seen when bounds the rate
// (wear/colour-bounds.ts), and where even the bounds do not keep the limit away, only a gauge can tell.

import type { Conveyor } from '../../../domain/model/conveyor.js';
import type { Estate } from '../../../domain/model/estate.js';
import { exposureBetween } from '../../../domain/model/exposure.js';
import { historyOf, momentOf } from '../../../domain/model/history.js';
import { originOf } from '../../../domain/model/records.js';
import { colourBounds, type LayerSeen } from '../../../domain/wear/colour-bounds.js';
import { latestRows, type LatestRow } from '../../evidence/latest-rows.js';
import { eachSeen } from '../../evidence/seen-sets.js';
import type { Rule } from '../../rule.js';
import { list } from '../../telling/wording.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';

export const lastColourShowing: Rule = {
  code: 'TL504',
  title: 'Last colour showing for too long to go by colour',
  severity: 'information',
  tags: ['advice'],
  why: 'The colours seen so far allow a rate at which the condemn limit is passed already, and the screw is near the steel.',
  todo: 'Take a gauge to these spots at the next stop.',
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  P1 colour white
}
inspection DG1 ‹2025-03-10|2024-12-09› meter ‹6200|4900› h {
  «P1 colour red»
}`,
  *check({ estate }) {
    const suspects = latestRows(estate).filter((one) => showsLastColour(estate, one));
    if (suspects.length === 0) return;
    const looks = looksAt(estate, suspects);
    const byConveyor = new Map<Conveyor, LatestRow[]>();
    for (const suspect of suspects) {
      const seen = looks.get(suspect.row);
      const { liner } = suspect.set;
      if (!seen || seen.length === 0) continue;
      const bounds = colourBounds({
        layers: liner.layers.map((layer) => layer.thickness.value),
        least: liner.condemn.value,
        seen,
      });
      if (bounds.kind !== 'between' || bounds.leastLife > 0) continue;
      byConveyor.set(suspect.place.conveyor, [...(byConveyor.get(suspect.place.conveyor) ?? []), suspect]);
    }
    for (const [conveyor, rows] of byConveyor) {
      const [first, ...others] = rows;
      if (!first) continue;
      const { liner } = first.set;
      yield {
        origin: originOf(estate.readings, first.row),
        message:
          `${list(rows.map(({ place }) => place.name))} of ${conveyor.name} ` +
          `${rows.length === 1 ? 'shows' : 'show'} ${liner.layers.at(-1)?.name ?? 'the last layer'}; ` +
          `by the colours seen so far the condemn limit of ${liner.condemn.text} may be passed already.`,
        related: others
          .slice(0, 5)
          .map(({ place, row }) => ({ origin: originOf(estate.readings, row), message: place.name })),
      };
    }
  },
};

function showsLastColour({ readings }: Estate, { row, set }: LatestRow): boolean {
  const last = set.liner.layers.length - 1;
  return last >= 1 && readings.kind[row] === ReadingKind.colour && readings.value[row] === last;
}

/** Colours seen on the liner that lies there, by the newest row; none where it was ever measured (then there is a rate) or bare. */
function looksAt(estate: Estate, suspects: readonly LatestRow[]): ReadonlyMap<number, readonly LayerSeen[]> {
  const { readings, places } = estate;
  const wanted = new Map(suspects.map((one) => [one.place, one]));
  const looks = new Map<number, LayerSeen[]>(suspects.map((one) => [one.row, []]));
  eachSeen(estate, (row, index, set, inspection) => {
    const place = places[index];
    const suspect = place && wanted.get(place);
    if (!suspect || suspect.set !== set) return;
    if (readings.kind[row] !== ReadingKind.colour) {
      looks.delete(suspect.row);
      return;
    }
    const history = historyOf(estate, suspect.place.conveyor);
    const exposure = exposureBetween(history, set, momentOf(history, inspection));
    if (exposure.known && exposure.value > 0)
      looks.get(suspect.row)?.push({ exposure: exposure.value, layer: readings.value[row] ?? 0 });
  });
  return looks;
}
