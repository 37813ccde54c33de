// When to look again? It follows from the dates at which a limit is reached and from the risk that the owner declares; at which
// outage to reline is for domain/decision. Half the remaining life is the practice of API 510 and 570 for thinning walls; the rest is plain
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
