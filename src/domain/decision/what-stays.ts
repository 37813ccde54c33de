// A part is relined: how long has the liner that stays to last, and with which chance does it not? Until the outage after the work,
// where the rest can be relined in turn; a stop before the second outage answers until that one. The accepted risks are held against
// what was seen: panels that nobody has seen call for a look, not for a liner (scope.ts), and their chances stand beside.

import type { Outage } from '../model/plant.js';
import type { CalendarDay } from '../units/calendar.js';
import type { AcceptedRisk, ScopeWork, Scopes } from './scope.js';
import { goingBy, keepsRisks, type TwoChances } from './two-chances.js';
import type { PanelOutlook, WearOutlook } from './wear-outlook.js';

/** The chances that what stays reaches its limit, and steel, by `until`. */
export interface WhatStays extends TwoChances {
  readonly until: CalendarDay;
  /** That begins then; undefined at the end of the horizon. */
  readonly outage: string | undefined;
  /** The seen panel that stays and is likeliest to reach its limit by then; undefined where none stays. */
  readonly first: { readonly place: string; readonly condemn: number } | undefined;
  /** Both accepted risks hold until then by what was seen. */
  readonly keeps: boolean;
}

interface Setting {
  readonly outlook: WearOutlook;
  readonly accepted: AcceptedRisk;
  readonly scopes: Pick<Scopes, 'until'>;
  readonly outages: readonly Outage[];
  readonly horizon: CalendarDay;
}

/** Undefined where nothing stays. */
export function whatStays(
  setting: Setting,
  { work, relined }: ScopeWork,
  day: CalendarDay,
): WhatStays | undefined {
  const { outlook, accepted, outages } = setting;
  if (work.whole) return undefined;
  const until = lastsUntil(setting, day);
  const counted = outlook.rest(relined);
  const seen = outlook.restSeen(relined);
  const chances: TwoChances = {
    condemn: counted.condemnBy(until),
    contact: counted.contactBy(until),
    condemnSeen: seen.condemnBy(until),
    contactSeen: seen.contactBy(until),
  };
  return {
    until,
    outage: outages.find(({ from }) => from.day === until)?.name,
    first: likeliest(
      outlook.panels.filter((panel) => panel.seen && !relined.includes(panel)),
      until,
    ),
    ...chances,
    keeps: keepsRisks(goingBy('what was seen', chances), accepted),
  };
}

/** The day until which what a part leaves lying has to last. */
function lastsUntil(
  { scopes, outages, horizon }: Pick<Setting, 'scopes' | 'outages' | 'horizon'>,
  day: CalendarDay,
): CalendarDay {
  if (day < scopes.until) return scopes.until;
  return outages.find(({ from }) => from.day > day)?.from.day ?? horizon;
}

function likeliest(panels: readonly PanelOutlook[], until: CalendarDay): WhatStays['first'] {
  return panels
    .map(({ place, condemnBy }) => ({ place, condemn: condemnBy(until) }))
    .reduce<WhatStays['first']>((a, b) => (!a || b.condemn > a.condemn ? b : a), undefined);
}
