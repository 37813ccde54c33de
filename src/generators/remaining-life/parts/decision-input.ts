// Hands the table of decisions what it needs of the report: the outlook, how long a new liner lasts, how well the gauge reads.

import { decideConveyor, type ConveyorDecision } from '../../../domain/decision/conveyor-decision.js';
import type { Estate } from '../../../domain/model/estate.js';
import type { Coming, FittedWear } from './forecasts.js';
import type { ConveyorForecast } from './model.js';
import { outlookOf } from './outlook.js';
import type { PointLife } from './points.js';
import type { RunLife } from './runs.js';

export interface DecisionSource {
  readonly estate: Estate;
  readonly fitted: FittedWear;
  readonly coming: Coming;
  readonly points: readonly PointLife[];
  readonly runs: readonly RunLife[];
  readonly forecast: ConveyorForecast;
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
    outlook,
    newLife: medians.length > 0 ? Math.min(...medians) : undefined,
    gauge: fitted.result.readingError,
  });
}
