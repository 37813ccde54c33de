// How honest is the interval of a spot that was read once, long ago, beside points that are read at every look? Lives are drawn, the
// spots give one early reading with the declared gauge, and their forecasts are held against the lives drawn.
// npx tsx tests/bench/spots-read-once.ts [fleets] [seed] [gauge]

import {
  conveyors,
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
const gauge = Number(process.argv[4] ?? 0.2);
const onceOf = 2;

/** `spread`: of panels of one run, as a ratio; `along`: how much faster the far end wears, ln. */
function study(spread: number, along: number): { single: Tally; width: number } {
  const single = emptyTally();
  for (let f = 0; f < fleets; f++) {
    const fleet = drawnFleet(draw, { spread, along, gauge, fewOf: onceOf, fewLooks: looks.slice(0, 1) });
    for (let c = 0; c < conveyors; c++) for (const u of fleet.few(c)) holdAgainst(single, fleet, u);
  }
  return { single, width: single.width / single.forecasts };
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
