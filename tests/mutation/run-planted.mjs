// Plants each fault of planted.mjs in turn and runs its test, which must fail; first all these tests without a fault, which must
// pass. Words on the command line choose the faults that contain them.

import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { planted } from './planted.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const words = process.argv.slice(2);
const chosen = planted.filter(({ fault, file }) => words.every((word) => `${fault} ${file}`.includes(word)));

function passes(tests, fault) {
  const { status } = spawnSync('vitest', ['run', '--config', 'tests/mutation/planted.config.mts', ...tests], {
    cwd: root,
    env: { ...process.env, PLANTED: JSON.stringify(fault) },
    encoding: 'utf8',
  });
  return status === 0;
}

if (!passes([...new Set(chosen.map(({ test }) => test))], {})) {
  console.error('The tests fail without any fault.');
  process.exit(1);
}
let missed = 0;
for (const each of chosen) {
  const times = readFileSync(root + each.file, 'utf8').split(each.from).length - 1;
  const verdict =
    times !== 1 ? `its place is there ${times} times` : passes([each.test], each) ? 'NOT SEEN' : 'seen';
  if (verdict !== 'seen') missed += 1;
  console.log(`${verdict.padEnd(9)} ${each.fault} (${each.test})`);
}
console.log(`${chosen.length - missed} of ${chosen.length} planted faults are seen.`);
process.exit(missed === 0 ? 0 : 1);
