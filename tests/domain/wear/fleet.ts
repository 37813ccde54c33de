// A fleet drawn by a seeded generator: the truth is known, so a forecast can be held against it.
import type { ReadingColumns, UnitColumns } from '../../../src/domain/wear/columns.js';
import { ReadingKind } from '../../../src/domain/units/reading-kind.js';

export interface Random {
  /** In (0, 1). */
  readonly uniform: () => number;
  readonly normal: () => number;
  /** Mean 1, given coefficient of variation. */
  readonly gamma: (variation: number) => number;
}

/** SplitMix-style 32-bit generator (mulberry32), enough for drawing fleets. */
export function seeded(seed: number): Random {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
  const normal = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  // Marsaglia & Tsang 2000; below shape 1 by the usual power of a uniform.
  const shapeGamma = (shape: number): number => {
    if (shape < 1) return shapeGamma(shape + 1) * uniform() ** (1 / shape);
    const d = shape - 1 / 3;
    const c = 1 / Math.sqrt(9 * d);
    for (;;) {
      const x = normal();
      const v = (1 + c * x) ** 3;
      if (v > 0 && Math.log(uniform()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
    }
  };
  return { uniform, normal, gamma: (variation) => shapeGamma(1 / variation ** 2) * variation ** 2 };
}

export interface FleetPlan {
  readonly points: number;
  readonly rates: 'lognormal' | 'gamma' | 'normal';
  /** Spread of the rates: of ln rate for lognormal, coefficient of variation otherwise. */
  readonly spread: number;
  /** One standard deviation of a thickness, mm. */
  readonly gauge: number;
  /** Share of looks that give a colour only. */
  readonly colours: number;
  /** Coefficient of variation of the wear over one interval between looks. */
  readonly dutyNoise: number;
  /** Share of thicknesses ten times as scattered. */
  readonly strays: number;
  /** Looks at a point: from one to this many. */
  readonly looks: number;
}

export const plainFleet: FleetPlan = {
  points: 20,
  rates: 'lognormal',
  spread: 0.3,
  gauge: 0.4,
  colours: 0.3,
  dutyNoise: 0,
  strays: 0,
  looks: 4,
};

export const fleet = {
  fitted: 12,
  depths: [6, 12],
  condemnWear: 9,
  middleRate: 1e-3,
  interval: 1500,
  depthTolerance: 0.05,
} as const;

export interface Fleet {
  readonly readings: ReadingColumns;
  readonly units: UnitColumns;
  /** True exposure at which each point's wear reaches the condemn limit. */
  readonly life: Float64Array;
}

export function drawFleet(plan: FleetPlan, random: Random): Fleet {
  const rows = {
    unit: [] as number[],
    exposure: [] as number[],
    kind: [] as number[],
    value: [] as number[],
  };
  const life = new Float64Array(plan.points);
  const step = 50;
  for (let unit = 0; unit < plan.points; unit++) {
    const rate = fleet.middleRate * rateFactor(plan, random);
    const looks = 1 + Math.floor(plan.looks * random.uniform());
    const times = Array.from({ length: looks }, (_, k) =>
      Math.round(fleet.interval * (k + 1 + 0.4 * (random.uniform() - 0.5))),
    );
    const depths = fleet.depths.map((depth) => depth * Math.exp(fleet.depthTolerance * random.normal()));
    let wear = 0;
    let next = 0;
    let reached = NaN;
    if (plan.dutyNoise === 0) reached = fleet.condemnWear / rate;
    for (let x = 0; next < looks || Number.isNaN(reached); x += step) {
      const before = wear;
      // A gamma process: increments never negative, variation as planned over one interval.
      wear +=
        rate *
        step *
        (plan.dutyNoise > 0 ? random.gamma(plan.dutyNoise * Math.sqrt(fleet.interval / step)) : 1);
      if (Number.isNaN(reached) && wear >= fleet.condemnWear)
        reached = x + (step * (fleet.condemnWear - before)) / (wear - before);
      while (next < looks && (times[next] ?? Infinity) <= x + step) {
        const at = times[next] ?? 0;
        const now = before + ((wear - before) * (at - x)) / step;
        next++;
        // Where nothing is left to measure, the trough shows.
        if (random.uniform() < plan.colours || now >= fleet.fitted) {
          const through = depths.filter((depth) => now >= depth).length;
          push(
            rows,
            unit,
            at,
            through === 2 || now >= fleet.fitted ? ReadingKind.trough : ReadingKind.colour,
            through,
          );
        } else {
          const error = plan.gauge * (random.uniform() < plan.strays ? 10 : 1) * random.normal();
          push(rows, unit, at, ReadingKind.thickness, Math.max(0, fleet.fitted - now + error));
        }
      }
    }
    life[unit] = reached;
  }
  return {
    readings: rows,
    units: {
      count: plan.points,
      fitted: new Float64Array(plan.points).fill(fleet.fitted),
      build: new Int32Array(plan.points),
      builds: [{ depths: [...fleet.depths], tolerance: fleet.depthTolerance }],
    },
    life,
  };
}

function rateFactor(plan: FleetPlan, random: Random): number {
  switch (plan.rates) {
    case 'lognormal':
      return Math.exp(plan.spread * random.normal());
    case 'gamma':
      return random.gamma(plan.spread);
    case 'normal': {
      for (;;) {
        const factor = 1 + plan.spread * random.normal();
        if (factor > 0.05) return factor;
      }
    }
  }
}

function push(
  rows: { unit: number[]; exposure: number[]; kind: number[]; value: number[] },
  unit: number,
  exposure: number,
  kind: number,
  value: number,
): void {
  rows.unit.push(unit);
  rows.exposure.push(exposure);
  rows.kind.push(kind);
  rows.value.push(value);
}
