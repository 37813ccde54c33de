// How what a part leaves lying reads, the same on the page of a conveyor, in the programme and in its reasons: by what was seen.

import { formatDay } from '../units/calendar.js';
import { percent } from './option-setting.js';
import type { WhatStays } from './what-stays.js';

/** `what stays lasts until Summer27 (limit 3.1 %, P4 first)`, `what stays does not last until Summer27: limit 97 % (P1 first), steel 10 %` */
export function staysText(stays: WhatStays): string {
  const { condemn, condemnSeen = condemn, contact, contactSeen = contact, first, outage, until } = stays;
  const day = outage ?? formatDay(until);
  const limit = `limit ${percent(condemnSeen)}`;
  if (!stays.keeps)
    return (
      `what stays does not last until ${day}: ${limit}${first ? ` (${first.place} first)` : ''}, ` +
      `steel ${percent(contactSeen)}`
    );
  return `what stays lasts until ${day} (${limit}${first && condemnSeen >= 0.001 ? `, ${first.place} first` : ''})`;
}
