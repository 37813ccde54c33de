// Plants small faults in the files of a group and sees which of them the tests of the group notice.
// `npm run mutate` takes all groups, `npm run mutate -- fixes tell` the named ones. What is left alive is either explained in
// survivors.mjs or listed as unexplained. A group below its floor (floors.json) fails; above it, the floor rises.

import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { Stryker } from '@stryker-mutator/core';
import { groups } from './groups.mjs';
import { survivors } from './survivors.mjs';

const here = new URL('.', import.meta.url);
const root = fileURLToPath(new URL('../../', here));
const floorsFile = new URL('floors.json', here);
const floors = JSON.parse(readFileSync(floorsFile, 'utf8'));

const asked = process.argv.slice(2).filter((word) => !word.startsWith('-'));
const unknown = asked.filter((name) => !(name in groups));
if (unknown.length > 0) {
  console.error(`No group ${unknown.join(', ')}; there are ${Object.keys(groups).join(', ')}.`);
  process.exit(2);
}
process.chdir(root);

let failed = false;
const table = [
  '| group | mutants | killed | left, explained | left, unexplained | score |',
  '| --- | ---: | ---: | ---: | ---: | ---: |',
];
for (const name of asked.length > 0 ? asked : Object.keys(groups)) {
  const result = await mutate(name, groups[name]);
  table.push(
    `| ${name} | ${result.all} | ${result.killed} | ${result.explained} | ${result.open.length} | ${result.score} % |`,
  );
  for (const line of result.open) console.log(line);
  const floor = floors[name] ?? 0;
  if (result.score < floor) {
    console.error(`${name}: ${result.score} % is below the ${floor} % reached before.`);
    failed = true;
  } else floors[name] = result.score;
}
writeFileSync(floorsFile, `${JSON.stringify(floors, undefined, 2)}\n`);
console.log(table.join('\n'));
process.exit(failed ? 1 : 0);

async function mutate(name, group) {
  process.env.MUTATION_TESTS = group.tests.join(' ');
  const stryker = new Stryker({
    mutate: [...group.files],
    testRunner: group.pure ? 'in-process' : 'vitest',
    plugins: ['@stryker-mutator/vitest-runner', './tests/mutation/in-process.mjs'],
    maxTestRunnerReuse: group.pure ? 400 : 0,
    vitest: { configFile: 'tests/mutation/vitest.config.mts', related: false },
    coverageAnalysis: 'perTest',
    concurrency: 1,
    timeoutMS: 12_000,
    incremental: true,
    incrementalFile: `reports/mutation/${name}.incremental.json`,
    reporters: ['json', 'html', 'progress-append-only'],
    jsonReporter: { fileName: `reports/mutation/${name}.json` },
    htmlReporter: { fileName: `reports/mutation/${name}.html` },
    tempDirName: 'reports/mutation/copy',
    ignorePatterns: ['/dist', '/reports', '/out', '*.vsix'],
    allowEmpty: true,
    disableTypeChecks: false,
  });
  const mutants = await stryker.runMutationTest();
  const counted = mutants.filter(
    ({ status }) => status !== 'Ignored' && status !== 'CompileError' && status !== 'RuntimeError',
  );
  const left = counted.filter(({ status }) => status === 'Survived' || status === 'NoCoverage');
  const open = [];
  let explained = 0;
  for (const mutant of left) {
    const lines = readFileSync(mutant.fileName, 'utf8').split('\n');
    const file = path.relative(process.cwd(), mutant.fileName).split(path.sep).join('/');
    const line = (lines[mutant.location.start.line - 1] ?? '').trim();
    const known = survivors.some(
      (each) =>
        each.file === file &&
        each.line === line &&
        (each.becomes === undefined || each.becomes === mutant.replacement),
    );
    if (known) explained += 1;
    else
      open.push(
        `${mutant.status === 'NoCoverage' ? 'no test' : 'alive'} ${file}:${mutant.location.start.line}:${mutant.location.start.column} ${mutant.mutatorName}\n    ${line}\n    -> ${mutant.replacement}`,
      );
  }
  const killed = counted.length - left.length;
  const score = counted.length === 0 ? 100 : Math.floor((1000 * killed) / counted.length) / 10;
  return { all: counted.length, killed, explained, open, score };
}
