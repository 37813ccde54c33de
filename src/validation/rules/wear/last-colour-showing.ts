// Can the condemn limit have been passed behind the last colour? A colour is an interval: what was seen when bounds the rate
// (wear/colour-bounds.ts), a thickness before it bounds it more closely, and where neither keeps the limit away, only a gauge can tell.

import type { Estate } from '../../../domain/model/estate.js';
import { exposureBetween } from '../../../domain/model/exposure.js';
import { fittedThickness } from '../../../domain/model/fitted-thickness.js';
import { historyOf, momentOf } from '../../../domain/model/history.js';
import { originOf } from '../../../domain/model/records.js';
import { colourBounds, layerDepths } from '../../../domain/wear/colour-bounds.js';
import { knownByHand, type SeenByHand } from '../../../domain/wear/known.js';
import { latestRows, type LatestRow } from '../../evidence/latest-rows.js';
import { eachCounted } from '../../evidence/seen-sets.js';
import type { Rule } from '../../rule.js';
import { list } from '../../telling/wording.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';

export const lastColourShowing: Rule = {
  code: 'TL504',
  title: 'Last colour showing for too long to go by colour',
  severity: 'information',
  restsOn: ['looks', 'history'],
  tags: ['advice'],
  why: 'The colours seen so far allow a rate at which the condemn limit is passed already, and the screw is near the steel.',
  todo: 'Take a gauge to these spots at the next stop.',
  given: 'estate',
  example: `
inspection DG1 2024-09-09 meter 3600 h {
  P1 colour ivory
}
inspection DG1 ‹2025-03-10|2024-12-09› meter ‹6200|4900› h {
  «P1 colour teal»
}`,
  cases: [
    {
      name: 'a thickness before it at whose rate the limit is passed by now',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  P1 thickness 8 mm
}
inspection DG1 2025-09-08 meter 8200 h {
  «P1 colour teal»
}`,
    },
    {
      name: 'a thickness before it at whose rate it is not',
      text: `
inspection DG1 2024-09-09 meter 3600 h {
  P1 thickness 8 mm
}
inspection DG1 2025-09-08 meter 7600 h {
  P1 colour teal
}`,
    },
  ],
  *check({ estate }) {
    const suspects = latestRows(estate).filter((one) => showsLastColour(estate, one));
    if (suspects.length === 0) return;
    const looks = looksAt(estate, suspects);
    const byLiner = new Map<string, LatestRow[]>();
    for (const suspect of suspects) {
      const seen = looks.get(suspect.row);
      if (!seen || seen.length === 0 || !mayBePassed(suspect, seen)) continue;
      const key = `${suspect.place.conveyor.name} ${suspect.set.liner.name}`;
      byLiner.set(key, [...(byLiner.get(key) ?? []), suspect]);
    }
    // Each liner has its own last layer and its own limit.
    for (const rows of byLiner.values()) {
      const [first, ...others] = rows;
      if (!first) continue;
      const { liner } = first.set;
      const { conveyor } = first.place;
      yield {
        origin: originOf(estate.readings, first.row),
        message:
          `${list(rows.map(({ place }) => place.name))} of ${conveyor.name} ` +
          `${rows.length === 1 ? 'shows' : 'show'} ${liner.layers.at(-1)?.name ?? 'the last layer'}; ` +
          `by what was seen so far the condemn limit of ${liner.condemn.text} may be passed already.`,
        related: others
          .slice(0, 5)
          .map(({ place, row }) => ({ origin: originOf(estate.readings, row), message: place.name })),
      };
    }
  },
};

export function showsLastColour({ readings }: Estate, { row, set }: LatestRow): boolean {
  const last = set.liner.layers.length - 1;
  return last >= 1 && readings.kind[row] === ReadingKind.colour && readings.value[row] === last;
}

/** By the colours alone; after a thickness by what is known of the place by hand (wear/known.ts), up to the newest colour. */
function mayBePassed({ set, place }: LatestRow, seen: readonly SeenByHand[]): boolean {
  const { liner } = set;
  const layers = liner.layers.map((layer) => layer.thickness.value);
  const least = liner.condemn.value;
  const colours = seen.flatMap(({ exposure, layer }) => (layer === undefined ? [] : [{ exposure, layer }]));
  if (colours.length === seen.length) {
    const bounds = colourBounds({ layers, least, seen: colours });
    // Passed at any rate is a warning of its own (limit-passed-by-colour.ts).
    return bounds.kind === 'between' && bounds.leastLife <= 0 && bounds.mostLife > 0;
  }
  const fitted = fittedThickness(set, place).value;
  const { result } = knownByHand({ fitted, least, depths: layerDepths(layers), seen });
  const now = seen.at(-1)?.exposure ?? 0;
  return (
    result.kind === 'rate' && result.last.thickness - result.ruling * (now - result.last.exposure) <= least
  );
}

/** What was seen on the liner that lies there, up to the newest row; nothing where steel was. */
export function looksAt(
  estate: Estate,
  suspects: readonly LatestRow[],
): ReadonlyMap<number, readonly SeenByHand[]> {
  const { readings, places } = estate;
  const wanted = new Map(suspects.map((one) => [one.place, one]));
  const looks = new Map<number, SeenByHand[]>(suspects.map((one) => [one.row, []]));
  eachCounted(estate, (row, index, set, inspection) => {
    const place = places[index];
    const suspect = place && wanted.get(place);
    if (!suspect || suspect.set !== set) return;
    const kind = readings.kind[row];
    if (kind === ReadingKind.trough) looks.delete(suspect.row);
    if (kind !== ReadingKind.colour && kind !== ReadingKind.thickness) return;
    const history = historyOf(estate, suspect.place.conveyor);
    const exposure = exposureBetween(history, set, momentOf(history, inspection));
    if (!exposure.known || !(exposure.value > 0)) return;
    const value = readings.value[row] ?? NaN;
    looks.get(suspect.row)?.push({
      exposure: exposure.value,
      ...(kind === ReadingKind.colour ? { layer: value } : { thickness: value }),
    });
  });
  for (const seen of looks.values()) seen.sort((a, b) => a.exposure - b.exposure);
  return looks;
}
