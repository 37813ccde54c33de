// The list of rules, the parser's tables and the forms' scripts are made and not kept in git; on a fresh clone the tests make them
// first.

import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export default function makeGenerated(): void {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  // At once, so that a rule just written is tested without another command.
  spawnSync(process.execPath, [`${root}/.ci/list-rules.mjs`], { stdio: 'inherit' });
  const made = ['src/language/generated/ast.ts', 'src/generators/page/generated/phone-sheet.ts'];
  if (made.every((file) => existsSync(`${root}/${file}`))) return;
  const { status } = spawnSync(process.execPath, [`${root}/.ci/generate.mjs`], { stdio: 'inherit' });
  if (status !== 0) throw new Error('what is generated is missing and could not be made: npm run generate');
}
