// How much warmer than when fitted a liner gets: the warmest service against the coldest fitting, K.

import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Stated } from '../../domain/model/stated.js';

export interface Warming {
  /** K, above zero. */
  readonly rise: number;
  readonly coldestFitting: Stated<'temperature'>;
  readonly warmestService: Stated<'temperature'>;
}

/** Undefined where either temperature is not stated, by the conveyor or its plant, or the liner never gets warmer. */
export function warmingOf(conveyor: Conveyor): Warming | undefined {
  const coldestFitting = (conveyor.fittingTemperature ?? conveyor.plant.fittingTemperature)?.from;
  const warmestService = (conveyor.serviceTemperature ?? conveyor.plant.serviceTemperature)?.to;
  if (!coldestFitting || !warmestService) return undefined;
  const rise = warmestService.value - coldestFitting.value;
  return rise > 0 ? { rise, coldestFitting, warmestService } : undefined;
}
