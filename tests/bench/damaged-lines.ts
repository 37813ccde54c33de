// Every line of the examples and of the README's texts, damaged in ten ways: how often is the damage told once, on its own line,
// and nothing else beside it; how often is the right repair named? Damages that leave a text valid are not counted.
// npx tsx tests/bench/damaged-lines.ts [one line of so many] [seed] [show]

import { globSync, readFileSync } from 'node:fs';
import {
  Bench,
  byFolder,
  damagesOf,
  drawer,
  ways,
  type Judged,
  type SoundEstate,
} from '../language/damage.js';

const every = Number(process.argv[2] ?? 1);
const draw = drawer(Number(process.argv[3] ?? 20261126));
const show = process.argv[4];

// Examples of mistakes are no sound texts.
const files = globSync('examples/*/**/*.trough').filter((file) => !/every-mistake|ci\//.test(file));
const readme = [...readFileSync('README.md', 'utf8').matchAll(/^```troughline\n([\s\S]*?)^```/gm)].map(
  ([, text = ''], i): SoundEstate => [{ uri: `README-${i + 1}.trough`, text }],
);
const estates = [...byFolder(files.sort(), 2), ...readme];
const others = estates
  .flat()
  .flatMap(({ text }) => text.split('\n'))
  .filter((line) => /^ {2,}[a-z]/.test(line) && !/[{}]/.test(line));

interface Row {
  counted: number;
  once: number;
  onlyHere: number;
  nowhere: number;
  repair: number;
}
const rows = new Map<string, Row>(
  ways.map((way) => [way, { counted: 0, once: 0, onlyHere: 0, nowhere: 0, repair: 0 }]),
);
const codes = new Map<string, number>();
const began = process.cpuUsage();
for (const estate of estates) {
  const bench = new Bench(estate);
  for (const text of estate)
    for (const damage of damagesOf(text, draw, others, () => draw(every) === 0)) count(bench.judge(damage));
}

function count(judged: Judged): void {
  const { damage, here, elsewhere, isError, namesRepair } = judged;
  // Still a valid text: nothing to be told of a line that reads.
  if (!isError && ![...here, ...elsewhere].some((told) => told.includes(' TL10'))) return;
  const syntax = [...here, ...elsewhere].some((told) => told.includes(' TL101 '));
  if (!syntax && damage.way !== 'unit dropped') return;
  const row = rows.get(damage.way);
  if (!row) return;
  row.counted++;
  if (here.length === 1) row.once++;
  if (elsewhere.length === 0) row.onlyHere++;
  if (here.length === 1 && elsewhere.length === 0) row.nowhere++;
  if (namesRepair) row.repair++;
  for (const told of elsewhere) {
    const code = / (TL\d+) /.exec(told)?.[1] ?? '';
    codes.set(code, (codes.get(code) ?? 0) + 1);
  }
  if (
    (show === 'bad' && (here.length !== 1 || elsewhere.length > 0)) ||
    show === 'all' ||
    show === damage.way
  )
    console.log(
      `\n--- ${damage.way} ${damage.uri}:${damage.line}\n- ${damage.before}\n+ ${damage.after}\n` +
        `${here.map((told) => `  here ${told}`).join('\n')}\n${elsewhere
          .slice(0, 6)
          .map((told) => `  ELSE ${told}`)
          .join('\n')}`,
    );
}

const percent = (part: number, of: number): string => `${of === 0 ? '–' : ((100 * part) / of).toFixed(1)} %`;
console.log(
  `\n${'damage'.padEnd(24)}${'told'.padStart(7)}${'one here'.padStart(10)}${'none elsewhere'.padStart(16)}${'both'.padStart(9)}${'repair named'.padStart(14)}`,
);
const total: Row = { counted: 0, once: 0, onlyHere: 0, nowhere: 0, repair: 0 };
const line = (name: string, row: Row): void =>
  console.log(
    `${name.padEnd(24)}${String(row.counted).padStart(7)}${percent(row.once, row.counted).padStart(10)}` +
      `${percent(row.onlyHere, row.counted).padStart(16)}${percent(row.nowhere, row.counted).padStart(9)}` +
      percent(row.repair, row.counted).padStart(14),
  );
for (const [way, row] of rows) {
  line(way, row);
  for (const key of Object.keys(total) as (keyof Row)[]) total[key] += row[key];
}
line('all', total);
console.log(
  `\nElsewhere by code: ${
    [...codes]
      .sort((a, b) => b[1] - a[1])
      .slice(0, 25)
      .map(([code, n]) => `${code} ${n}`)
      .join(', ') || 'none'
  }`,
);
const { user, system } = process.cpuUsage(began);
console.log(`${((user + system) / 1e6).toFixed(0)} s of processor`);
