// Fleets of panels whose lives are drawn, some of them read less than the others, and how their forecasts do against the lives drawn.
// For the benches of spots that were read once and of panels that nobody has seen.

import { fitWear } from '../../src/domain/wear/fit.js';
import { forecastUnit } from '../../src/domain/wear/forecast.js';
import { reduceReadings } from '../../src/domain/wear/reduce.js';
import { ReadingKind } from '../../src/domain/units/reading-kind.js';

export const conveyors = 3;
export const panels = 10;
/** Thickness to wear until the limit, mm. */
export const depth = 9;
/** Of a panel that is read at every look, h. */
export const looks = [1500, 3000, 4500, 6000];
const fitted = 12;

export interface Draw {
  readonly uniform: () => number;
  readonly normal: () => number;
}

export function drawFrom(seed: number): Draw {
  let state = seed;
  const uniform = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 4294967296;
  };
  return {
    uniform,
    normal: () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform()),
  };
}

export interface FleetSetting {
  /** Of panels of one run, as a ratio. */
  readonly spread: number;
  /** How much faster the far end wears, ln. */
  readonly along: number;
  /** Standard deviation of a reading, mm. */
  readonly gauge: number;
  /** Of each conveyor so many panels are read at these looks alone. */
  readonly fewOf: number;
  readonly fewLooks: readonly number[];
}

export interface Fleet {
  readonly fit: ReturnType<typeof fitWear>;
  /** Of every panel, h. */
  readonly lives: readonly number[];
  /** The panels of a conveyor that were read less. */
  readonly few: (conveyor: number) => readonly number[];
}

export function drawnFleet({ uniform, normal }: Draw, setting: FleetSetting): Fleet {
  const { spread, along, gauge, fewOf, fewLooks } = setting;
  const unit: number[] = [];
  const exposure: number[] = [];
  const value: number[] = [];
  const day: number[] = [];
  const lives: number[] = [];
  const chosen = new Set<number>();
  const few = (c: number): number[] => [...chosen].filter((u) => Math.floor(u / panels) === c);
  for (let c = 0; c < conveyors; c++) {
    const middle = Math.log(0.001 * Math.exp(0.15 * normal()));
    while (few(c).length < fewOf) chosen.add(c * panels + Math.floor(uniform() * panels));
    for (let p = 0; p < panels; p++) {
      const u = c * panels + p;
      const rate = Math.exp(middle + spread * normal() + along * (p / (panels - 1) - 0.5));
      lives.push(depth / rate);
      (chosen.has(u) ? fewLooks : looks).forEach((at, k) => {
        unit.push(u);
        exposure.push(at);
        value.push(Math.max(0.1, fitted - rate * at + gauge * normal()));
        day.push(20_000 + 100 * k);
      });
    }
  }
  const all = Array.from({ length: conveyors * panels }, (_, u) => u);
  const fit = fitWear(
    reduceReadings(
      { unit, exposure, value, day, kind: unit.map(() => ReadingKind.thickness) },
      {
        count: all.length,
        fitted: all.map(() => fitted),
        build: all.map(() => 0),
        builds: [{ depths: [0, 6, 12] }],
        clock: {
          conveyor: all.map((u) => Math.floor(u / panels)),
          start: all.map(() => 0),
          along: all.map((u) => ((u % panels) + 0.5) / panels),
          product: Array.from({ length: conveyors }, () => 'compost'),
        },
      },
    ),
    [{ name: 'conveyor', level: all.map((u) => Math.floor(u / panels)) }],
  );
  return { fit, lives, few };
}

/** How often forecasts held; `width` sums that of the 80 % interval over the life. */
export interface Tally {
  forecasts: number;
  early: number;
  held80: number;
  held90: number;
  width: number;
}

export function emptyTally(): Tally {
  return { forecasts: 0, early: 0, held80: 0, held90: 0, width: 0 };
}

/** Counts the forecast of one panel in. */
export function holdAgainst(tally: Tally, { fit, lives }: Fleet, unit: number): void {
  const forecast = fit.kind === 'fitted' ? forecastUnit(fit, unit, depth) : undefined;
  if (forecast?.kind !== 'life') return;
  const { q05, q10, q90, q95 } = forecast.quantiles;
  const life = lives[unit] ?? 0;
  tally.forecasts += 1;
  tally.width += (q90 - q10) / life;
  if (life < q05) tally.early += 1;
  if (life >= q10 && life <= q90) tally.held80 += 1;
  if (life >= q05 && life <= q95) tally.held90 += 1;
}
