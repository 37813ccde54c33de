// The row of one planned outage in the table of decisions: the chances until then, and whether the liner can be there.

import type { CalendarDay } from '../units/calendar.js';
import type { TwoChances } from './two-chances.js';

export interface OutageDecision extends TwoChances {
  readonly name: string;
  readonly from: CalendarDay;
  readonly to: CalendarDay;
  /** Both accepted risks are kept, unseen panels counted in. */
  readonly within: boolean;
  /** Day the whole liner could be there if ordered today; undefined where no lead time is declared. */
  readonly arrives: CalendarDay | undefined;
  readonly reachable: boolean;
  readonly orderBy: CalendarDay;
  readonly orderIsLate: boolean;
}
