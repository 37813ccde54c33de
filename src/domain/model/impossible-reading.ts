// Which thickness cannot be one of the liner that lay there? One above what that liner was when new by more than its tolerance
// and three standard deviations of the reading: the gauge stood on something else, was set for it, or its unit was written
// wrong. Such a reading is a finding (TL305, TL335) and takes no part in any rate or date, by hand or by model.

import { ReadingKind } from '../units/reading-kind.js';
import type { Estate } from './estate.js';
import { fittedThickness } from './fitted-thickness.js';
import type { LinerSet } from './liner-sets.js';
import { errorOf } from './reading-error.js';
import type { Place } from './records.js';

/** Usual tolerance of a sheet where its liner states none, as a ratio of the thickness (judgement). */
const sheetTolerance = 0.05;

/** Of the fitted thickness, mm: nothing where a gauge was put on it, else as the liner states or as sheets usually have. */
export function toleranceOf(set: LinerSet, fitted: ReturnType<typeof fittedThickness>): number {
  return fitted.measured ? 0 : (set.liner.thicknessTolerance?.value ?? sheetTolerance * fitted.value);
}

/** True of a thickness only; where the liner is not known nothing is impossible. */
export function isImpossible(estate: Estate, row: number, set: LinerSet | undefined, place: Place): boolean {
  const { readings } = estate;
  if (!set || readings.kind[row] !== ReadingKind.thickness) return false;
  const fitted = fittedThickness(set, place);
  const most = fitted.value + toleranceOf(set, fitted) + 3 * errorOf(estate, row);
  return (readings.value[row] ?? 0) > most;
}
