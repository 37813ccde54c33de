// Prints the table of wear that changes. Run from the project's top folder: npx tsx tests/bench/coverage/change.ts [fleets] [seed] [name] [quick]
import type { Tally } from './change-study.js';
import { changeStudy } from './change-study.js';
import type { Scenario } from './changing.js';

const fleets = Number(process.argv[2] ?? 20);
const seed = Number(process.argv[3] ?? 20261126);
const only = process.argv[4];
/** `quick` leaves the straight model out: it takes as long again. */
const straightToo = process.argv[5] !== 'quick';

const usual = { conveyors: 3, points: 24, looks: 4 } as const;
const scenarios: readonly (Scenario & { readonly goal: string })[] = [
  { ...usual, name: 'steady', goal: 'early ≤ 5; 80 holds 80–91; width ≤ 1.18; score ≤ 1.08; told ≤ 3' },
  {
    ...usual,
    name: 'x2 two ago, all',
    change: { factor: 2, since: 2, who: 'all' },
    goal: 'early ≤ 6; told ≥ 95',
  },
  {
    ...usual,
    name: 'x2 two ago, one',
    change: { factor: 2, since: 2, who: 'one' },
    goal: 'early ≤ 6; told ≥ 85',
  },
  {
    ...usual,
    name: 'x2 last, all',
    change: { factor: 2, since: 1, who: 'all' },
    goal: 'early ≤ 10; told ≥ 90',
  },
  {
    ...usual,
    name: 'x2 last, one',
    change: { factor: 2, since: 1, who: 'one' },
    goal: 'early ≤ 12; told ≥ 55',
  },
  { ...usual, name: '/2 two ago', change: { factor: 0.5, since: 2, who: 'all' }, goal: '' },
  { ...usual, name: 'hours^1.3', power: 1.3, goal: 'early ≤ 9; faster ≥ 80' },
  { ...usual, name: 'last look 0.3 thick', bias: 0.3, goal: 'early ≤ 10' },
  { ...usual, name: 'mixed gauges', gauges: [0.2, 1], goal: 'early ≤ 6 each; each holds 76–90' },
  { ...usual, name: 'trend, end unseen', along: 1, goal: 'early ≤ 15 at the end' },
  {
    conveyors: 1,
    points: 3,
    looks: 4,
    name: 'pool of 3, even',
    evenDuty: true,
    pointNoise: 0,
    sharedNoise: 0,
    goal: 'early ≤ 5; 80 holds 77–84',
  },
  { conveyors: 1, points: 3, looks: 4, name: 'pool of 3', goal: '' },
  { ...usual, name: 'steady, a third colours', colours: 0.33, goal: '' },
  { ...usual, name: 'colours only', colours: 1, goal: '' },
  { ...usual, name: 'one look only', looks: 1, goal: '80 holds 80' },
  { ...usual, name: 'one look only, duty 25 %', looks: 1, pointNoise: 0.25, goal: '80 holds 80' },
  { ...usual, name: 'duty 35 %, each point', pointNoise: 0.35, goal: '' },
  { ...usual, name: 'shared duty 35 %', sharedNoise: 0.35, goal: '' },
  {
    ...usual,
    name: 'shared duty 35 %, loads known',
    sharedNoise: 0.35,
    loads: true,
    goal: 'told falsely less than in a third',
  },
  { conveyors: 1, points: 8, looks: 4, name: 'one conveyor of 8, steady', goal: '' },
  {
    conveyors: 1,
    points: 8,
    looks: 4,
    name: 'one conveyor of 8, x2 last',
    change: { factor: 2, since: 1, who: 'all' },
    goal: '',
  },
];

/** The scenario of that name, or all whose names contain it. */
const chosen = (name: string): boolean =>
  scenarios.some((s) => s.name === only) ? name === only : name.includes(only ?? '');

const share = (t: Tally, n: number): string =>
  t.forecasts === 0 ? '–' : ((100 * n) / t.forecasts).toFixed(1);
console.log(`${fleets} fleets a scenario, seed ${seed}; in brackets the straight model on the same fleets\n`);
console.log(
  '| scenario | to reach | forecasts | before q05 | 80 % held | 90 % held | width ×, score × | off | told (falsely) | with age | ms |',
);
console.log('| --- | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |');
for (const { goal, ...scenario } of scenarios) {
  if (only && !chosen(scenario.name)) continue;
  const s = changeStudy(scenario, fleets, seed, straightToo);
  const row = (name: string, c: Tally, t: Tally | undefined, more: string): void =>
    console.log(
      `| ${name} | ${goal} | ${c.forecasts} | ${share(c, c.early)}${t ? ` (${share(t, t.early)})` : ''} | ${share(c, c.held80)}${t ? ` (${share(t, t.held80)})` : ''} | ${share(c, c.held90)}${t ? ` (${share(t, t.held90)})` : ''} | ${t ? `${(c.width / c.forecasts / (t.width / t.forecasts)).toFixed(2)}, ${(c.score / c.forecasts / (t.score / t.forecasts)).toFixed(2)}` : ''} | ${(c.off / c.forecasts).toFixed(3)} | ${more} |`,
    );
  const { told, fasterWithAge: age, milliseconds: ms } = s;
  row(
    scenario.name,
    s.clock,
    straightToo ? s.straight : undefined,
    `${told.ofChanged > 0 ? ((100 * told.changed) / told.ofChanged).toFixed(0) : '–'} (${told.ofSteady > 0 ? ((100 * told.falsely) / told.ofSteady).toFixed(1) : '–'}) | ${((100 * age.told) / Math.max(1, age.of)).toFixed(0)} | ${(ms.clock / fleets).toFixed(0)} (${(ms.straight / fleets).toFixed(0)})`,
  );
  if (s.unseen.forecasts > 0)
    row(`${scenario.name}: unseen`, s.unseen, straightToo ? s.unseenStraight : undefined, '| |');
  if (s.byGauge.size > 1)
    for (const [gauge, t] of s.byGauge) row(`${scenario.name}: ±${gauge}`, t, undefined, '| |');
}
