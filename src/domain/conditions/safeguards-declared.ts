// The safeguards that a conveyor declares, with what stands open of each: one list behind the next sheet, which asks to look at them,
// and the pack, which asks to try them before the machine is handed back. Whether one is good enough is for competent people.

import type { CalendarDay } from '../units/calendar.js';
import type { Conveyor, Safeguard } from '../model/conveyor.js';
import type { Estate } from '../model/estate.js';
import type { Origin } from '../model/origin.js';
import { samePlace, whereWords } from './kinds.js';
import { sinceWords, type OpenCondition } from './rows.js';
import { safeguardKey } from './safeguards-named.js';
import { lastTried, trialsOfSafeguard, trialWords } from './trials.js';

export interface DeclaredSafeguard {
  /** `emergency stop at tail`. */
  readonly what: string;
  readonly note: string;
  /** What stands open of it, in words; empty where nothing does. */
  readonly found: string;
  /** When and by whom it was tried or found good, the newest of each; or that nothing is on record. */
  readonly tried: string;
  /** All of it; undefined where nothing is on record. */
  readonly lastTried: CalendarDay | undefined;
  readonly origin: Origin;
}

/** What is asked of each; the tool only lists them. */
export const safeguardsAsk =
  'Look at each; have it tried as the site’s rules say, by who may. One that is gone, bridged or does not stop the machine is told at ' +
  'once: whether it may run is for the site’s competent person to decide.';

/** `estate`: as it was known on the day of the page. */
export function declaredSafeguards(
  estate: Estate,
  conveyor: Conveyor,
  open: readonly OpenCondition[],
): readonly DeclaredSafeguard[] {
  return conveyor.safeguards.map((each) => {
    const trials = trialsOfSafeguard(conveyor, each, estate.services);
    return {
      what: safeguardWords(each),
      note: each.note ?? '',
      found: open
        .filter((row) => isOf(each, row))
        .map((row) => `${row.what}, ${sinceWords(row)}`)
        .join('; '),
      tried: trialWords(each, trials),
      lastTried: lastTried(each, trials),
      origin: each.origin,
    };
  });
}

/** What is known of one, in a cell: what stands open of it, when it was tried, and what its line notes. */
export function knownOfSafeguard({ found, tried, note }: DeclaredSafeguard): string {
  return [found, tried, note].filter(Boolean).join('; ');
}

export function safeguardWords(safeguard: Safeguard): string {
  const { kind, name } = safeguard;
  return `${kind}${name === undefined ? '' : ` ${name}`}${whereWords(safeguard)}`;
}

/** What says no place may be of any of the kind. */
function isOf(safeguard: Safeguard, row: OpenCondition): boolean {
  const { kind, at, to } = safeguard;
  if (row.partName !== kind) return false;
  if (row.safeguard) return row.safeguard.names.includes(safeguardKey(safeguard));
  if (at === undefined || row.at === undefined) return true;
  return row.at <= (to ?? at).value + samePlace && (row.to ?? row.at) >= at.value - samePlace;
}
