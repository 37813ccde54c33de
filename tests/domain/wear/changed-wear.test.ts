// Wear whose rate changes, held against an independent sampler: JAGS 4.3 through rjags, run offline by
// tests/reference/changed-wear.R, which also tells the model. Life to 9 mm by quantiles, and the chances of each change.

import { readFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import { ReadingKind } from '../../../src/domain/units/reading-kind.js';
import type * as Priors from '../../../src/domain/wear/clock/priors.js';
import type { ReadingColumns, UnitColumns } from '../../../src/domain/wear/columns.js';
import { fitWear, type WearFit } from '../../../src/domain/wear/fit.js';
import { forecastUnit } from '../../../src/domain/wear/forecast.js';
import { reduceReadings } from '../../../src/domain/wear/reduce.js';

// The sampler was run with looks that read off by 0.35 of the gauge's error, before that prior was widened: the integrals are held
// against it at its own priors.
vi.mock('../../../src/domain/wear/clock/priors.js', async (original) => {
  const { clockPriors } = await original<typeof Priors>();
  return { clockPriors: { ...clockPriors, lookBias: 0.35 } };
});

interface Drawn {
  readonly value: readonly number[];
  /** Monte-Carlo error, one standard deviation. */
  readonly error: readonly number[];
}
interface ReferenceEstate {
  readonly name: string;
  readonly looks: readonly number[];
  readonly wear: readonly (readonly (number | null)[])[];
  readonly conveyor: readonly number[];
  readonly place: readonly (readonly number[])[] | null;
  /** Unit from 1, look from 1, depth, reached. */
  readonly colours: readonly (readonly [number, number, number, number])[] | null;
  readonly units: readonly { readonly logLife: Drawn }[];
  readonly changes: readonly {
    readonly firstInterval: readonly number[];
    readonly chance: readonly number[];
    readonly error: readonly number[];
  }[];
}
const reference = JSON.parse(
  readFileSync(new URL('./changed-wear.fixture.json', import.meta.url), 'utf8'),
) as {
  readonly gauge: number;
  readonly depth: number;
  readonly expectedLife: { readonly depth: number; readonly exposure: number; readonly spread: number };
  readonly estates: readonly ReferenceEstate[];
};

const fitted = 12;

function fitOf(estate: ReferenceEstate): WearFit {
  const rows = [
    ...estate.wear.flatMap((own, unit) =>
      own.flatMap((wear, look) =>
        wear === null ? [] : [{ unit, look, kind: ReadingKind.thickness, value: fitted - wear }],
      ),
    ),
    ...(estate.colours ?? []).map(([unit, look, , reached]) => ({
      unit: unit - 1,
      look: look - 1,
      kind: ReadingKind.colour,
      value: reached,
    })),
  ];
  const readings: ReadingColumns = {
    unit: rows.map((r) => r.unit),
    exposure: rows.map((r) => estate.looks[r.look] ?? NaN),
    kind: rows.map((r) => r.kind),
    value: rows.map((r) => r.value),
    day: rows.map((r) => 100 * (r.look + 1)),
  };
  const count = estate.wear.length;
  const conveyors = Math.max(...estate.conveyor) + 1;
  const units: UnitColumns = {
    count,
    fitted: new Array<number>(count).fill(fitted),
    build: new Array<number>(count).fill(0),
    builds: [{ depths: [6, 12], tolerance: 0.05 }],
    clock: {
      conveyor: estate.conveyor,
      start: new Array<number>(count).fill(0),
      product: new Array<string | undefined>(conveyors).fill(conveyors > 1 ? 'the same' : undefined),
      ...(estate.place && { along: estate.place.map(([z]) => 0.5 + (z ?? NaN)) }),
    },
  };
  const fit = fitWear(reduceReadings(readings, units, { gaugeError: reference.gauge }), [], {
    gaugeError: reference.gauge,
    expectedLife: reference.expectedLife,
    outliers: 'keep',
  });
  if (fit.kind !== 'fitted') throw new Error(fit.why);
  return fit;
}

describe('wear whose rate changes, against JAGS', () => {
  for (const estate of reference.estates) {
    const fit = fitOf(estate);

    it(`${estate.name}: quantiles of life within 0.5 % and three Monte-Carlo errors`, () => {
      estate.units.forEach(({ logLife }, unit) => {
        const forecast = forecastUnit(fit, unit, reference.depth, { depthSpread: 0 });
        if (forecast.kind !== 'life') throw new Error(forecast.kind);
        const { q05, q10, q50, q90, q95 } = forecast.quantiles;
        [q05, q10, q50, q90, q95].forEach((life, k) => {
          const away = Math.abs(Math.log(life) - (logLife.value[k] ?? NaN));
          expect(away, `unit ${unit}, quantile ${k}`).toBeLessThan(0.005 + 3 * (logLife.error[k] ?? NaN));
        });
      });
    });

    it(`${estate.name}: chances of a change since each look within 0.03`, () => {
      estate.changes.forEach(({ firstInterval, chance, error }, conveyor) => {
        const clock = fit.change?.conveyors.find((c) => c.conveyor === conveyor);
        if (clock?.kind !== 'asked') throw new Error('no clock');
        firstInterval.forEach((interval, k) => {
          // A change whose first interval is the k-th came after the look before it; the last one stands for none.
          const since = clock.since.find((s) => s.day === 100 * (interval - 1));
          if (interval > estate.looks.length) return;
          const away = Math.abs((since?.chance ?? NaN) - (chance[k] ?? NaN));
          expect(away).toBeLessThan(0.03 + 2 * (error[k] ?? NaN));
        });
      });
    });
  }
});
