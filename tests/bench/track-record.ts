// How often does the track record tell a miss, in steady fleets and in changed ones? Points of one conveyor, four looks 1500 h apart,
// gauge ± 0.4 mm, rates 0.8 mm/1000 h give or take 30 % between points; the shared wear of an interval varies by 5 %, a whole look
// reads off by 0.14 mm.
//
//   npx tsx tests/bench/track-record.ts [fleets, default 200] [seed]

import { trackRecord } from '../../src/domain/wear/track-record.js';
import { seeded, type Random } from '../domain/wear/fleet.js';
import { columnsOf, expectedLife, unitsOf, type Seen } from '../domain/wear/kit.js';

interface Scenario {
  readonly name: string;
  readonly points: number;
  /** Wear of the four intervals over the first. */
  readonly pace: readonly number[];
  /** One standard deviation of the shared wear of an interval. */
  readonly shared?: number;
}

const scenarios: readonly Scenario[] = [
  { name: 'steady', points: 12, pace: [1, 1, 1, 1] },
  { name: 'steady', points: 40, pace: [1, 1, 1, 1] },
  { name: '×2 in the last interval', points: 12, pace: [1, 1, 1, 2] },
  { name: '×2 two intervals ago', points: 12, pace: [1, 1, 2, 2] },
  { name: '×2 in the last interval', points: 3, pace: [1, 1, 1, 2] },
  { name: 'wear ~ hours^1.3', points: 12, pace: [1, 1.46, 1.72, 1.93] },
  { name: 'shared duty varies by 35 %', points: 12, pace: [1, 1, 1, 1], shared: 0.35 },
];

const fleets = Number(process.argv[2] ?? 200);
const random = seeded(Number(process.argv[3] ?? 20261126));

console.log(
  `${fleets} fleets a line\n| scenario | points | a miss told | the last look alone would tell | hidden below (middle) |`,
);
console.log('| --- | ---: | ---: | ---: | ---: |');
for (const scenario of scenarios) {
  let told = 0;
  let alone = 0;
  const hidden: number[] = [];
  for (let fleet = 0; fleet < fleets; fleet++) {
    const { looks } = trackRecord({
      readings: columnsOf(draw(scenario, random)),
      columns: unitsOf(scenario.points),
      pools: [],
      options: { expectedLife, gaugeError: 0.4 },
      conveyor: new Array<number>(scenario.points).fill(0),
      limit: new Array<number>(scenario.points).fill(9),
      mostFits: 4,
    });
    if (looks.some((l) => l.told)) told++;
    if (looks[0]?.told === true) alone++;
    hidden.push(looks[0]?.pooled.hidden ?? NaN);
  }
  hidden.sort((a, b) => a - b);
  const percent = (count: number): string => `${((100 * count) / fleets).toFixed(1)} %`;
  console.log(
    `| ${scenario.name} | ${scenario.points} | ${percent(told)} | ${percent(alone)} | ${(100 * (hidden[fleets >> 1] ?? NaN)).toFixed(0)} % |`,
  );
}

function draw({ points, pace, shared = 0.05 }: Scenario, { normal }: Random): readonly Seen[] {
  const conveyor = pace.map((p) => p * Math.max(0, 1 + shared * normal()));
  const bias = pace.map(() => 0.14 * normal());
  const rows: Seen[] = [];
  for (let unit = 0; unit < points; unit++) {
    const rate = 8e-4 * Math.exp(0.3 * normal());
    let wear = 0;
    conveyor.forEach((p, k) => {
      wear += rate * 1500 * p * Math.max(0, 1 + 0.15 * normal());
      const left = 12 - wear + (bias[k] ?? 0) + 0.4 * normal();
      if (left > 0.5) rows.push({ unit, at: 1500 * (k + 1), day: 180 * (k + 1), saw: left });
    });
  }
  return rows;
}
