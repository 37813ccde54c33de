// What one report says of one conveyor, as far as two reports are compared: the same from a report just made and from one that
// was saved as JSON. Chances run from 0 to 1 and count panels that nobody has seen in.

import type { CalendarDay } from '../../../domain/units/calendar.js';
import { isNow, isOrderLate } from '../../../domain/decision/order-call.js';
import { callText, orderDay, shownOutage } from '../../remaining-life/decision-words.js';
import { limitPassed, passedText } from '../../remaining-life/passed-words.js';
import { readingCounts } from '../../remaining-life/reading-counts.js';
import type { ConveyorLife, RemainingLife } from '../../remaining-life/remaining-life.js';

export interface ForecastRow {
  readonly conveyor: string;
  /** `reline to plan`, `look now`, …, and what to do as the first page says it. */
  readonly level: string;
  readonly todo: string;
  readonly accepted: BothChances | undefined;
  /** On the day of the report. */
  readonly today: BothChances | undefined;
  readonly outages: readonly OutageChances[];
  /** The outage whose chances stand on the first page. */
  readonly shown: string | undefined;
  readonly order: OrderWords | undefined;
  readonly lookBy: CalendarDay | undefined;
  /** When the condemn limit is reached, or was: 10, 50 and 90 %. */
  readonly limit: LimitDays | undefined;
  /** It lies behind the day of the report: in words, `passed, likely between … and …`. */
  readonly passed: string | undefined;
  /** Readings that saw something of the liners that lie there now. */
  readonly readings: number;
}

/** `now`, a day, `on the shelf`. */
export interface OrderWords {
  readonly words: string;
  readonly day: CalendarDay | undefined;
  readonly now: boolean;
  readonly late: boolean;
}

export interface BothChances {
  readonly condemn: number;
  readonly contact: number;
}

export interface OutageChances extends BothChances {
  readonly name: string;
  readonly from: CalendarDay;
}

export interface LimitDays {
  readonly q10: CalendarDay | undefined;
  readonly q50: CalendarDay | undefined;
  readonly q90: CalendarDay | undefined;
}

export function forecastRows({ conveyors, asOf }: RemainingLife): readonly ForecastRow[] {
  return conveyors.map((life) => rowOf(life, asOf));
}

function rowOf(life: ConveyorLife, asOf: CalendarDay | undefined): ForecastRow {
  const { conveyor, attention, decision, model, order } = life;
  const both = ({ condemn, contact }: BothChances): BothChances => ({ condemn, contact });
  const forecast = model?.forecast;
  const passed = limitPassed(life);
  return {
    conveyor: conveyor.name,
    level: attention.level,
    todo: attention.todo,
    accepted: decision && both(decision.accepted),
    today: decision && both(decision.today),
    outages: (decision?.outages ?? []).map((outage) => ({
      name: outage.name,
      from: outage.from,
      ...both(outage),
    })),
    shown: shownOutage(life)?.name,
    order: order && {
      words: callText(order),
      day: orderDay(order),
      now: isNow(order),
      late: isOrderLate(order),
    },
    lookBy: model?.look.kind === 'by' ? model.look.day : model?.look.kind === 'now' ? asOf : undefined,
    limit:
      forecast?.kind === 'dates'
        ? { q10: forecast.days.q10, q50: forecast.days.q50, q90: forecast.days.q90 }
        : undefined,
    passed: passed && passedText(passed),
    readings: readingCounts(life.points).seen,
  };
}
