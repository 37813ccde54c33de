// What the interval model says, in the report's own terms. Dates come with their interval or not at all; every forecast says
// how many readings it rests on and how many it borrowed.

import type { CalendarDay } from '../../../domain/units/calendar.js';
import type { DutyVariation } from '../../../domain/model/duty-variation.js';
import type { LookOff, WearPace } from './wear-change.js';
import type { NextInspection } from '../../../domain/wear/decision.js';
import type { LimitPassed } from '../../../domain/wear/passed.js';
import type { Basis } from '../../../domain/wear/forecast.js';
import type { DayQuantiles } from '../../../domain/wear/to-calendar.js';
import type { Quantiles } from '../../../domain/wear/quantiles.js';

export type { Basis } from '../../../domain/wear/forecast.js';
export type { DayQuantiles } from '../../../domain/wear/to-calendar.js';

/** When a depth is reached at a place. Exposure since fitting, h or t. */
export type DepthForecast =
  | {
      readonly kind: 'life';
      readonly exposure: Quantiles;
      /** Undefined where no duty tells dates. */
      readonly days: DayQuantiles | undefined;
      /** Chance, 0 to 1, that it is reached by the end of a day. */
      readonly chanceBy: ((day: CalendarDay) => number) | undefined;
      /** Where it lies behind the day of the report more likely than not. */
      readonly passed: LimitPassed | undefined;
    }
  /** Seen at this exposure that it was reached; undefined days where no meter tells them. */
  | { readonly kind: 'reached'; readonly by: number; readonly passed: LimitPassed | undefined }
  | { readonly kind: 'cannot say'; readonly why: string; readonly atLeast: number };

export interface PointModel {
  readonly basis: Basis;
  /** Thicknesses and colours (steel showing included) of this place and liner, and looks that saw nothing. */
  readonly readings: number;
  readonly indicators: number;
  readonly notSeen: number;
  /** Places and liners with records behind the pool. */
  readonly pool: number;
  /** mm per h or t; undefined where nothing can be said. */
  readonly rate: Quantiles | undefined;
  readonly condemn: DepthForecast;
  /** Next layers in order, and the trough; undefined on estates of very many points, where only the limit is forecast. */
  readonly layers: readonly DepthForecast[] | undefined;
  readonly trough: DepthForecast | undefined;
  /** Readings that stray from what all else foretold, and what they count for. */
  readonly strays: readonly Stray[];
  /** Wear at each look so far, mm, with one standard deviation; empty on estates of very many points. */
  readonly path: readonly { readonly exposure: number; readonly mean: number; readonly spread: number }[];
  /** Readings thicker than one before, beyond the errors of both. */
  readonly breaks: readonly RecordBreak[];
  /** Where readings stray: the condemn limit with all of them at full weight. */
  readonly fullWeight: DepthForecast | undefined;
  /** Where readings scatter more than twice what was declared: the condemn limit with the gauges taken at their word. */
  readonly asDeclared: DepthForecast | undefined;
}

export interface RecordBreak {
  readonly from: CalendarDay;
  readonly to: CalendarDay;
  /** mm, > 0. */
  readonly growth: number;
}

export interface Stray {
  /** Row of the estate's readings. */
  readonly row: number;
  readonly day: CalendarDay;
  /** mm, as read and as expected. */
  readonly thickness: number;
  readonly expected: number;
  /** 0 to 1. */
  readonly weight: number;
}

/** The first place of a conveyor to reach its condemn limit. */
export type ConveyorForecast =
  | {
      readonly kind: 'dates';
      readonly days: DayQuantiles;
      /** Where it lies behind the day of the report more likely than not. */
      readonly passed: LimitPassed | undefined;
      /** From the day of the report, h or t. */
      readonly exposure: Quantiles;
      /** Chance that a place has reached it already. */
      readonly already: number;
      readonly chanceBy: (day: CalendarDay) => number;
      /** Steel touched by then. */
      readonly contactBy: ((day: CalendarDay) => number) | undefined;
      readonly readings: number;
      readonly indicators: number;
      readonly pool: number;
      readonly notInspected: number;
      /** Chance of each place to be the first, largest first; names of places. */
      readonly first: readonly { readonly name: string; readonly share: number }[];
    }
  | { readonly kind: 'reached'; readonly names: readonly string[]; readonly passed: LimitPassed | undefined }
  | { readonly kind: 'cannot say'; readonly why: string };

type AskedFor = { readonly because: 'a look asked for' } & (
  { readonly kind: 'now' } | { readonly kind: 'by'; readonly day: CalendarDay }
);

export interface ConveyorModel {
  readonly forecast: ConveyorForecast;
  /** Where readings scatter more than twice what was declared: the same with the gauges taken at their word. */
  readonly asDeclared: DayQuantiles | undefined;
  /**
   * By the chance of what was seen; today where only what nobody has seen stands against the outage to reline at; sooner where a
   * record asks for it.
   */
  readonly look:
    | NextInspection
    | { readonly kind: 'now'; readonly because: 'panels never seen'; readonly chance: number }
    | AskedFor;
  /** Accepted chance of reaching the limit before the reline. */
  readonly risk: number;
  /** Day on which the chance passes the risk; undefined beyond 40 years or without dates. */
  readonly riskDay: CalendarDay | undefined;
  /**
   * By cost alone, of the liner that has lain longest: age at which a planned reline costs least an hour (or tonne). Undefined
   * without costs or a chance of contact.
   */
  readonly cheapest: CheapestAge | undefined;
  /** Places whose reading would narrow the decision most, best first; `share` of the spread it is expected to take away. */
  readonly lookAt: readonly { readonly name: string; readonly share: number }[];
  /** Runs with panels that nobody has seen, each liner that lies there apart: when such a panel would reach its limit. */
  readonly unseen: readonly {
    readonly run: number;
    readonly panels: number;
    /** When they were fitted, where panels of several days were not seen. */
    readonly linedOn: CalendarDay | undefined;
    readonly condemn: DepthForecast;
  }[];
  /** What was borrowed from where: the factor on the rate of each group this conveyor belongs to. */
  readonly borrowed: readonly Borrowed[];
  /** Whether the rate has changed, and which looks read off as a whole. */
  readonly pace: WearPace;
  readonly looksOff: readonly LookOff[];
  /** How uncertain the hours are that dates carry: those to come, and those since the meter was last read on `meterRead`. */
  readonly dutyVariation: DutyVariation;
  readonly meterRead: CalendarDay;
}

/** One reading without which the chance of the limit would call for something else. */
export interface HangsOn {
  readonly point: string;
  readonly day: CalendarDay;
  /** mm. */
  readonly thickness: number;
  /** Chance that the limit there is reached by the day of the report, with the reading and without it. */
  readonly chance: number;
  readonly without: number;
}

export interface CheapestAge {
  /** h or t since fitting. */
  readonly exposure: number;
  /** By the duty in force, without its spread. */
  readonly day: CalendarDay | undefined;
  /** Money an hour or tonne: relined then, and run until steel is touched. */
  readonly costRate: number;
  readonly toFailure: number;
}

export interface Borrowed {
  readonly pool: string;
  readonly label: string;
  readonly factor: number;
  /** 90 % interval of the factor. */
  readonly low: number;
  readonly high: number;
  readonly units: number;
}

export interface FitSummary {
  readonly measure: 'h' | 't';
  readonly kind: 'fitted' | 'cannot say';
  readonly why: string | undefined;
  /** Places and liners in the fit, and how many of them have records. */
  readonly units: number;
  readonly informative: number;
  readonly readings: number;
  /** mm per h or t of a middle place, with its relative standard error; spread between places; gauge error mm. */
  readonly medianRate: number | undefined;
  readonly rateError: number | undefined;
  readonly spread: number | undefined;
  readonly readingError: number | undefined;
  readonly dutyNoise: { readonly ratio: number; readonly per: number; readonly from: string } | undefined;
  readonly method: string | undefined;
}

export type { Quantiles } from '../../../domain/wear/quantiles.js';
