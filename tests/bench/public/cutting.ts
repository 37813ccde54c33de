// Are cut lists optimal where the optimum is published? `npx tsx tests/bench/public/cutting.ts FOLDER BOUNDS [most items]`
// FOLDER holds instances of BPPLIB (Delorme, Iori and Martello 2018) in its bin-packing text form, in folders as they come:
// number of items, capacity, one length a line. BOUNDS has lines of name, lower and upper bound. Prints what is not optimal
// or not proven, then one line a set. Effort is counted, so only the times depend on the machine. Data on stdout.

import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { cuttingStock } from '../../../src/domain/plan/cutting-stock.js';

const [folder = '.', bounds = 'Bounds.txt', most = '100', every = '1'] = process.argv.slice(2);
const known = new Map(
  readFileSync(bounds, 'utf8')
    .split(/\r?\n/)
    .map((line) => line.trim().split(/\s+/))
    .map(([name = '', low, high]) => [name, { low: Number(low), high: Number(high) }]),
);
const files = readdirSync(folder, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && entry.name.endsWith('.txt') && known.has(entry.name.slice(0, -4)))
  .map((entry) => path.join(entry.parentPath, entry.name))
  .sort();

interface Row {
  count: number;
  optimal: number;
  proven: number;
  wrong: number;
  worst: number;
  total: number;
}
const rows = new Map<string, Row>();
let at = 0;
for (const file of files) {
  const [items = 0, capacity = 0, ...lengths] = readFileSync(file, 'utf8').trim().split(/\s+/).map(Number);
  if (items > Number(most) || at++ % Number(every) !== 0) continue;
  const name = path.basename(file, '.txt');
  const { low, high } = known.get(name) ?? { low: 0, high: Infinity };
  const before = process.cpuUsage().user;
  const plan = cuttingStock({
    stock: [{ length: capacity, cost: 1 }],
    pieces: lengths.map((length) => ({ length, count: 1 })),
  });
  const seconds = (process.cpuUsage().user - before) / 1e6;
  if (plan.kind !== 'plan') throw new Error(`${file}: ${plan.kind}`);
  const set = path.basename(path.dirname(file));
  const row = rows.get(set) ?? { count: 0, optimal: 0, proven: 0, wrong: 0, worst: 0, total: 0 };
  rows.set(set, row);
  row.count++;
  if (plan.cost <= high) row.optimal++;
  if (plan.optimal) row.proven++;
  // A plan below the known bound, a bound above the known plan, or a false proof.
  const wrong = plan.cost < low || plan.lowerBound > high;
  if (wrong) row.wrong++;
  row.worst = Math.max(row.worst, seconds);
  row.total += seconds;
  if (wrong || plan.cost > high || !plan.optimal || seconds > 10)
    console.log(
      `${name} (${items} items): ${plan.cost} sticks, known ${low === high ? high : `${low} to ${high}`}, bound ${plan.lowerBound}${plan.optimal ? ', proven' : ''}${wrong ? ', WRONG' : ''}, ${plan.nodes} nodes, ${seconds.toFixed(2)} s`,
    );
}
for (const [set, { count, optimal, proven, wrong, worst, total }] of rows)
  console.log(
    `${set}: ${count} instances, optimal ${optimal}, proven ${proven}, false bounds ${wrong}; worst ${worst.toFixed(2)} s, mean ${(total / count).toFixed(3)} s of processor`,
  );
