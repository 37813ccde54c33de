// Was a spot read at its condemn limit or below? What stands in the wrong unit, or a limit that no liner meets, has its own finding.

import type { Estate } from '../../domain/model/estate.js';
import { ReadingKind } from '../../domain/units/reading-kind.js';
import type { LatestRow } from './latest-rows.js';
import { isPlausible } from './plausible.js';

export function isAtLimit({ readings }: Estate, { row, set }: LatestRow): boolean {
  const value = readings.value[row] ?? 0;
  const { condemn, thickness } = set.liner;
  return (
    readings.kind[row] === ReadingKind.thickness &&
    value <= condemn.value &&
    condemn.value < thickness.value &&
    value >= 0.05 &&
    isPlausible('liner thickness', thickness.value)
  );
}
