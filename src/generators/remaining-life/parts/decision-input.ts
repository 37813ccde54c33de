// Hands the table of decisions what it needs of the report: the outlook, how long a new liner lasts, how well the gauge reads.

import { decideConveyor, type ConveyorDecision } from '../../../domain/decision/conveyor-decision.js';
import type { ScrewOutlook } from '../../../domain/decision/new-screw.js';
import type { TroughState } from '../../../domain/conditions/trough.js';
import { screwNow } from '../../../domain/model/lying-screw.js';
import type { ScrewSpecification } from '../../../domain/model/specifications.js';
import { setLying } from '../../../domain/model/exposure.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { FlightLife } from './flights.js';
import type { Coming, FittedWear } from './forecasts.js';
import type { ConveyorForecast } from './model.js';
import { outlookOf } from './outlook.js';
import { governingPoint, type PointLife } from './points.js';
import type { RunLife } from './runs.js';

export interface DecisionSource {
  readonly estate: Estate;
  readonly fitted: FittedWear;
  readonly coming: Coming;
  readonly points: readonly PointLife[];
  readonly runs: readonly RunLife[];
  readonly forecast: ConveyorForecast;
  readonly flights: readonly FlightLife[];
  readonly trough: TroughState;
}

export function decisionOf(source: DecisionSource): ConveyorDecision | undefined {
  const { estate, fitted, coming, points, runs, forecast } = source;
  const outlook = outlookOf(fitted, coming, points, runs, forecast);
  if (!outlook || fitted.result.kind !== 'fitted') return undefined;
  const { conveyor } = coming.history;
  const medians = outlook.panels.filter(({ seen }) => seen).map(({ life }) => life.median);
  return decideConveyor({
    estate,
    conveyor,
    liner: conveyor.liner,
    linerAt: (chainage) => setLying(coming.history, chainage, coming.asOf)?.liner ?? conveyor.liner,
    outlook,
    governs: governingPoint(points, forecast)?.place,
    newLife: medians.length > 0 ? Math.min(...medians) : undefined,
    gauge: fitted.result.readingError,
    screw: screwOutlook(screwNow(coming.history), source.flights),
    atLimit:
      forecast.kind === 'reached' ||
      points.some(({ pastLimit }) => pastLimit !== undefined) ||
      source.trough.places.some(({ belowMinimum }) => belowMinimum),
  });
}

/** By the place of the flight that is expected to reach its limit first. */
function screwOutlook(screw: ScrewSpecification, flights: readonly FlightLife[]): ScrewOutlook | undefined {
  return flights
    .flatMap(({ forecast }): readonly ScrewOutlook[] =>
      forecast?.kind === 'life' && forecast.days?.q50 !== undefined && forecast.chanceBy
        ? [
            {
              screw,
              middle: forecast.days.q50,
              reachedBy: forecast.chanceBy,
              newLife: forecast.exposure.q50,
            },
          ]
        : [],
    )
    .sort((a, b) => a.middle - b.middle)[0];
}
