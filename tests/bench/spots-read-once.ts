// How honest is the interval of a spot that was read once, long ago, beside points that are read at every look? Lives are drawn, the
// spots give one early reading with the declared gauge, and their forecasts are held against the lives drawn.
// npx tsx tests/bench/spots-read-once.ts [fleets] [seed]

import { fitWear } from '../../src/domain/wear/fit.js';
import { forecastUnit } from '../../src/domain/wear/forecast.js';
import { reduceReadings } from '../../src/domain/wear/reduce.js';
import { ReadingKind } from '../../src/domain/units/reading-kind.js';

const fleets = Number(process.argv[2] ?? 60);
let state = Number(process.argv[3] ?? 20261126);
const uniform = (): number => {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return (state + 0.5) / 4294967296;
};
const normal = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());

const conveyors = 3;
const panels = 10;
const onceOf = 2;
const fitted = 12;
const depth = 9;
const looks = [1500, 3000, 4500, 6000];
const gauge = Number(process.argv[4] ?? 0.2);

interface Tally {
  forecasts: number;
  early: number;
  held80: number;
  held90: number;
}

/** `spread`: of panels of one run, as a ratio; `along`: how much faster the far end wears, ln. */
function study(spread: number, along: number): { single: Tally; width: number } {
  const single: Tally = { forecasts: 0, early: 0, held80: 0, held90: 0 };
  let width = 0;
  for (let f = 0; f < fleets; f++) {
    const unit: number[] = [];
    const exposure: number[] = [];
    const value: number[] = [];
    const day: number[] = [];
    const lives: number[] = [];
    const once = new Set<number>();
    for (let c = 0; c < conveyors; c++) {
      const middle = Math.log(0.001 * Math.exp(0.15 * normal()));
      while ([...once].filter((u) => Math.floor(u / panels) === c).length < onceOf)
        once.add(c * panels + Math.floor(uniform() * panels));
      for (let p = 0; p < panels; p++) {
        const u = c * panels + p;
        const rate = Math.exp(middle + spread * normal() + along * (p / (panels - 1) - 0.5));
        lives.push(depth / rate);
        (once.has(u) ? looks.slice(0, 1) : looks).forEach((at, k) => {
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
    if (fit.kind !== 'fitted') continue;
    for (let c = 0; c < conveyors; c++) {
      const own = [...once].filter((u) => Math.floor(u / panels) === c);
      for (const u of own) {
        const forecast = forecastUnit(fit, u, depth);
        if (forecast.kind !== 'life') continue;
        const { q05, q10, q90, q95 } = forecast.quantiles;
        const life = lives[u] ?? 0;
        single.forecasts += 1;
        width += (q90 - q10) / life;
        if (life < q05) single.early += 1;
        if (life >= q10 && life <= q90) single.held80 += 1;
        if (life >= q05 && life <= q95) single.held90 += 1;
      }
    }
  }
  return { single, width: width / single.forecasts };
}

const percent = (share: number): string => (100 * share).toFixed(0);
console.log(
  `${fleets} fleets of ${conveyors} conveyors, ${onceOf} of ${panels} read once, at ${looks[0] ?? 0} h, gauge ${gauge} mm`,
);
console.log(
  '| points differ by | along | lives before q05 | 80 % held | 90 % held | width of 80 % over the life |',
);
console.log('| ---: | ---: | ---: | ---: | ---: | ---: |');
for (const [spread, along] of [
  [0.03, 0],
  [0.1, 0],
  [0.2, 0],
  [0.35, 0],
] as const) {
  const { single, width } = study(spread, along);
  const share = (n: number): string => ((100 * n) / single.forecasts).toFixed(1);
  console.log(
    `| ${percent(spread)} % | ${along} | ${share(single.early)} | ${share(single.held80)} | ${share(single.held90)} | ${percent(width)} % |`,
  );
}
