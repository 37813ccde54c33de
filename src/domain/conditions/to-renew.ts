// Which hold-downs and braces go back as new ones when a job has them off: those that were found bent, worn or missing, and of which
// something stands open in own words; what is only loose is tightened. All others go back as they came off.

import type { Conveyor, HoldDown } from '../model/conveyor.js';
import type { Estate } from '../model/estate.js';
import type { Origin } from '../model/origin.js';
import type { SeenPlace } from '../model/records.js';
import type { CalendarDay } from '../units/calendar.js';
import { openConditions } from './follow-up.js';
import { conditionWords, partNameOf, samePlace } from './kinds.js';

export interface PartToRenew {
  readonly part: 'hold-down' | 'brace';
  /** Chainages within which it stands, mm. */
  readonly from: number;
  readonly to: number;
  /** Of a hold-down on both sides of the trough; undefined where nobody said. */
  readonly side: HoldDown['side'] | undefined;
  /** `hold-down worn 6 mm at 12.50 m`. */
  readonly what: string;
  readonly place: SeenPlace;
  readonly origin: Origin;
}

export function partsToRenew(estate: Estate, conveyor: Conveyor, asOf?: CalendarDay): readonly PartToRenew[] {
  return openConditions(estate, conveyor, asOf).flatMap(
    ({ last: { line } }): PartToRenew | readonly never[] => {
      const part = partNameOf(line);
      if ((part !== 'hold-down' && part !== 'brace') || !line.at || line.kind === 'hold-down loose')
        return [];
      const { at, to = at, side } = line;
      return {
        part,
        from: at.value - samePlace,
        to: to.value + samePlace,
        side,
        what: conditionWords(line),
        place: line,
        origin: line.origin,
      };
    },
  );
}
