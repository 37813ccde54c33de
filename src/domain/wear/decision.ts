// When to look again, and at which planned outage to reline? Both follow from the dates at which a limit is reached and from the
// risk that the owner declares. Half the remaining life is the practice of API 510 and 570 for thinning walls; the rest is plain
// probability. These are proposals for a person to decide on: nothing here clears a machine to run on.

import type { CalendarDay } from '../units/calendar.js';
import { addDays } from '../units/calendar.js';
import type { CalendarForecast } from './to-calendar.js';

export type NextInspection =
  | {
      readonly kind: 'by';
      readonly day: CalendarDay;
      readonly because: 'half the remaining life' | 'the declared risk';
      readonly chance: number | undefined;
    }
  /** The chance that the limit has been reached already exceeds the declared risk, or the arithmetic leaves no life. */
  | {
      readonly kind: 'now';
      readonly because: 'half the remaining life' | 'the declared risk';
      readonly chance: number | undefined;
    }
  | { readonly kind: 'cannot say'; readonly why: 'no forecast and no arithmetic' };

export interface InspectionInput {
  /** Dates at which the condemn limit is reached; undefined where no forecast could be made. */
  readonly condemn: CalendarForecast | undefined;
  /** Remaining life by hand arithmetic at `asOf`, in days at the forward duty; undefined where it gives none. */
  readonly remainingDays: number | undefined;
  /** Declared, 0 to 1. */
  readonly risk: number;
  readonly asOf: CalendarDay;
}

export function nextInspection({ condemn, remainingDays, risk, asOf }: InspectionInput): NextInspection {
  const byRisk = condemn?.kind === 'dates' ? (condemn.dayOf(risk) ?? condemn.horizon) : undefined;
  const byHalf =
    remainingDays !== undefined && Number.isFinite(remainingDays)
      ? addDays(asOf, Math.floor(remainingDays / 2))
      : undefined;
  const chanceAt = (day: CalendarDay): number | undefined =>
    condemn?.kind === 'dates' ? condemn.reachedBy(day) : undefined;
  if (byRisk === undefined && byHalf === undefined)
    return { kind: 'cannot say', why: 'no forecast and no arithmetic' };
  const half = byHalf !== undefined && (byRisk === undefined || byHalf < byRisk);
  const day = half ? byHalf : (byRisk ?? asOf);
  const because = half ? 'half the remaining life' : 'the declared risk';
  if (day <= asOf) return { kind: 'now', because, chance: chanceAt(asOf) };
  return { kind: 'by', day, because, chance: chanceAt(day) };
}

export interface OutageAhead {
  readonly name?: string;
  /** First day of the outage. */
  readonly from: CalendarDay;
}

export interface OutageCosts {
  /** Of relining at a planned outage, and of trough contact: welding, lost production and the reline. Same currency, > 0. */
  readonly planned: number;
  readonly contact: number;
}

export interface OutageInput {
  readonly condemn: CalendarForecast | undefined;
  readonly contact: CalendarForecast | undefined;
  readonly outages: readonly OutageAhead[];
  /** Highest acceptable chance that the condemn limit is passed by the outage, 0 to 1. */
  readonly risk: number;
  readonly asOf: CalendarDay;
  readonly leadTimeDays: number;
  readonly costs?: OutageCosts;
  /** Exposure the liner has given already; the contact forecast's own `duty.now` where left out, which is 0 for the first of several. */
  readonly used?: number;
}

export interface OutageCandidate {
  readonly outage: OutageAhead;
  /** Chance that the condemn limit has been passed, and that the trough has been touched, by the first day of the outage. */
  readonly condemnChance: number | undefined;
  readonly contactChance: number | undefined;
  readonly orderBy: CalendarDay;
  readonly orderIsLate: boolean;
  /** planned·(1 − chance of contact) + contact·chance. */
  readonly expectedCost: number | undefined;
  /** That cost spread over the exposure the liner will have given, per unit of exposure: lower is better value. */
  readonly costPerExposure: number | undefined;
}

export interface OutageChoice {
  readonly kind: 'chosen' | 'too late' | 'no outage' | 'cannot say';
  /** `chosen`: the last outage within the declared risk. `too late`: none is; the first one left. */
  readonly chosen: OutageCandidate | undefined;
  readonly candidates: readonly OutageCandidate[];
  /** Candidate with the lowest cost per exposure, where costs are declared. */
  readonly cheapest: OutageCandidate | undefined;
}

export function chooseOutage(input: OutageInput): OutageChoice {
  const { condemn, contact, risk, asOf, leadTimeDays, costs } = input;
  const outages = [...input.outages].filter(({ from }) => from >= asOf).sort((a, b) => a.from - b.from);
  const candidates = outages.map((outage): OutageCandidate => {
    const contactChance = contact?.kind === 'dates' ? contact.reachedBy(outage.from) : undefined;
    const orderBy = addDays(outage.from, -leadTimeDays);
    const expectedCost =
      costs && contactChance !== undefined
        ? costs.planned * (1 - contactChance) + costs.contact * contactChance
        : undefined;
    const given =
      contact?.kind === 'dates' ? exposureGiven(contact, outage.from, input.used ?? contact.duty.now) : 0;
    return {
      outage,
      condemnChance: condemn?.kind === 'dates' ? condemn.reachedBy(outage.from) : undefined,
      contactChance,
      orderBy,
      orderIsLate: orderBy < asOf,
      expectedCost,
      costPerExposure: expectedCost !== undefined && given > 0 ? expectedCost / given : undefined,
    };
  });
  let cheapest: OutageCandidate | undefined;
  for (const candidate of candidates) {
    if (
      candidate.costPerExposure !== undefined &&
      (cheapest?.costPerExposure === undefined || candidate.costPerExposure < cheapest.costPerExposure)
    )
      cheapest = candidate;
  }
  if (candidates.length === 0) return { kind: 'no outage', chosen: undefined, candidates, cheapest };
  if (condemn?.kind !== 'dates') return { kind: 'cannot say', chosen: undefined, candidates, cheapest };
  const within = candidates.filter(
    ({ condemnChance }) => condemnChance !== undefined && condemnChance <= risk,
  );
  const last = within[within.length - 1];
  return last
    ? { kind: 'chosen', chosen: last, candidates, cheapest }
    : { kind: 'too late', chosen: candidates[0], candidates, cheapest };
}

/** Exposure the liner has given by a day: what it has now and the mean of what is still to come before contact or that day. */
function exposureGiven(
  contact: Extract<CalendarForecast, { kind: 'dates' }>,
  day: CalendarDay,
  used: number,
): number {
  const { duty } = contact;
  const days = Math.max(0, day - duty.from);
  const steps = 48;
  let alive = 0;
  for (let i = 0; i <= steps; i++) {
    const weight = i === 0 || i === steps ? 0.5 : 1;
    alive += weight * (1 - contact.reachedBy(addDays(duty.from, Math.round((days * i) / steps))));
  }
  return used + (duty.perDay * days * alive) / steps;
}
