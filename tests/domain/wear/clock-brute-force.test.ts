// Two points, two looks: the wear clock against brute force. Everything that is uncertain is drawn from its prior millions of times
// and weighed by the readings, with no mode, no Laplace, no message. Chance of a change and quantiles of life must agree; the draws
// are made by tests/reference/clock-brute-force.ts, since so many take a minute.
import { describe, expect, it } from 'vitest';
import { ReadingKind } from '../../../src/domain/units/reading-kind.js';
import { fitWear } from '../../../src/domain/wear/fit.js';
import { forecastUnit } from '../../../src/domain/wear/forecast.js';
import { reduceReadings } from '../../../src/domain/wear/reduce.js';

const looks = [1500, 3000];
const gauge = 0.4;
const limit = 9;
const expected = { depth: 9, exposure: 9000, spread: 0.4 };

interface Case {
  readonly name: string;
  /** From tests/reference/clock-brute-force.ts, 1.5 million draws. */
  readonly brute: {
    readonly changed: number;
    readonly q10: number;
    readonly q50: number;
    readonly q90: number;
  };
  /** Wear read, by point and look. */
  readonly read: readonly (readonly number[])[];
  /** The age at which the layer from 6 mm on shows at the first point. */
  readonly showsAt?: number;
}

const cases: readonly Case[] = [
  {
    name: 'steady',
    read: [
      [1.6, 3.1],
      [1.2, 2.6],
    ],
    brute: { changed: 0.0564, q10: 7122.5, q50: 8869.9, q90: 11364.7 },
  },
  {
    name: 'a doubling',
    read: [
      [1.5, 4.7],
      [1.3, 3.9],
    ],
    brute: { changed: 0.2305, q10: 4782.2, q50: 5885.6, q90: 7549.2 },
  },
  {
    name: 'a colour sooner than the thicknesses say',
    read: [
      [1.6, 3.1],
      [1.2, 2.6],
    ],
    showsAt: 5000,
    brute: { changed: 0.094, q10: 5967.5, q50: 6965.2, q90: 7987.7 },
  },
];

/** 25, 50 and 75 % points of the first point's life, and the chance of a change since the first look. */
function byTheModel({ read, showsAt }: Pick<Case, 'read' | 'showsAt'>) {
  const later = showsAt === undefined ? [] : [showsAt];
  const units = {
    count: 2,
    fitted: [12, 12],
    build: [0, 0],
    builds: [{ depths: showsAt ? [6, 12] : [12], tolerance: showsAt ? 0.05 : 0 }],
    clock: { conveyor: [0, 0], start: [0, 0], product: [undefined] },
  };
  const readings = {
    unit: [0, 0, 1, 1, ...later.map(() => 0)],
    exposure: [...looks, ...looks, ...later],
    kind: [...new Array<number>(4).fill(ReadingKind.thickness), ...later.map(() => ReadingKind.colour)],
    value: [...read.flat().map((w) => 12 - w), ...later.map(() => 1)],
    day: [90, 180, 90, 180, ...later.map(() => 300)],
    error: [gauge, gauge, gauge, gauge, ...later.map(() => gauge)],
  };
  const fit = fitWear(reduceReadings(readings, units), [], { expectedLife: expected });
  if (fit.kind !== 'fitted') throw new Error(fit.why);
  const forecast = forecastUnit(fit, 0, limit, { depthSpread: 0 });
  const conveyor = fit.change?.conveyors[0];
  if (forecast.kind !== 'life' || conveyor?.kind !== 'asked') throw new Error('no forecast');
  return { quantiles: forecast.quantiles, changed: conveyor.chance };
}

describe('two points and two looks, against draws from the priors weighed by the readings', () => {
  it.each(cases)('$name', ({ brute, ...example }) => {
    const ours = byTheModel(example);
    expect(Math.abs(ours.changed - brute.changed)).toBeLessThan(0.02);
    for (const level of ['q10', 'q50', 'q90'] as const)
      expect(Math.abs(Math.log(ours.quantiles[level] / brute[level]))).toBeLessThan(0.02);
  });
});
