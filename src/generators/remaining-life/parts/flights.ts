// How fast does the screw itself wear? Flight depths read at a place (or the outside diameter, of which half the loss is off the
// depth), over the running hours since that screw went in: the same hand arithmetic, and the same model with the conveyors pooled.
// Says whether a reline should take the screw with it.

import type { CalendarDay } from '../../../domain/units/calendar.js';
import { byTurns } from '../../../domain/model/turns.js';
import { flightSpots, type FlightLook, type FlightSpot } from '../../../domain/model/flight-readings.js';
import type { ScrewSet } from '../../../domain/model/screw-sets.js';
import { momentOf, type History } from '../../../domain/model/history.js';
import type { HandResult } from '../../../domain/wear/arithmetic.js';
import { knownByHand } from '../../../domain/wear/known.js';
import type { ClockColumns } from '../../../domain/wear/change.js';
import { dutyOf } from './wear-input.js';
import { fitWear } from '../../../domain/wear/fit.js';
import { reduceReadings } from '../../../domain/wear/reduce.js';
import { comingDuty, forecastDepth } from './forecasts.js';
import type { DepthForecast } from './model.js';
import { ReadingKind } from '../../../domain/units/reading-kind.js';

export interface FlightLife {
  readonly screw: string;
  /** Chainage, mm. */
  readonly at: number;
  /** Depth of the flight when new and at which the screw is to be changed, mm. */
  readonly fitted: number;
  readonly condemn: number;
  readonly readings: readonly {
    readonly day: CalendarDay;
    readonly exposure: number;
    readonly depth: number;
    /** Outside diameter read at the same look, mm; the depth follows from it where none was read. */
    readonly diameter: number | undefined;
    readonly notes: readonly string[];
  }[];
  readonly hand: HandResult;
  readonly forecast: DepthForecast | undefined;
}

interface FlightUnit extends Omit<FlightLife, 'hand' | 'forecast'> {
  readonly history: History;
  /** Total when that screw, or its length there, went in. */
  readonly started: number;
  /** Running hours at the last meter reading. */
  readonly then: number | undefined;
}

/** By conveyor, the screws that turn there on the day of the report; readings within 100 mm of each other are one place. */
export function flightLives(
  histories: readonly History[],
  asOf: CalendarDay,
  withModel: boolean,
): ReadonlyMap<History, readonly FlightLife[]> {
  const spots = histories.flatMap((history) => spotsOf(history));
  const unit: number[] = [];
  const exposure: number[] = [];
  const value: number[] = [];
  const day: number[] = [];
  spots.forEach((spot, i) =>
    spot.readings.forEach((r) => {
      unit.push(i);
      exposure.push(r.exposure);
      value.push(r.depth);
      day.push(r.day);
    }),
  );
  const fit =
    withModel && spots.length > 0
      ? fitWear(
          reduceReadings(
            { unit, exposure, value, day, kind: unit.map(() => ReadingKind.thickness) },
            {
              count: spots.length,
              fitted: spots.map((s) => s.fitted),
              build: spots.map((_, i) => i),
              builds: spots.map(() => ({ depths: [] })),
              clock: clockOf(histories, spots),
            },
          ),
          histories.length > 1
            ? [{ name: 'conveyor', level: spots.map((s) => histories.indexOf(s.history)) }]
            : [],
        )
      : undefined;
  const byHistory = new Map<History, FlightLife[]>(histories.map((h) => [h, []]));
  spots.forEach((spot, i) => {
    const { history, then, started: _started, ...life } = spot;
    const coming = comingDuty(history, asOf, 'hours');
    byHistory.get(history)?.push({
      ...life,
      hand: knownByHand({
        fitted: spot.fitted,
        least: spot.condemn,
        depths: [0, spot.fitted],
        seen: spot.readings.map((r) => ({ exposure: r.exposure, thickness: r.depth })),
      }).result,
      forecast:
        fit?.kind === 'fitted' ? forecastDepth(fit, i, spot.fitted - spot.condemn, then, coming) : undefined,
    });
  });
  return byHistory;
}

/** Flights of one screw share a wear clock, as the points of a liner do. */
function clockOf(histories: readonly History[], spots: readonly FlightUnit[]): ClockColumns {
  return {
    conveyor: spots.map((s) => histories.indexOf(s.history)),
    start: spots.map((s) => s.started),
    along: spots.map((s) => s.at / s.history.conveyor.length.value),
    product: histories.map((h) => dutyOf(h.conveyor)),
  };
}

function spotsOf(history: History): readonly FlightUnit[] {
  const last = history.hours.knots.at(-1)?.total;
  const read = last === undefined ? undefined : byTurns(history.speeds, last);
  return flightSpots(history).flatMap(({ at, set, looks }) => {
    const width = set.screw.flight?.width.value;
    const condemn = set.screw.condemnFlight?.value;
    const started = set.fitted?.turned;
    if (width === undefined || condemn === undefined || started === undefined) return [];
    const readings = looks.flatMap((each): FlightLife['readings'] => {
      const read = depthRead(history, set, each);
      if (!read) return [];
      return [{ day: each.day, ...read, diameter: each.diameter?.value, notes: each.notes }];
    });
    if (readings.length === 0) return [];
    const spot = { at, readings, history, started, screw: set.screw.name, fitted: width, condemn };
    return [{ ...spot, then: read === undefined ? undefined : read - started }];
  });
}

/** How deep the flight was, mm, after how many hours of that screw by its turns; undefined where one of the two is not known. */
function depthRead(
  history: History,
  { screw, fitted }: ScrewSet,
  { inspection, depth, diameter }: FlightLook,
): { readonly exposure: number; readonly depth: number } | undefined {
  const [hours, started] = [momentOf(history, inspection).turned, fitted?.turned];
  if (hours === undefined || started === undefined || hours < started) return undefined;
  const exposure = hours - started;
  if (depth) return { exposure, depth: depth.value };
  if (!diameter || !screw.flight) return undefined;
  const lost = (screw.outsideDiameter.value - diameter.value) / 2;
  return { exposure, depth: screw.flight.width.value - lost };
}

/** mm/h over its whole life, by the last reading there; undefined where the screw does not say how deep its flight is when new. */
export function rateUntilLast(history: History, { set, looks }: FlightSpot): number | undefined {
  const read = looks.flatMap((each) => depthRead(history, set, each) ?? []).at(-1);
  const width = set.screw.flight?.width.value;
  return read && width !== undefined && read.exposure > 0 ? (width - read.depth) / read.exposure : undefined;
}
