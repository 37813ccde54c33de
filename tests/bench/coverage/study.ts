// How often do the intervals hold on fleets whose truth is known, and how do they score against what a user would do instead?
// One call studies one plan over many fleets; the standard error is between fleets, since forecasts of one fleet share its pool.
import { fitWear } from '../../../src/domain/wear/fit.js';
import type { WearOptions } from '../../../src/domain/wear/fit.js';
import { forecastUnit } from '../../../src/domain/wear/forecast.js';
import { reduceReadings } from '../../../src/domain/wear/reduce.js';
import type { Fleet, FleetPlan } from '../../domain/wear/fleet.js';
import { drawFleet, fleet, seeded } from '../../domain/wear/fleet.js';
import { ReadingKind } from '../../../src/domain/units/reading-kind.js';

export interface Study {
  readonly forecasts: number;
  readonly fleets: number;
  /** Share held, and its standard error between fleets. */
  readonly held80: number;
  readonly error80: number;
  readonly held90: number;
  readonly error90: number;
  /** Mean interval score of the 80 % interval of ln life (lower is better), on the forecasts that every method can make. */
  readonly score: {
    readonly ours: number;
    readonly twoPoint: number;
    readonly line: number;
    readonly compared: number;
  };
  readonly heldTwoPoint: number;
  readonly heldLine: number;
}

export interface StudyPlan {
  readonly plan: FleetPlan;
  readonly fleets: number;
  readonly options?: WearOptions;
  /**
   * Draw level, τ and σ of each fleet from the declared priors, and the duty noise where the plan has any: then the promise should
   * hold for a pool of any size.
   */
  readonly drawParameters?: boolean;
  /** Forecast every so many points only, where a fleet is large. 1 where left out. */
  readonly every?: number;
}

/** What the liner's maker would say: life to the full thickness at the middle rate. */
const expectedLife = { depth: fleet.fitted, exposure: fleet.fitted / fleet.middleRate };

export function study(
  { plan, fleets, options = {}, drawParameters = false, every = 1 }: StudyPlan,
  seed: number,
): Study {
  const random = seeded(seed);
  let forecasts = 0;
  const sums = { held80: [] as number[], held90: [] as number[], of: [] as number[] };
  const score = { ours: 0, twoPoint: 0, line: 0, compared: 0, heldTwoPoint: 0, heldLine: 0 };
  for (let k = 0; k < fleets; k++) {
    const drawn = drawParameters
      ? {
          ...plan,
          spread: Math.exp(Math.log(0.3) + 0.5 * random.normal()),
          gauge: plan.gauge * Math.exp(0.5 * random.normal()),
          dutyNoise: plan.dutyNoise > 0 ? Math.min(1, 0.25 * Math.exp(0.7 * random.normal())) : 0,
        }
      : plan;
    const middle = drawParameters ? Math.exp(0.7 * random.normal()) : 1;
    const drawnFleet = scaled(drawFleet(drawn, random), middle);
    const fit = fitWear(
      reduceReadings(drawnFleet.readings, drawnFleet.units, { gaugeError: plan.gauge }),
      [],
      { expectedLife, gaugeError: plan.gauge, ...options },
    );
    if (fit.kind !== 'fitted') continue;
    let held80 = 0;
    let held90 = 0;
    let of = 0;
    for (let unit = 0; unit < plan.points; unit += every) {
      const forecast = forecastUnit(fit, unit, fleet.condemnWear, { depthSpread: 0 });
      if (forecast.kind !== 'life') continue;
      const truth = drawnFleet.life[unit] ?? NaN;
      const { q05, q10, q90, q95 } = forecast.quantiles;
      of++;
      if (q10 <= truth && truth <= q90) held80++;
      if (q05 <= truth && truth <= q95) held90++;
      const others = plainMethods(drawnFleet, unit);
      if (!others) continue;
      score.compared++;
      score.ours += intervalScore(q10, q90, truth);
      score.twoPoint += intervalScore(...others.twoPoint, truth);
      score.line += intervalScore(...others.line, truth);
      if (others.twoPoint[0] <= truth && truth <= others.twoPoint[1]) score.heldTwoPoint++;
      if (others.line[0] <= truth && truth <= others.line[1]) score.heldLine++;
    }
    forecasts += of;
    if (of > 0) {
      sums.held80.push(held80);
      sums.held90.push(held90);
      sums.of.push(of);
    }
  }
  const [held80, error80] = ratioOf(sums.held80, sums.of);
  const [held90, error90] = ratioOf(sums.held90, sums.of);
  const n = Math.max(1, score.compared);
  return {
    forecasts,
    fleets,
    held80,
    error80,
    held90,
    error90,
    score: {
      ours: score.ours / n,
      twoPoint: score.twoPoint / n,
      line: score.line / n,
      compared: score.compared,
    },
    heldTwoPoint: score.heldTwoPoint / n,
    heldLine: score.heldLine / n,
  };
}

/** All rates times a factor is all exposures divided by it: the same fleet on another clock. */
function scaled(drawn: Fleet, factor: number): Fleet {
  if (factor === 1) return drawn;
  return {
    ...drawn,
    readings: { ...drawn.readings, exposure: Array.from(drawn.readings.exposure, (x) => x / factor) },
    life: drawn.life.map((x) => x / factor),
  };
}

/** Ratio of sums over fleets, with its standard error; never below that of independent forecasts. */
function ratioOf(held: readonly number[], of: readonly number[]): readonly [number, number] {
  const total = of.reduce((sum, n) => sum + n, 0);
  const share = held.reduce((sum, n) => sum + n, 0) / total;
  const between = Math.sqrt(held.reduce((sum, h, k) => sum + (h - share * (of[k] ?? 0)) ** 2, 0)) / total;
  return [share, Math.max(between, Math.sqrt((share * (1 - share)) / total))];
}

/** Gneiting & Raftery 2007 (J. Am. Stat. Assoc. 102, 359), α = 0.2, on ln life. */
function intervalScore(low: number, high: number, truth: number): number {
  const [l, u, x] = [Math.log(low), Math.log(high), Math.log(truth)];
  return u - l + 10 * Math.max(0, l - x) + 10 * Math.max(0, x - u);
}

/** Student's t, 90 % point, for 1 to 10 degrees of freedom (any table); 1.33 beyond. */
const t90 = [3.078, 1.886, 1.638, 1.533, 1.476, 1.44, 1.415, 1.397, 1.383, 1.372];
const margin = 0.25;

/** Two-point rate with a fixed margin, and a line through the origin with its t interval: both need two thicknesses. */
function plainMethods(
  drawn: Fleet,
  unit: number,
): { readonly twoPoint: [number, number]; readonly line: [number, number] } | undefined {
  const rows: { x: number; y: number }[] = [];
  for (let row = 0; row < drawn.readings.unit.length; row++) {
    if (drawn.readings.unit[row] !== unit || drawn.readings.kind[row] !== ReadingKind.thickness) continue;
    rows.push({
      x: drawn.readings.exposure[row] ?? NaN,
      y: fleet.fitted - (drawn.readings.value[row] ?? NaN),
    });
  }
  rows.sort((a, b) => a.x - b.x);
  const last = rows[rows.length - 1];
  const before = rows[rows.length - 2];
  if (!last || !before) return undefined;
  const recent = (last.y - before.y) / (last.x - before.x);
  const sxx = rows.reduce((sum, p) => sum + p.x * p.x, 0);
  const slope = rows.reduce((sum, p) => sum + p.x * p.y, 0) / sxx;
  if (!(slope > 0)) return undefined;
  const rate = recent > 0 ? recent : slope;
  const left = Math.max(fleet.condemnWear - last.y, 0);
  const at = last.x + left / rate;
  const residual = Math.sqrt(rows.reduce((sum, p) => sum + (p.y - slope * p.x) ** 2, 0) / (rows.length - 1));
  const reach = ((t90[rows.length - 2] ?? 1.33) * residual) / Math.sqrt(sxx);
  // The slow side of a line that might be flat is cut at a tenth of the slope.
  const slow = Math.max(slope - reach, 0.1 * slope);
  return {
    twoPoint: [
      last.x + (left / rate) * (1 - margin),
      Math.max(last.x + (left / rate) * (1 + margin), at + 1),
    ],
    line: [fleet.condemnWear / (slope + reach), fleet.condemnWear / slow],
  };
}
