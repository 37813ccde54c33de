// Whole-process `check` and `report` on a synthetic estate against a process that only JSON.parses the same data.
// Prints ratios (machines differ, ratios less so). Run: npm run bench  [conveyors inspections points]
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const [conveyors = 20, inspectionsEach = 50, pointsEach = 20] = process.argv.slice(2).map(Number);
const folder = mkdtempSync(path.join(os.tmpdir(), 'trough-bench-'));
try {
  const module = path.join(folder, 'synthetic-estate.mjs');
  await build({
    entryPoints: [path.join(root, 'tests/bench/synthetic-estate.ts')],
    outfile: module,
    format: 'esm',
    bundle: true,
    logLevel: 'error',
  });
  const { syntheticEstate } = await import(module);
  const estate = syntheticEstate({ conveyors, inspectionsEach, pointsEach });
  const estateFolder = path.join(folder, 'estate');
  for (const { uri, text } of estate.texts) {
    const file = path.join(estateFolder, uri);
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
  const json = path.join(folder, 'data.json');
  writeFileSync(json, JSON.stringify(estate.data));
  console.log(`${estate.texts.length} files, ${estate.readings} readings`);

  const cli = path.join(root, 'dist', 'cli.js');
  const base = best(['-e', `JSON.parse(require('node:fs').readFileSync(${JSON.stringify(json)}, 'utf8'))`]);
  const node = best(['-e', '0']);
  const check = best([cli, 'check', '--quiet', '--fail-on', 'error', estateFolder]);
  const report = best([cli, 'report', estateFolder, '--out', path.join(folder, 'report')]);
  show('node -e 0', node, base);
  show('JSON.parse of the same data', base, base);
  show('troughline check', check, base);
  show('troughline report', report, base);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function best(args) {
  let least = Infinity;
  for (let i = 0; i < 3; i++) {
    const from = process.hrtime.bigint();
    const done = spawnSync(process.execPath, args, { stdio: ['ignore', 'ignore', 'inherit'] });
    least = Math.min(least, Number(process.hrtime.bigint() - from) / 1e6);
    if (done.status !== 0 && done.status !== 1) throw new Error(`ended with ${done.status}`);
  }
  return least;
}

function show(name, milliseconds, base) {
  console.log(
    `${name.padEnd(32)} ${milliseconds.toFixed(0).padStart(7)} ms  ${(milliseconds / base).toFixed(2).padStart(7)} × JSON.parse`,
  );
}
