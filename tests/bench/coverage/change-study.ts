// How do forecasts hold where wear may change, beside what the straight model makes of the same fleets?
import type { WearFit, WearOptions } from '../../../src/domain/wear/fit.js';
import { fitWear } from '../../../src/domain/wear/fit.js';
import { forecastUnit } from '../../../src/domain/wear/forecast.js';
import { reduceReadings } from '../../../src/domain/wear/reduce.js';
import { seeded } from '../../domain/wear/fleet.js';
import type { ChangingFleet, Scenario } from './changing.js';
import { drawChanging, plant } from './changing.js';

export interface Tally {
  forecasts: number;
  held80: number;
  held90: number;
  early: number;
  width: number;
  score: number;
  /** ln q50 less ln truth. */
  off: number;
}

const blank = (): Tally => ({ forecasts: 0, held80: 0, held90: 0, early: 0, width: 0, score: 0, off: 0 });

export interface ChangeStudy {
  readonly clock: Tally;
  readonly straight: Tally;
  /** Points nobody looked at; points by the error of their gauge. */
  readonly unseen: Tally;
  readonly unseenStraight: Tally;
  readonly byGauge: ReadonlyMap<number, Tally>;
  /** Conveyors that changed and were told, of those; conveyors that did not and were told all the same. */
  readonly told: { changed: number; ofChanged: number; falsely: number; ofSteady: number };
  readonly fasterWithAge: { told: number; of: number };
  readonly milliseconds: { clock: number; straight: number };
}

export function changeStudy(
  scenario: Scenario,
  fleets: number,
  seed: number,
  straightToo = true,
): ChangeStudy {
  const random = seeded(seed);
  const out: ChangeStudy = {
    clock: blank(),
    straight: blank(),
    unseen: blank(),
    unseenStraight: blank(),
    byGauge: new Map(),
    told: { changed: 0, ofChanged: 0, falsely: 0, ofSteady: 0 },
    fasterWithAge: { told: 0, of: 0 },
    milliseconds: { clock: 0, straight: 0 },
  };
  for (let k = 0; k < fleets; k++) {
    const fleet = drawChanging(scenario, random);
    const options: WearOptions = {
      expectedLife: { depth: plant.limit, exposure: fleet.expectedExposure, spread: 0.4 },
      ...(scenario.evenDuty && { dutyNoise: 'none' }),
    };
    let from = performance.now();
    const withClock = fitted(fleet, options, true);
    tally(fleet, withClock, out.clock, out.unseen, out.byGauge as Map<number, Tally>);
    out.milliseconds.clock += performance.now() - from;
    tellings(fleet, withClock, out);
    if (!straightToo) continue;
    from = performance.now();
    tally(fleet, fitted(fleet, options, false), out.straight, out.unseenStraight, undefined);
    out.milliseconds.straight += performance.now() - from;
  }
  return out;
}

function fitted(fleet: ChangingFleet, options: WearOptions, clock: boolean): WearFit {
  const { clock: _, ...bare } = fleet.units;
  const fit = fitWear(reduceReadings(fleet.readings, clock ? fleet.units : bare), [], options);
  if (fit.kind !== 'fitted') throw new Error(fit.why);
  return fit;
}

function tally(
  fleet: ChangingFleet,
  fit: WearFit,
  all: Tally,
  unseen: Tally,
  byGauge: Map<number, Tally> | undefined,
): void {
  fleet.life.forEach((truth, unit) => {
    const forecast = forecastUnit(fit, unit, plant.limit, { depthSpread: 0 });
    // What has been seen to be over is no forecast.
    if (forecast.kind !== 'life') return;
    const { q05, q10, q50, q90, q95 } = forecast.quantiles;
    const add = (t: Tally): void => {
      t.forecasts++;
      if (truth < q05) t.early++;
      if (q10 <= truth && truth <= q90) t.held80++;
      if (q05 <= truth && truth <= q95) t.held90++;
      const [low, high, x] = [Math.log(q10), Math.log(q90), Math.log(truth)];
      t.width += high - low;
      t.score += high - low + 10 * Math.max(0, low - x) + 10 * Math.max(0, x - high);
      t.off += Math.log(q50) - x;
    };
    if (!fleet.seen[unit]) {
      add(unseen);
      return;
    }
    add(all);
    if (!byGauge) return;
    const gauge = fleet.gaugeOf[unit]!;
    if (!byGauge.has(gauge)) byGauge.set(gauge, blank());
    add(byGauge.get(gauge)!);
  });
}

function tellings(fleet: ChangingFleet, fit: WearFit, out: ChangeStudy): void {
  for (const conveyor of fit.change?.conveyors ?? []) {
    if (conveyor.kind !== 'asked') continue;
    const told = conveyor.chance > 0.55;
    if (fleet.changed[conveyor.conveyor]) {
      out.told.ofChanged++;
      if (told) out.told.changed++;
    } else {
      out.told.ofSteady++;
      if (told) out.told.falsely++;
    }
    out.fasterWithAge.of++;
    if (!told && conveyor.faster > 0.35) out.fasterWithAge.told++;
  }
}
