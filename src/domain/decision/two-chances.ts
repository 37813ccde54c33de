// The chances of the limit and of steel, with panels that nobody has seen counted in and of what was seen alone; which of the two
// a decision goes by, and whether the accepted risks are kept.

import type { CalendarDay } from '../units/calendar.js';
import type { AcceptedRisk } from './scope.js';
import type { WearOutlook } from './wear-outlook.js';

/** 0 to 1, by a day. */
export interface RiskChances {
  readonly condemn: number;
  readonly contact: number;
}

/** With unseen panels counted in, and of what was seen alone. */
export interface TwoChances extends RiskChances {
  readonly condemnSeen: number | undefined;
  readonly contactSeen: number | undefined;
}

/** Which panels the accepted risks are held against. */
export type GoesBy = 'all panels' | 'what was seen';

export function chancesOn({ counted, seen }: WearOutlook, day: CalendarDay): TwoChances {
  return {
    condemn: counted.condemnBy(day),
    contact: counted.contactBy(day),
    condemnSeen: seen?.condemnBy(day),
    contactSeen: seen?.contactBy(day),
  };
}

/** Those that the decision goes by; all panels where nothing is told of what was seen. */
export function goingBy(goesBy: GoesBy, chances: TwoChances): RiskChances {
  const { condemn, contact, condemnSeen = condemn, contactSeen = contact } = chances;
  return goesBy === 'what was seen' ? { condemn: condemnSeen, contact: contactSeen } : { condemn, contact };
}

/** The chance of one or the other, of two that do not depend on one another. */
export function either(a: number, b: number): number {
  return 1 - (1 - a) * (1 - b);
}

/** Neither chance is beyond what is accepted. */
export function keepsRisks({ condemn, contact }: RiskChances, accepted: AcceptedRisk): boolean {
  return condemn <= accepted.condemn && contact <= accepted.contact;
}
