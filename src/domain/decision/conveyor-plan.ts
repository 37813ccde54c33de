// What is to be done about a conveyor by its own table of decisions: reline at an outage, look first, nothing, or no outage is
// early enough? One answer for the first page, the conveyor's page, the programme and every list. It goes by all panels where an
// outage keeps both risks with those counted in that nobody has seen, else by what was seen: what nobody has seen calls for a
// look, and nobody relines, or gives up an outage, on what others lend.

import type { Outage } from '../model/plant.js';
import { addDays, type CalendarDay } from '../units/calendar.js';
import type { OutageDecision } from './outage-decision.js';

export type ConveyorPlan =
  | { readonly kind: 'nothing due' }
  | { readonly kind: 'reline'; readonly outage: OutageDecision }
  /** Only what nobody has seen stands against waiting. */
  | { readonly kind: 'look' }
  /** `outage`: the first that the liner can reach, else the last; undefined where none is declared. */
  | { readonly kind: 'no outage in time'; readonly outage: OutageDecision | undefined };

export interface PlanFacts {
  readonly asOf: CalendarDay;
  readonly outages: readonly OutageDecision[];
  /** When one of the accepted risks is passed, unseen panels counted in, and of what was seen. */
  readonly passed: CalendarDay | undefined;
  readonly passedSeen: CalendarDay | undefined;
  /** The last outage that keeps both risks and that the liner can reach, so counted and so seen. */
  readonly chosen: OutageDecision | undefined;
  readonly chosenBySeen: OutageDecision | undefined;
}

/** Days after the last outage within which a risk that passes makes that outage the one to reline at; judgement. */
const soonAfter = 92;

/** The day until which a risk that passes makes a conveyor due: of the last outage, or soon after its first day. */
export function dueUntil(outages: readonly Outage[], horizon: CalendarDay): CalendarDay {
  const last = outages.at(-1);
  return last && addDays(last.from.day, soonAfter) > horizon ? addDays(last.from.day, soonAfter) : horizon;
}

export function planFor({ asOf, outages, passed, ...rest }: PlanFacts): ConveyorPlan {
  const { passedSeen, chosen, chosenBySeen } = rest;
  const last = outages.at(-1);
  if (passed === undefined) return { kind: 'nothing due' };
  if (!last)
    return passed <= asOf + 366 ? { kind: 'no outage in time', outage: undefined } : { kind: 'nothing due' };
  // The last outage still within the risk is a plan only where the risk passes soon after it.
  const soon = (day: CalendarDay | undefined): boolean => day !== undefined && day <= last.from + soonAfter;
  if (chosen)
    return chosen !== last || soon(passed) ? { kind: 'reline', outage: chosen } : { kind: 'nothing due' };
  if (chosenBySeen)
    return chosenBySeen !== last || soon(passedSeen)
      ? { kind: 'reline', outage: chosenBySeen }
      : { kind: 'look' };
  return { kind: 'no outage in time', outage: outages.find(({ reachable }) => reachable) ?? last };
}
