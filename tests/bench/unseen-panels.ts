// How honest is what a run lends to a panel nobody has seen? Leave-panels-out on synthetic runs, a road of its own: panels of known
// life are drawn, some are never read, and the forecasts for those are held against the lives drawn: of each alone, and of the
// first of all hidden ones of a conveyor, which is what the table of decisions counts in.
// npx tsx tests/bench/unseen-panels.ts [fleets] [seed]

import { chanceOfFirst } from '../../src/domain/wear/forecast-first.js';
import {
  conveyors,
  depth,
  drawFrom,
  drawnFleet,
  emptyTally,
  holdAgainst,
  looks,
  panels,
  type Tally,
} from './drawn-fleets.js';

const fleets = Number(process.argv[2] ?? 60);
const draw = drawFrom(Number(process.argv[3] ?? 20261126));
const gauge = 0.3;
const hiddenOf = 4;

/** `spread`: of panels of one run, as a ratio; `along`: how much faster the far end wears, ln. */
function study(spread: number, along: number): { single: Tally; foretold: number[]; happened: number[] } {
  const single = emptyTally();
  const foretold = [0, 0, 0, 0, 0];
  const happened = [0, 0, 0, 0, 0];
  const counts = [0, 0, 0, 0, 0];
  for (let f = 0; f < fleets; f++) {
    const fleet = drawnFleet(draw, { spread, along, gauge, fewOf: hiddenOf, fewLooks: [] });
    const { fit, lives } = fleet;
    if (fit.kind !== 'fitted') continue;
    const now = looks.at(-1) ?? 0;
    for (let c = 0; c < conveyors; c++) {
      // A hidden panel that is past its limit today counts too: nobody knows of it.
      const own = fleet.few(c);
      for (const u of own) holdAgainst(single, fleet, u);
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
