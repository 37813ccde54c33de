// `npm run test:explore` (or `-- 5` for five rounds): the random tests with fresh seeds, to find what the pinned one does not.
// A seed that fails is printed; TROUGHLINE_SEED repeats it, and what it found belongs in a test of its own.

import { spawnSync } from 'node:child_process';
import { randomInt } from 'node:crypto';
import { globSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const drawn = globSync('tests/**/*.test.ts', { cwd: root })
  .filter((file) => /from 'fast-check'|random-seed/.test(readFileSync(root + file, 'utf8')))
  .sort();
const failed = [];
for (let round = 0; round < Number(process.argv[2] ?? 1); round++) {
  const seed = randomInt(1, 2 ** 31);
  const { status } = spawnSync('vitest', ['run', '--config', 'tests/vitest.config.ts', ...drawn], {
    cwd: root,
    env: { ...process.env, TROUGHLINE_SEED: String(seed) },
    stdio: 'inherit',
  });
  if (status !== 0) failed.push(seed);
}
if (failed.length > 0) console.error(`Failed with seed ${failed.join(', ')}.`);
process.exit(failed.length > 0 ? 1 : 0);
