// One thing that could be done about a conveyor, with its day, the chance of both bad ends until then, what it costs and what
// it needs. The list is never shortened: what cannot be done says why, and doing nothing is always in it.

import type { CalendarDay } from '../units/calendar.js';

export const optionKinds = [
  'look first',
  'planned reline',
  'reline with a new screw',
  'part at an outage',
  'part from stock',
  'unplanned stop',
  'expedite',
  'lower duty',
  'turn',
  'exchange',
  'do nothing',
] as const;
export type OptionKind = (typeof optionKinds)[number];

export interface DecisionOption {
  readonly kind: OptionKind;
  /** What is done, as a sentence without a full stop. */
  readonly what: string;
  /** Undefined where there is no such day. */
  readonly day: CalendarDay | undefined;
  /** Name of the outage it happens in. */
  readonly outage: string | undefined;
  /** Chance of the condemn limit and of steel until then, 0 to 1; of doing nothing, until the end of the horizon. */
  readonly condemn: number | undefined;
  readonly contact: number | undefined;
  /** Of what was seen alone, beside the chances above, which count unseen panels in. */
  readonly condemnSeen: number | undefined;
  readonly contactSeen: number | undefined;
  /** Both accepted risks are kept. */
  readonly within: boolean;
  /** Why it cannot be done; undefined where it can. */
  readonly obstacle: string | undefined;
  /** To be paid for the work itself; undefined where a cost is not declared. */
  readonly cost: number | undefined;
  /** With the chance of steel and the share of the new liner's life that is used up by the end of the horizon. */
  readonly expected: number | undefined;
  /** The same reckoned by what was seen alone: what the programme compares, because a look comes first where little was seen. */
  readonly expectedSeen?: number | undefined;
  /** Scope of the work, as `ScopeWork` names it; undefined where nothing is relined. */
  readonly scope?: string | undefined;
  /** Share of the work's cost that the time until the horizon uses up, 0 to 1. */
  readonly used?: number | undefined;
  readonly needs: readonly string[];
  /** How the numbers came about, a sentence each. */
  readonly working: readonly string[];
  /** `look first`: chance that the look brings both risks within the accepted ones. */
  readonly reassures?: number;
  /** `look first`: expected money saved against the next best without a look, the look paid. */
  readonly saves?: number | undefined;
  /** `lower duty`: the duty that keeps the risk, as a share of the present one. */
  readonly duty?: number;
}

/** What can be done before what cannot; what keeps the risks before what does not; then the cheaper, then the sooner. */
export function ranked(options: readonly DecisionOption[]): readonly DecisionOption[] {
  const group = ({ obstacle, within }: DecisionOption): number =>
    obstacle !== undefined ? 2 : within ? 0 : 1;
  return [...options].sort(
    (a, b) =>
      group(a) - group(b) ||
      (a.expected ?? Infinity) - (b.expected ?? Infinity) ||
      (a.day ?? Infinity) - (b.day ?? Infinity) ||
      optionKinds.indexOf(a.kind) - optionKinds.indexOf(b.kind),
  );
}
