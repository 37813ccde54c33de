// Every photo of the estate: of looks and work, of readings, of conditions, of plates, patches and work.

import { datedRecords } from '../../domain/model/dated-records.js';
import type { Estate } from '../../domain/model/estate.js';
import type { PhotoUse } from '../../domain/model/records.js';

export function* photoUses(estate: Estate): Iterable<PhotoUse> {
  const { inspections, readings, patches, relines, services } = estate;
  const plates = [...inspections, ...relines].flatMap((record) => record.plates);
  for (const { photos, conditions } of datedRecords(estate)) {
    yield* photos;
    for (const { photo } of conditions) if (photo) yield photo;
  }
  yield* readings.photos.values();
  for (const { photo } of [...patches, ...services, ...plates]) if (photo) yield photo;
}
