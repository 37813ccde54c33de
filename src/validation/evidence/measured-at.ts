// Where was a thickness of a new liner, or of moved panels, measured?

import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Reline } from '../../domain/model/records.js';

/** Chainage, mm; undefined at a point that is not declared. */
export function measuredAt(
  { points }: Conveyor,
  { at, point }: Pick<Reline['asFitted'][number], 'at' | 'point'>,
): number | undefined {
  return at?.value ?? points.find(({ name }) => name === point.name)?.at.value;
}
