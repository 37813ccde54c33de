// Which slide gate does a condition or a finding speak of? Of a gate that was seen stuck or leaking, or of which something was found in
// somebody's own words that is open still, nobody knows whether it holds: whoever is to rely on it has a competent person look first.

import { hasGate, type Break, type Conveyor } from '../model/conveyor.js';
import type { ConditionLine } from '../model/records.js';
import { partNameOf, samePlace } from './kinds.js';

/** Named as a gate, or a finding that lies in one without a part; the only one where no place is said. */
export function gateOf(
  { breaks }: Conveyor,
  line: Pick<ConditionLine, 'kind' | 'about' | 'at' | 'end'>,
): Break | undefined {
  const part = partNameOf(line);
  if (part !== undefined && part !== 'gate') return undefined;
  const gates = breaks.filter(hasGate);
  const { at, end } = line;
  // `at head` is the end of the machine, whatever lies there.
  if (part === undefined && end !== undefined) return undefined;
  if (at === undefined) return part === 'gate' && gates.length === 1 ? gates[0] : undefined;
  // Without a part named it has to lie in the gate itself.
  const reach = part === 'gate' ? samePlace : 0;
  return gates.find(({ from, to }) => at.value >= from.value - reach && at.value <= to.value + reach);
}
