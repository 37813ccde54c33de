// Fleets whose wear may change: conveyors with a wear clock, points about their level, looks at which a gauge reads. The truth is
// known, so forecasts can be held against it. One scenario is one row of the table that tests/bench/coverage/change.ts prints.
import { ReadingKind } from '../../../src/domain/units/reading-kind.js';
import type { WorkStretch } from '../../../src/domain/wear/change.js';
import type { ReadingColumns, UnitColumns } from '../../../src/domain/wear/columns.js';
import type { Random } from '../../domain/wear/fleet.js';

export interface Scenario {
  readonly name: string;
  readonly conveyors: number;
  readonly points: number;
  readonly looks: number;
  /** Factor on the rate from `since` looks before the last one on; of all conveyors, or of the first only. */
  readonly change?: { readonly factor: number; readonly since: 1 | 2; readonly who: 'all' | 'one' };
  readonly power?: number;
  /** The last look reads so many mm thick. */
  readonly bias?: number;
  /** Errors of the gauges, mm, in turn over the points. */
  readonly gauges?: readonly number[];
  /** ln rate of the discharge over the inlet; the last third is not looked at. */
  readonly along?: number;
  /** Variation of wear over an interval: of a point by itself, and of the whole conveyor. */
  readonly pointNoise?: number;
  readonly sharedNoise?: number;
  readonly colours?: number;
  readonly evenDuty?: boolean;
  /** Tonnes an hour tell how hard every interval worked, give or take 10 %. */
  readonly loads?: boolean;
  /** Conveyors carry the same product. */
  readonly together?: boolean;
}

export const plant = {
  fitted: 12,
  limit: 9,
  interval: 1500,
  middle: 1e-3,
  spread: 0.3,
  levels: 0.15,
  gauge: 0.4,
  depths: [6, 12],
} as const;

export interface ChangingFleet {
  readonly readings: ReadingColumns;
  readonly units: UnitColumns;
  readonly life: Float64Array;
  readonly seen: readonly boolean[];
  readonly gaugeOf: readonly number[];
  readonly conveyorOf: readonly number[];
  readonly changed: readonly boolean[];
  readonly expectedExposure: number;
}

const step = 25;
const horizon = 60_000;

/** Wear of a conveyor's clock, hour by hour: cumulated pace on a grid of `step`; and ln of how hard each interval worked. */
function clockOf(
  s: Scenario,
  changed: boolean,
  random: Random,
): { readonly clock: Float64Array; readonly work: readonly number[] } {
  const work: number[] = [];
  const out = new Float64Array(horizon / step + 1);
  const from = (s.looks - (s.change?.since ?? 0)) * plant.interval;
  let pace = 1;
  for (let k = 1; k < out.length; k++) {
    const at = (k - 1) * step;
    if (at % plant.interval === 0) {
      work.push((s.sharedNoise ?? 0.03) * random.normal());
      pace = Math.exp(work[work.length - 1]!);
    }
    const power = s.power ?? 1;
    const reference = s.looks * plant.interval;
    const aged =
      power === 1
        ? step
        : (((at + step) / reference) ** power - (at / reference) ** power) * (reference / power);
    out[k] = out[k - 1]! + aged * pace * (changed && at >= from ? s.change!.factor : 1);
  }
  return { clock: out, work };
}

export function drawChanging(s: Scenario, random: Random): ChangingFleet {
  const rows = {
    unit: [] as number[],
    exposure: [] as number[],
    kind: [] as number[],
    value: [] as number[],
  };
  const day: number[] = [];
  const error: number[] = [];
  const life: number[] = [];
  const seen: boolean[] = [];
  const gaugeOf: number[] = [];
  const conveyorOf: number[] = [];
  const along: number[] = [];
  const loads: WorkStretch[][] = [];
  const changed = Array.from(
    { length: s.conveyors },
    (_, c) => s.change !== undefined && (s.change.who === 'all' || c === 0),
  );
  const middle = plant.middle * Math.exp(0.15 * random.normal());
  for (let c = 0; c < s.conveyors; c++) {
    const { clock, work } = clockOf(s, changed[c]!, random);
    loads.push(
      work.slice(0, s.looks).map((logFactor, k) => ({
        fromDay: k * 90,
        toDay: (k + 1) * 90,
        logFactor: logFactor + 0.1 * random.normal(),
        spread: 0.1,
      })),
    );
    const level = Math.log(middle) + plant.levels * random.normal();
    const each = Math.floor(s.points / s.conveyors);
    for (let i = 0; i < each; i++) {
      const unit = life.length;
      const place = each > 1 ? i / (each - 1) : 0.5;
      const looked = s.along === undefined || place < 0.67;
      const rate = Math.exp(level + plant.spread * random.normal() + (s.along ?? 0) * (place - 0.5));
      const gauge = s.gauges ? s.gauges[i % s.gauges.length]! : plant.gauge;
      const path = pathOf(rate, clock, s.pointNoise ?? 0.1, random);
      life.push(whenReached(path, plant.limit));
      seen.push(looked);
      gaugeOf.push(gauge);
      conveyorOf.push(c);
      along.push(place);
      for (let k = 1; k <= s.looks && looked; k++) {
        const wear = path[(k * plant.interval) / step]!;
        const off = k === s.looks ? (s.bias ?? 0) : 0;
        rows.unit.push(unit);
        rows.exposure.push(k * plant.interval);
        day.push(k * 90);
        error.push(gauge);
        if (wear >= plant.fitted) {
          rows.kind.push(ReadingKind.trough);
          rows.value.push(0);
        } else if (random.uniform() < (s.colours ?? 0)) {
          rows.kind.push(ReadingKind.colour);
          rows.value.push(wear >= plant.depths[0] * Math.exp(0.05 * random.normal()) ? 1 : 0);
        } else {
          rows.kind.push(ReadingKind.thickness);
          rows.value.push(Math.max(0.01, plant.fitted - wear + off + gauge * random.normal()));
        }
      }
    }
  }
  const count = life.length;
  return {
    readings: { ...rows, day, error },
    units: {
      count,
      fitted: new Float64Array(count).fill(plant.fitted),
      build: new Int32Array(count),
      builds: [{ depths: [...plant.depths], tolerance: 0.05 }],
      clock: {
        conveyor: conveyorOf,
        start: new Float64Array(count),
        product: changed.map(() => (s.together === false ? undefined : 'the same')),
        along,
        ...(s.loads && { work: loads }),
      },
    },
    life: Float64Array.from(life),
    seen,
    gaugeOf,
    conveyorOf,
    changed,
    expectedExposure: (plant.limit / plant.middle) * Math.exp(0.3 * random.normal()),
  };
}

/** Wear of one point: increments of a gamma process about rate × clock. */
function pathOf(rate: number, clock: Float64Array, noise: number, random: Random): Float64Array {
  const out = new Float64Array(clock.length);
  const variation = noise * Math.sqrt(plant.interval / step);
  for (let k = 1; k < out.length; k++) {
    const d = rate * (clock[k]! - clock[k - 1]!);
    out[k] = out[k - 1]! + (noise > 0 ? d * random.gamma(variation) : d);
    if (out[k]! > 40) {
      out.fill(40, k);
      break;
    }
  }
  return out;
}

function whenReached(path: Float64Array, depth: number): number {
  const k = path.findIndex((w) => w >= depth);
  if (k < 0) return Infinity;
  return step * (k - 1 + (depth - path[k - 1]!) / (path[k]! - path[k - 1]!));
}
