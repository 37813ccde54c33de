// `npm run demo`: the main job on the demo estate. Checks it, writes the remaining-life report, the work packs and an
// inspection sheet, and says where they lie.
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
const estate = 'examples/4-tarnholt';
const asOf = ['--as-of', '2026-10-31'];

say('1. Check the demo estate: what is wrong, why it matters, what to do');
troughline([0, 1], 'check', estate, ...asOf);
say('2. How each liner stands');
troughline([0, 1], 'report', estate, ...asOf, '--since', '2026-07-31', '--out', 'out/demo/report');
say('3. The work packs');
troughline(
  [0, 1],
  ...['pack', 'all', estate, ...asOf, '--out', 'out/demo/packs'],
  ...['html', 'markdown', 'crew'].flatMap((format) => ['--format', format]),
);
say('4. The next inspection of DG1, on paper and for a phone');
troughline(
  [0],
  'sheet',
  'DG1',
  estate,
  ...asOf,
  '--out',
  'out/demo/sheets',
  '--format',
  'html',
  '--format',
  'phone',
);
say('Open these in a browser, and print them from there:');
for (const file of [
  'report/report.html',
  'packs/DG1_Winter27.html',
  'packs/DG1_Winter27-crew.html',
  'packs/SL4_Spring27.html',
  'sheets/DG1.html',
  'sheets/DG1-phone.html',
]) {
  console.log(`  ${path.join('out', 'demo', file)}`);
}
console.log(
  '\nThen change one line under examples/4-tarnholt, for example the duty of DG1, and run it again.',
);

function troughline(expected, ...args) {
  console.log(`$ troughline ${args.join(' ')}\n`);
  const { status } = spawnSync(process.execPath, [path.join(root, 'dist', 'cli.js'), ...args], {
    cwd: root,
    stdio: 'inherit',
  });
  if (!expected.includes(status)) {
    console.error(`troughline ended with ${status}`);
    process.exit(1);
  }
}

function say(line) {
  console.log(`\n${line}\n${'-'.repeat(line.length)}`);
}
