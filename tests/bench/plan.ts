// How fast are checking and planning, and how far from the best possible are plans? `npx tsx tests/bench/plan.ts`
// One large job (60 m, 4 runs, 200 panels, 3 crews), then 100 random jobs: gap to the proven lower bound and time; HiGHS with a
// time limit (20 s each) on those small enough for it: `--highs`. Data on stdout.

import { performance } from 'node:perf_hooks';
import type { Conveyor } from '../../src/domain/model/conveyor.js';
import type { Job } from '../../src/domain/model/job.js';
import { checkOrder } from '../../src/domain/order/check-order.js';
import { cutLists } from '../../src/domain/plan/cut-list.js';
import { cuttingStock } from '../../src/domain/plan/cutting-stock.js';
import { workAxis } from '../../src/domain/plan/work-axis.js';
import { planJob } from '../../src/domain/plan/plan-job.js';
import { proposeSteps } from '../../src/domain/plan/proposed-steps.js';
import { scheduleJobs, type ScheduleProblem } from '../../src/domain/plan/schedule-jobs.js';
import { teamsOf, waysOf } from '../../src/domain/plan/teams.js';
import { workOf } from '../../src/domain/plan/unit-times.js';
import { asProblem } from '../../src/domain/plan/what-shortens.js';
import { precedenceOf } from '../../src/domain/order/precedence.js';
import { numbers } from '../../src/domain/plan/scheduling/improve.js';
import { liner, mm, origin, screw, stated } from '../kit/estate.js';
import { brace, cover, crew, holdDown, job, line, platform, step, worldOf } from '../domain/order/stories.js';

function timed<T>(what: () => T, times = 5): { readonly value: T; readonly ms: number } {
  let best = Infinity;
  let value!: T; // set in the first round
  for (let k = 0; k < Math.max(1, times); k++) {
    const start = performance.now();
    value = what();
    best = Math.min(best, performance.now() - start);
  }
  return { value, ms: best };
}

function dress(base: Conveyor, every: number): Conveyor {
  const length = base.length.value;
  const places = (pitch: number): number[] =>
    Array.from({ length: Math.floor(length / pitch) }, (_, k) => (k + 1) * pitch).filter((at) => at < length);
  return {
    ...base,
    covers: Array.from({ length: Math.ceil(length / every) }, (_, k) =>
      cover(k * every, Math.min(length, (k + 1) * every)),
    ),
    braces: places(3100).map(brace),
    holdDowns: places(1450).map(holdDown),
  };
}

// ------------------------------------------------------------------ the large job
const fine = liner({ panelLengths: [mm(300)], panelTolerance: mm(0.5) });
const spiral = screw({ flight: { width: mm(80), thickness: mm(25), origin: origin() } });
const large = dress(
  {
    ...line([15, 15, 15, 15], [0, 60, 60, 60, 60], { incline: stated('angle', 18), confinedSpace: true }),
    liner: fine,
    screw: spiral,
  },
  1500,
);
const crews = [crew('Alpha', 4), crew('Bravo', 3), crew('Charlie', 3)];
const big = job(large, ['all'], {
  crews,
  accessUnits: [platform('MP1'), platform('MP2')],
  screwChange: { screw: spiral, origin: origin() },
  liftLimit: stated('mass', 400),
});
const world = worldOf(big);
const plan = timed(() => planJob(big, world));
const editor = timed(() => planJob(big, world, { quick: true, shakes: 20, nodes: 0 }));
const written: Job = {
  ...big,
  order: { steps: plan.value.steps.map((each) => each.step), origin: origin() },
};
const check = timed(() => checkOrder(written, world));
const panels = plan.value.ground.runs.flatMap((run) => run.panels);
const byPanel: Job = {
  ...big,
  order: {
    origin: origin(),
    steps: plan.value.steps.flatMap(({ step: each }) => {
      if (each.action !== 'fit' && each.action !== 'strip' && each.action !== 'clean')
        return [{ ...each, after: [], crews: [] }];
      const of = panels.filter(
        (panel) =>
          each.stretch?.kind === 'run' &&
          each.stretch.run.by === 'number' &&
          panel.run?.run.number === each.stretch.run.number.count,
      );
      const sorted = each.start === 'head' ? [...of].reverse() : of;
      return sorted.map((panel) =>
        step(
          `${each.action} panel ${panel.panel} of run ${panel.run?.run.number}${each.start ? ` starting at ${each.start}` : ''}`,
        ),
      );
    }),
  },
};
const panelCheck = timed(() => checkOrder(byPanel, world), 3);
const cuts = timed(() => cutLists(big, world, plan.value.ground));
console.log(`large job: ${panels.length} panels, ${plan.value.steps.length} steps`);
console.log(
  `  plan ${plan.ms.toFixed(0)} ms: ${plan.value.duration.toFixed(2)} h, bound ${plan.value.lowerBound.toFixed(2)} h, gap ${(plan.value.gap * 100).toFixed(1)} %${plan.value.optimal ? ', proven' : ''}`,
);
console.log(`  plan for the editor ${editor.ms.toFixed(0)} ms: ${editor.value.duration.toFixed(2)} h`);
console.log(
  `  check of its ${plan.value.steps.length} steps ${check.ms.toFixed(1)} ms (${check.value.length} complaints)`,
);
console.log(
  `  check panel by panel, ${byPanel.order?.steps.length} steps: ${panelCheck.ms.toFixed(1)} ms (${panelCheck.value.length} complaints)`,
);
console.log(
  `  cut list ${cuts.ms.toFixed(1)} ms: ${cuts.value.map((each) => `${each.sticks.length} sticks${each.optimal ? ', proven' : ''}`).join('; ')}`,
);

// ------------------------------------------------------------------ a hundred random jobs
const random = numbers(42);
const pick = (from: number, to: number): number => from + Math.floor(random() * (to - from + 1));
const smallOnes: Job[] = [];
const rows: { gap: number; ms: number; optimal: boolean; steps: number }[] = [];
for (let k = 0; k < 100; k++) {
  const runs = Array.from({ length: pick(1, 5) }, () => pick(2, 14));
  const base = line(runs, [0, ...runs.map(() => 30)], {
    incline: stated('angle', [0, 0, 12, 24][pick(0, 3)] ?? 0),
    confinedSpace: pick(0, 1) === 1,
  });
  const of = dress(base, [1000, 1400, 2000][pick(0, 2)] ?? 1000);
  const mobile = pick(0, 2);
  const each = job(
    {
      ...of,
      screw: spiral,
      access:
        mobile === 0
          ? of.access
          : [
              { ...of.access[0]!, to: mm(4000) },
              { ...of.access[0]!, from: mm(4000), kind: 'mobile platform' as const },
            ], // the story's conveyor has one zone
    },
    ['all'],
    {
      crews: Array.from({ length: pick(1, 3) }, (_, c) =>
        crew(['Alpha', 'Bravo', 'Charlie'][c] ?? '', pick(2, 5)),
      ),
      accessUnits: Array.from({ length: mobile }, (_, u) => platform(`MP${u + 1}`)),
      ...(pick(0, 3) === 0
        ? { screwChange: { screw: spiral, origin: origin() }, liftLimit: stated('mass', 350) }
        : {}),
    },
  );
  const at = worldOf(each);
  const result = timed(() => planJob(each, at, { quick: true }), 1);
  if (result.value.steps.length <= 24) smallOnes.push(each);
  rows.push({
    gap: result.value.gap,
    ms: result.ms,
    optimal: result.value.optimal,
    steps: result.value.steps.length,
  });
}
const sorted = (of: (row: (typeof rows)[number]) => number): number[] => rows.map(of).sort((a, b) => a - b);
const at = (list: readonly number[], share: number): number =>
  list[Math.min(list.length - 1, Math.floor(share * list.length))] ?? 0;
const gaps = sorted((row) => row.gap);
const ms = sorted((row) => row.ms);
console.log(
  `100 random jobs of ${at(
    sorted((row) => row.steps),
    0,
  )} to ${at(
    sorted((row) => row.steps),
    1,
  )} steps: proven shortest ${rows.filter((row) => row.optimal).length}`,
);
console.log(
  `  gap: mean ${((gaps.reduce((a, b) => a + b, 0) / gaps.length) * 100).toFixed(2)} %, median ${(at(gaps, 0.5) * 100).toFixed(2)} %, 90th ${(at(gaps, 0.9) * 100).toFixed(2)} %, worst ${(at(gaps, 1) * 100).toFixed(2)} %`,
);
console.log(
  `  time: median ${at(ms, 0.5).toFixed(0)} ms, 90th ${at(ms, 0.9).toFixed(0)} ms, worst ${at(ms, 1).toFixed(0)} ms`,
);

// ------------------------------------------------------------------ against an integer programme
if (process.argv.includes('--highs')) {
  const { default: load } = await import('highs');
  // Typed as CommonJS, loaded as a module: the loader is the default export.
  const highs = await (
    load as unknown as () => Promise<{
      solve(text: string, options: object): { Status: string; ObjectiveValue: number };
    }>
  )();
  let same = 0;
  let shorter = 0;
  let longer = 0;
  for (const small of smallOnes) {
    const at = worldOf(small);
    // Both without the clock (shift ends, moves, watches), of which the integer programme knows nothing.
    const problem = problemOf(small, at);
    const found = scheduleJobs(problem, { shakes: 1000, nodes: 3000 });
    if (found.kind !== 'schedule') continue;
    const ours = { duration: found.makespan / 60, steps: problem.activities };
    const solution = highs.solve(disjunctive(problem, Math.round(ours.duration * 60) + 1), {
      time_limit: 20,
    });
    const theirs = solution.ObjectiveValue / 60;
    const verdict =
      Math.abs(theirs - ours.duration) < 0.01
        ? 'same'
        : theirs > ours.duration
          ? 'ours shorter'
          : 'ours longer';
    if (verdict === 'same') same++;
    else if (verdict === 'ours shorter') shorter++;
    else longer++;
    if (verdict !== 'same')
      console.log(
        `  ${ours.steps.length} steps: ours ${ours.duration.toFixed(2)} h, HiGHS ${theirs.toFixed(2)} h (${solution.Status})`,
      );
  }
  console.log(
    `HiGHS on ${smallOnes.length} jobs of at most 24 steps: same ${same}, ours shorter ${shorter}, ours longer ${longer}`,
  );
}

// ------------------------------------------------------------------ cutting stock at and beyond real sizes
let proven = 0;
let worst = 0;
const spent: number[] = [];
for (let k = 0; k < 100; k++) {
  const kinds = pick(3, 16);
  const pieces = Array.from({ length: kinds }, () => ({ length: pick(300, 2900), count: pick(1, 30) }));
  const result = timed(
    () =>
      cuttingStock({
        stock: [{ length: 6000 }, { length: 3000 }, { length: pick(600, 2900), count: pick(1, 4), cost: 0 }],
        pieces,
        kerf: 3,
      }),
    0,
  );
  spent.push(result.ms);
  if (result.value.kind !== 'plan') continue;
  if (result.value.optimal) proven++;
  worst = Math.max(worst, result.value.cost / Math.max(1, result.value.lowerBound) - 1);
}
spent.sort((a, b) => a - b);
console.log(
  `100 random cut lists of 3 to 16 lengths: proven ${proven}, worst gap ${(worst * 100).toFixed(2)} %, median ${at(spent, 0.5).toFixed(0)} ms, worst ${at(spent, 1).toFixed(0)} ms`,
);

/** The scheduling problem of a proposed plan, as the planner poses it. */
function problemOf(of: Job, at: ReturnType<typeof worldOf>): ScheduleProblem {
  const { steps } = proposeSteps(of, at);
  const { ground, bound, apart } = precedenceOf(of, steps, at);
  const teams = teamsOf(of);
  const pieces = planJob(of, at, { quick: true, shakes: 0, nodes: 0 }).lifts.spiral;
  const ways = steps.map((each, i) =>
    waysOf(of, each, ground.areas[i] ?? [], workOf(ground, each, ground.areas[i] ?? [], pieces), teams),
  );
  return asProblem(
    steps,
    ways,
    steps.map((_, j) => bound.filter(([, after]) => after === j).map(([before]) => before)),
    apart,
    teams,
    // The integer programme below knows nothing of the clock.
    {
      axis: workAxis([], undefined),
      whole: [],
      room: [],
      tooLong: [],
      extents: [],
      move: 0,
      moveAssumed: false,
      stands: [],
      craneMove: 0,
      craneMoveAssumed: false,
      covers: [],
      watches: [],
      rests: [],
      handBack: [],
    },
  );
}

/** Starts, modes, and an order for every pair that may clash (Manne 1960, with modes). */
function disjunctive({ activities, resources, exclusions = [] }: ScheduleProblem, horizon: number): string {
  const rows: string[] = [];
  const binaries: string[] = [];
  const minus = (i: number): string =>
    (activities[i]?.modes ?? []).map((mode, m) => `- ${mode.duration} x${i}_${m}`).join(' ');
  activities.forEach(({ modes, after }, i) => {
    binaries.push(...modes.map((_, m) => `x${i}_${m}`));
    rows.push(`${modes.map((_, m) => `+ 1 x${i}_${m}`).join(' ')} = 1`, `T - s${i} ${minus(i)} >= 0`);
    for (const j of after) rows.push(`s${i} - s${j} ${minus(j)} >= 0`);
  });
  for (let j = 1; j < activities.length; j++) {
    for (let i = 0; i < j; i++) {
      const excluded = exclusions.some(([a, b]) => (a === i && b === j) || (a === j && b === i));
      const clashes = (activities[i]?.modes ?? []).flatMap((x, m) =>
        (activities[j]?.modes ?? []).flatMap((y, k) =>
          x.uses.some((use) =>
            y.uses.some(
              (other) =>
                other.resource === use.resource &&
                use.amount + other.amount > (resources[use.resource]?.capacity ?? 0),
            ),
          )
            ? [[m, k] as const]
            : [],
        ),
      );
      if (!excluded && clashes.length === 0) continue;
      binaries.push(`y${i}_${j}`);
      // y = 1: i before j. Where no two ways clash the pair is free.
      const free = (m: number, k: number): string => `- ${horizon} x${i}_${m} - ${horizon} x${j}_${k}`;
      for (const [m, k] of excluded ? [[-1, -1] as const] : clashes) {
        const slack = excluded ? '' : free(m, k);
        const room = excluded ? 0 : 2 * horizon;
        rows.push(
          `s${j} - s${i} ${minus(i)} - ${horizon} y${i}_${j} ${slack} >= ${-horizon - room}`,
          `s${i} - s${j} ${minus(j)} + ${horizon} y${i}_${j} ${slack} >= ${-room}`,
        );
      }
    }
  }
  return [
    'Minimize',
    ' obj: T',
    'Subject To',
    ...rows.map((row, r) => ` r${r}: ${row}`),
    'Bounds',
    ` 0 <= T <= ${horizon}`,
    ...activities.map((_, i) => ` 0 <= s${i} <= ${horizon}`),
    'Binary',
    ` ${binaries.join(' ')}`,
    'End',
  ].join('\n');
}
