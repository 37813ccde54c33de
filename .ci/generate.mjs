// Makes what the source needs and git does not keep: the list of rules, the scripts of the offline forms, bundled into modules that
// the generators import, what `init` writes, and parser tables and syntax tree types of the grammar, with langium's own program. Keywords of several words are a
// decision of this language (src/language/tokens.ts), so what the program remarks on each of them is not shown; all else is.

import { spawnSync } from 'node:child_process';
import { bundleForms } from './bundle-forms.mjs';
import { listRules } from './list-rules.mjs';
import { writeStarterFiles } from './starter-files.mjs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
listRules(root);
await bundleForms(root);
writeStarterFiles(root);

const program = path.join(root, 'node_modules', 'langium-cli', 'bin', 'langium.js');

const made = spawnSync(process.execPath, [program, 'generate'], { cwd: root, encoding: 'utf8' });
const said = `${made.stdout}${made.stderr}`
  .split('\n')
  .filter((line) => !line.includes('Keywords should not contain whitespace characters.'));
// What it says of a run without trouble, nobody needs to read.
const trouble = said.filter(
  (line) =>
    !/^(Writing generated files to|\[[\d:]+\] Langium generator finished|Reading config from|\s*$)/.test(
      line,
    ),
);
if (trouble.length > 0) console.error(trouble.join('\n'));
process.exit(made.status ?? 1);
