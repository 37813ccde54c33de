// Do hours or tonnes explain the wear better? The same readings are fitted against both, with the same flat priors on the level, and
// the likelihoods compared. Lives of former sets are left out: each is stated in one measure only.

import type { ReadingColumns, UnitColumns } from './columns.js';
import type { Pool, WearOptions } from './fit.js';
import { fitWear } from './fit.js';
import { reduceReadings } from './reduce.js';

export type ExposureComparison =
  | {
      readonly kind: 'compared';
      /** `cannot tell` within `enough` of one another. */
      readonly better: 'first' | 'second' | 'cannot tell';
      /** ln likelihood by the second measure less that by the first. */
      readonly difference: number;
      readonly readings: number;
    }
  | { readonly kind: 'cannot say'; readonly why: 'too few readings' | 'not the same readings' };

/** A likelihood ratio of twenty: our judgement of enough. */
export const enough = Math.log(20);

export function compareExposures(
  first: ReadingColumns,
  second: ReadingColumns,
  columns: UnitColumns,
  pools: readonly Pool[] = [],
  options: WearOptions = {},
): ExposureComparison {
  if (first.unit.length !== second.unit.length) return { kind: 'cannot say', why: 'not the same readings' };
  const { lives: _, offset: __, ...bare } = columns;
  const { expectedLife: ___, ...plain } = options;
  const settings: WearOptions = { ...plain, uncertainty: 'correct', outliers: 'keep' };
  const one = fitWear(reduceReadings(first, bare), pools, settings);
  const two = fitWear(reduceReadings(second, bare), pools, settings);
  if (one.kind !== 'fitted' || two.kind !== 'fitted' || one.informative < 3)
    return { kind: 'cannot say', why: 'too few readings' };
  if (one.units.reading.length !== two.units.reading.length)
    return { kind: 'cannot say', why: 'not the same readings' };
  const difference = two.logLikelihood - one.logLikelihood;
  const better = Math.abs(difference) < enough ? 'cannot tell' : difference > 0 ? 'second' : 'first';
  return { kind: 'compared', better, difference, readings: one.units.reading.length };
}
