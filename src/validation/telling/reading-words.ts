// A reading in words, for messages: `8.4 mm`, `ivory showing`, `bare steel`.

import type { Estate } from '../../domain/model/estate.js';
import type { LinerSpecification } from '../../domain/model/specifications.js';
import { formatDay } from '../../domain/units/calendar.js';
import { lengthOn } from '../../domain/model/unit-of-machine.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';

export function readingWords({ readings }: Estate, row: number, liner: LinerSpecification): string {
  const value = readings.value[row] ?? 0;
  switch (readings.kind[row]) {
    case ReadingKind.thickness:
      return lengthOn({ liner }, value);
    case ReadingKind.colour:
      return liner.layers[value]?.name ?? 'a colour';
    case ReadingKind.trough:
      return 'bare steel';
    default:
      return 'nothing';
  }
}

/** Day of the inspection that a row belongs to. */
export function dayOfRow(estate: Estate, row: number): string {
  const inspection = estate.inspections[estate.readings.inspection[row] ?? -1];
  return inspection ? formatDay(inspection.date.day) : 'an unknown day';
}
