// How near to the optima of PSPLIB do schedules come? `npx tsx tests/bench/public/scheduling.ts FOLDER [j30|j60|j120] [every]`
// FOLDER holds the library's .sm files of one set and optimum.csv (lines `j301_1.sm,43`, or `104..105` for a lower and an upper
// bound). Effort is counted (schedules tried, conflicts), so results do not depend on the machine; times do. Prints what is
// not proven at its best known length, then the summary. Data on stdout.

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { scheduleJobs } from '../../../src/domain/plan/schedule-jobs.js';
import { readPsplib } from './psplib.js';

const [folder = '.', set = 'j30', every = '1'] = process.argv.slice(2);
const effort = {
  j30: { shakes: 5000, nodes: 60_000 },
  j60: { shakes: 3000, nodes: 30_000 },
  j120: { shakes: 5000, nodes: 0 },
}[set] ?? { shakes: 2000, nodes: 20_000 };

const known = readFileSync(path.join(folder, 'optimum.csv'), 'utf8')
  .split(/\r?\n/)
  .flatMap((line): { file: string; low: number; high: number }[] => {
    const [file = '', value = ''] = line.trim().split(',');
    if (!file.startsWith(set)) return [];
    const bounds = value.split('..').map(Number); // an empty one is 0
    return [{ file, low: bounds[0] ?? 0, high: bounds.at(-1) ?? 0 }];
  })
  .filter((_, k) => k % Number(every) === 0);

let reached = 0;
let proven = 0;
let gaps = 0;
let wrong = 0;
let worst = 0;
let total = 0;
for (const { file, low, high } of known) {
  const problem = readPsplib(readFileSync(path.join(folder, file), 'utf8'));
  const before = process.cpuUsage().user;
  const result = scheduleJobs(problem, effort);
  const seconds = (process.cpuUsage().user - before) / 1e6;
  if (result.kind !== 'schedule') throw new Error(`${file}: ${result.kind}`);
  if (result.makespan <= high) reached++;
  if (result.optimal) proven++;
  // A schedule shorter than the known bound, a bound above a known schedule, or a false proof.
  if (result.makespan < low || result.lowerBound > high) wrong++;
  gaps += result.makespan / high - 1;
  worst = Math.max(worst, seconds);
  total += seconds;
  if (!result.optimal || result.makespan > high)
    console.log(
      `${file}: ${result.makespan}, best known ${high}, bound ${result.lowerBound}${result.optimal ? ', proven' : ''}, ${result.nodes} conflicts, ${seconds.toFixed(2)} s`,
    );
}
const n = known.length;
console.log(
  `${set}: ${n} instances, at the best known length ${reached}, proven ${proven}, mean gap ${((gaps / n) * 100).toFixed(3)} %, false bounds ${wrong}; worst ${worst.toFixed(2)} s, mean ${(total / n).toFixed(2)} s of processor`,
);
