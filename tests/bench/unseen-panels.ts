// How honest is what a run lends to a panel nobody has seen? Leave-panels-out on synthetic runs, a road of its own: panels of known
// life are drawn, some are never read, and the forecasts for those are held against the lives drawn: of each alone, and of the
// first of all hidden ones of a conveyor, which is what the table of decisions counts in.
// npx tsx tests/bench/unseen-panels.ts [fleets] [seed]

import { chanceOfFirst } from '../../src/domain/wear/forecast-first.js';
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
const hiddenOf = 4;
const fitted = 12;
const depth = 9;
const looks = [1500, 3000, 4500, 6000];
const gauge = 0.3;

interface Tally {
  forecasts: number;
  early: number;
  held80: number;
  held90: number;
}

/** `spread`: of panels of one run, as a ratio; `along`: how much faster the far end wears, ln. */
function study(spread: number, along: number): { single: Tally; foretold: number[]; happened: number[] } {
  const single: Tally = { forecasts: 0, early: 0, held80: 0, held90: 0 };
  const foretold = [0, 0, 0, 0, 0];
  const happened = [0, 0, 0, 0, 0];
  const counts = [0, 0, 0, 0, 0];
  for (let f = 0; f < fleets; f++) {
    const unit: number[] = [];
    const exposure: number[] = [];
    const value: number[] = [];
    const day: number[] = [];
    const lives: number[] = [];
    const hidden = new Set<number>();
    for (let c = 0; c < conveyors; c++) {
      const middle = Math.log(0.001 * Math.exp(0.15 * normal()));
      while ([...hidden].filter((u) => Math.floor(u / panels) === c).length < hiddenOf)
        hidden.add(c * panels + Math.floor(uniform() * panels));
      for (let p = 0; p < panels; p++) {
        const u = c * panels + p;
        const rate = Math.exp(middle + spread * normal() + along * (p / (panels - 1) - 0.5));
        lives.push(depth / rate);
        if (!hidden.has(u))
          looks.forEach((at, k) => {
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
    const now = looks.at(-1) ?? 0;
    for (let c = 0; c < conveyors; c++) {
      // A hidden panel that is past its limit today counts too: nobody knows of it.
      const own = [...hidden].filter((u) => Math.floor(u / panels) === c);
      for (const u of own) {
        const forecast = forecastUnit(fit, u, depth);
        if (forecast.kind !== 'life') continue;
        const { q05, q10, q90, q95 } = forecast.quantiles;
        const life = lives[u] ?? 0;
        single.forecasts += 1;
        if (life < q05) single.early += 1;
        if (life >= q10 && life <= q90) single.held80 += 1;
        if (life >= q05 && life <= q95) single.held90 += 1;
      }
      const first = chanceOfFirst(
        fit,
        own.map((u) => ({ unit: u, now, depth })),
      );
      if (first.kind !== 'life') continue;
      for (const ahead of [200, 700, 1500, 2500]) {
        const chance = first.reachedBy(ahead);
        const bin = Math.min(4, Math.floor(chance * 5));
        counts[bin] = (counts[bin] ?? 0) + 1;
        foretold[bin] = (foretold[bin] ?? 0) + chance;
        happened[bin] = (happened[bin] ?? 0) + (own.some((u) => (lives[u] ?? 0) <= now + ahead) ? 1 : 0);
      }
    }
  }
  return {
    single,
    foretold: foretold.map((sum, i) => sum / Math.max(1, counts[i] ?? 1)),
    happened: happened.map((sum, i) => sum / Math.max(1, counts[i] ?? 1)),
  };
}

const percent = (share: number): string => (100 * share).toFixed(0);
console.log(`${fleets} fleets of ${conveyors} conveyors, ${hiddenOf} of ${panels} panels never read`);
console.log(
  '| panels of a run differ by | along the run | lives before q05 | 80 % held | 90 % held | first of the hidden: foretold → happened, % |',
);
console.log('| ---: | ---: | ---: | ---: | ---: | --- |');
for (const [spread, along] of [
  [0.1, 0],
  [0.2, 0],
  [0.35, 0],
  [0.2, 0.5],
] as const) {
  const { single, foretold, happened } = study(spread, along);
  const share = (n: number): string => ((100 * n) / single.forecasts).toFixed(1);
  console.log(
    `| ${percent(spread)} % | ${along === 0 ? 'even' : `× ${Math.exp(along).toFixed(2)}`} | ${share(single.early)} | ${share(single.held80)} | ${share(single.held90)} | ${foretold.map((at, i) => `${percent(at)} → ${percent(happened[i] ?? 0)}`).join(', ')} |`,
  );
}
