// The parser's tables are made and not kept in git; on a fresh clone the tests make them first.

import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export default function makeGenerated(): void {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  if (existsSync(`${root}/src/language/generated/ast.ts`)) return;
  const { status } = spawnSync(process.execPath, [`${root}/.ci/generate.mjs`], { stdio: 'inherit' });
  if (status !== 0)
    throw new Error('src/language/generated is missing and could not be made: npm run generate');
}
