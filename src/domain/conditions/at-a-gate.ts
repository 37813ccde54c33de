// What was found at a slide gate in somebody's own words and is open still? Of such a gate nobody knows whether it holds: whoever is to
// rely on it has a competent person look first.

import type { Break, Conveyor } from '../model/conveyor.js';
import type { ConditionLine } from '../model/records.js';
import { samePlace } from './kinds.js';

/** The gate that a finding speaks of: named as a gate, or lying at one without a part; the only one where no place is said. */
export function gateOfFinding(
  { breaks }: Conveyor,
  { kind, about, at }: Pick<ConditionLine, 'kind' | 'about' | 'at'>,
): Break | undefined {
  if (kind !== 'finding' || (about !== undefined && about !== 'gate')) return undefined;
  const gates = breaks.filter((each) => each.kind === 'slide gate');
  if (at === undefined) return about === 'gate' && gates.length === 1 ? gates[0] : undefined;
  return gates.find(
    ({ from, to }) => at.value >= from.value - reach(about) && at.value <= to.value + reach(about),
  );
}

/** Without a part named it has to lie in the gate itself. */
function reach(about: ConditionLine['about']): number {
  return about === 'gate' ? samePlace : 0;
}
