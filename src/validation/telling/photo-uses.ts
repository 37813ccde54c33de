// Every photo of the estate: of inspections, of readings, of conditions, of plates and patches.

import type { Estate } from '../../domain/model/estate.js';
import type { PhotoUse } from '../../domain/model/records.js';

export function* photoUses({ inspections, readings, patches, relines }: Estate): Iterable<PhotoUse> {
  for (const { photos, conditions, plates } of inspections) {
    yield* photos;
    for (const { photo } of [...conditions, ...plates]) if (photo) yield photo;
  }
  yield* readings.photos.values();
  for (const { photo } of [...patches, ...relines.flatMap(({ plates }) => plates)]) if (photo) yield photo;
}
