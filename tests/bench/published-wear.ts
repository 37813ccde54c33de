// Published data as rolling forecasts: at each look the records until then are fitted, and what came after is held against the
// forecast. A record of what comes out, good or bad; nothing is asserted and nothing tuned. With the wear clock and without.
//
//   npx tsx tests/bench/published-wear.ts

import type { UnitColumns } from '../../src/domain/wear/columns.js';
import { fitWear, type WearFit, type WearOptions } from '../../src/domain/wear/fit.js';
import { forecastUnit } from '../../src/domain/wear/forecast.js';
import { reduceReadings } from '../../src/domain/wear/reduce.js';
import { wearAt } from '../../src/domain/wear/wear-at.js';
import { ReadingKind } from '../../src/domain/units/reading-kind.js';
import { degradation, degradationHours } from '../domain/wear/fixtures/degradation.js';
import { crackLengths, cyclesBetween, firstLength } from '../domain/wear/fixtures/fatigue.js';

interface Story {
  /** Wear, mm, by unit and look. */
  readonly wear: readonly (readonly number[])[];
  readonly exposure: readonly number[];
  /** Conveyor of each unit, and whether all carry the same. */
  readonly conveyor: readonly number[];
  readonly gauge: number;
  readonly options: WearOptions;
}

const thick = 100;

function fitUpTo(story: Story, looks: number, clocked: boolean): WearFit {
  const { wear, exposure, conveyor } = story;
  const rows = wear.flatMap((own, unit) =>
    own.slice(0, looks).map((w, k) => ({ unit, x: exposure[k] ?? NaN, left: thick - w, day: 100 * (k + 1) })),
  );
  const conveyors = Math.max(...conveyor) + 1;
  const columns: UnitColumns = {
    count: wear.length,
    fitted: wear.map(() => thick),
    build: wear.map(() => 0),
    builds: [{ depths: [] }],
    ...(clocked && {
      clock: {
        conveyor,
        start: wear.map(() => 0),
        product: Array.from({ length: conveyors }, () => undefined),
      },
    }),
  };
  const fit = fitWear(
    reduceReadings(
      {
        unit: rows.map((r) => r.unit),
        exposure: rows.map((r) => r.x),
        kind: rows.map(() => ReadingKind.thickness),
        value: rows.map((r) => r.left),
        day: rows.map((r) => r.day),
      },
      columns,
      { gaugeError: story.gauge },
    ),
    conveyors > 1 ? [{ name: 'conveyor', level: [...conveyor] }] : [],
    { gaugeError: story.gauge, ...story.options },
  );
  if (fit.kind !== 'fitted') throw new Error(fit.why);
  return fit;
}

function share(held: number, of: number): string {
  return of === 0 ? '–' : `${((100 * held) / of).toFixed(0)} % (${held} of ${of})`;
}

/** Relative length 1.6 stands for 9 mm of wear, a million cycles for 100,000 h; looks every 20,000 cycles. */
function crack(): void {
  const lengths = crackLengths.map((own) => own.map((length) => 15 * (length / firstLength - 1)));
  const limit = 9;
  const lives = lengths.map((wear) => {
    const at = wear.findIndex((w) => w >= limit);
    const [a, b] = [wear[at - 1], wear[at]];
    return a === undefined || b === undefined
      ? Infinity
      : (cyclesBetween / 10) * (at - 1 + (limit - a) / (b - a));
  });
  const story: Story = {
    wear: lengths.map((own) => own.filter((_, k) => k > 0 && k % 2 === 0)),
    exposure: [1, 2, 3, 4, 5, 6].map((k) => (k * cyclesBetween) / 5),
    conveyor: lengths.map(() => 0),
    gauge: 0.15,
    options: { expectedLife: { depth: limit, exposure: 12_000, spread: 0.4 } },
  };
  console.log('\nCrack growth, 21 paths (nlme Fatigue): life to a relative length of 1.6');
  console.log(
    '| looks known | model | 80 % held | 90 % held | lives before the 5 % quantile | middle over life |',
  );
  console.log('| ---: | --- | ---: | ---: | ---: | ---: |');
  for (const looks of [2, 3, 4])
    for (const clocked of [false, true]) {
      const fit = fitUpTo(story, looks, clocked);
      let [held80, held90, early, of, ratio] = [0, 0, 0, 0, 0];
      lives.forEach((life, unit) => {
        const known = story.exposure[looks - 1] ?? 0;
        const forecast = forecastUnit(fit, unit, limit);
        // A life that the test did not see the end of can still be told to be no early one.
        if (forecast.kind !== 'life' || life <= known) return;
        const { q05, q10, q50, q90, q95 } = forecast.quantiles;
        const end = life === Infinity ? 12_000 : life;
        if (life === Infinity && q90 < end) of += 1;
        if (life === Infinity) return;
        of += 1;
        if (life >= q10 && life <= q90) held80 += 1;
        if (life >= q05 && life <= q95) held90 += 1;
        if (life < q05) early += 1;
        ratio += Math.log(q50 / life);
      });
      const seen = lives.filter(
        (life) => life !== Infinity && life > (story.exposure[looks - 1] ?? 0),
      ).length;
      console.log(
        `| ${looks} | ${clocked ? 'with wear clock' : 'straight'} | ${share(held80, of)} | ${share(held90, of)} | ${share(early, of)} | ${Math.exp(ratio / seen).toFixed(2)} |`,
      );
    }
}

/** Percent as millimetres; each temperature a conveyor. The change at 1000 h foretold from those at 200 and 500 h. */
function percentChange(): void {
  const temperatures = [...new Set(degradation.map((d) => d.celsius))];
  const story: Story = {
    wear: degradation.map((d) => d.percent.slice(0, 2)),
    exposure: degradationHours,
    conveyor: degradation.map((d) => temperatures.indexOf(d.celsius)),
    gauge: 0.3,
    options: {},
  };
  console.log(
    '\nDegradation, 15 units (NIST/SEMATECH e-Handbook 8.4.2.3): change at 1000 h from those at 200 and 500 h',
  );
  console.log('| model | 80 % held | 90 % held | more than foretold | found over foretold, middle |');
  console.log('| --- | ---: | ---: | ---: | ---: |');
  for (const clocked of [false, true]) {
    const fit = fitUpTo(story, 2, clocked);
    const places = degradation.map(({ percent }, unit) => {
      const { mean, spread } = wearAt(fit, unit, 1000);
      const found = percent[2] ?? NaN;
      return { z: (found - mean) / Math.hypot(spread, story.gauge), ratio: found / mean };
    });
    const within = (z: number): number => places.filter((p) => Math.abs(p.z) <= z).length;
    const ratios = places.map((p) => p.ratio).sort((a, b) => a - b);
    console.log(
      `| ${clocked ? 'with wear clock' : 'straight'} | ${share(within(1.2816), 15)} | ${share(within(1.6449), 15)} | ${places.filter((p) => p.z > 0).length} of 15 | ${(ratios[7] ?? NaN).toFixed(2)} |`,
    );
  }
}

crack();
percentChange();
