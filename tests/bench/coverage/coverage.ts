// Prints the coverage table. Run from the project's top folder: npx tsx tests/bench/coverage/coverage.ts [seed] [effort]
// `effort` multiplies the number of fleets (1: about a minute on two cores; the table in the developers' guide is made with 4).
import type { StudyPlan } from './study.js';
import { study } from './study.js';
import { plainFleet } from '../../domain/wear/fleet.js';

const seed = Number(process.argv[2] ?? Date.now() % 1_000_000);
const effort = Number(process.argv[3] ?? 1);

const none = { dutyNoise: 'none' } as const;
const plans: readonly (readonly [string, Omit<StudyPlan, 'fleets'>])[] = [
  [
    'parameters drawn from the priors, duty known to be even',
    { plan: plainFleet, options: none, drawParameters: true },
  ],
  [
    'all parameters drawn from the priors',
    { plan: { ...plainFleet, dutyNoise: 0.25 }, drawParameters: true },
  ],
  ['lognormal rates', { plan: plainFleet }],
  ['gamma rates', { plan: { ...plainFleet, rates: 'gamma' } }],
  ['normal rates', { plan: { ...plainFleet, rates: 'normal' } }],
  ['colours only', { plan: { ...plainFleet, colours: 1 } }],
  ['duty varies by 35 %', { plan: { ...plainFleet, dutyNoise: 0.35 } }],
  ['3 % of readings stray', { plan: { ...plainFleet, strays: 0.03 } }],
  ['duty 35 % and 3 % stray', { plan: { ...plainFleet, dutyNoise: 0.35, strays: 0.03 } }],
];
const sizes: readonly (readonly [number, number])[] = [
  [3, 400],
  [8, 150],
  [20, 60],
  [200, 8],
  [2000, 1],
];

console.log(`seed ${seed}, effort ${effort}\n`);
console.log(
  '| fleet | points | forecasts | 80 % held | 90 % held | score | two-point ±25 % | line through origin |',
);
console.log('| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |');
const percent = (share: number, error: number): string =>
  `${(100 * share).toFixed(1)} ± ${(100 * error).toFixed(1)}`;
for (const [name, { plan, ...rest }] of plans) {
  for (const [points, fleets] of sizes) {
    const s = study(
      { plan: { ...plan, points }, fleets: Math.max(1, Math.round(fleets * effort)), ...rest },
      seed,
    );
    const row =
      s.score.compared > 0
        ? [
            s.score.ours.toFixed(2),
            `${s.score.twoPoint.toFixed(2)} (${(100 * s.heldTwoPoint).toFixed(0)} %)`,
            `${s.score.line.toFixed(2)} (${(100 * s.heldLine).toFixed(0)} %)`,
          ]
        : ['', '', ''];
    console.log(
      `| ${name} | ${points} | ${s.forecasts} | ${percent(s.held80, s.error80)} | ${percent(s.held90, s.error90)} | ${row.join(' | ')} |`,
    );
  }
}
