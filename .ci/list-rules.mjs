// Every file under src/validation/rules/<group> is a rule: the catalogue's list is made from the folder, so that a rule is added by
// writing its file. `bolts-too-far-apart.ts` exports `boltsTooFarApart`. Run by itself it makes only this list.

import { mkdirSync, readdirSync, readFileSync, writeFileSync, existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export function listRules(root) {
  const rules = path.join(root, 'src', 'validation', 'rules');
  const groups = readdirSync(rules).sort();
  const files = groups.flatMap((group) =>
    readdirSync(path.join(rules, group))
      .sort()
      .map((file) => ({ group, file: file.replace(/\.ts$/, '') })),
  );
  const text = [
    '// Made by npm run generate from the files under src/validation/rules.',
    "import type { Rule } from '../rule.js';",
    ...files.map(({ group, file }) => `import { ${constant(file)} } from '../rules/${group}/${file}.js';`),
    '',
    'export const rulesByGroup = {',
    ...groups.map((group) => {
      const own = files.filter((each) => each.group === group).map(({ file }) => constant(file));
      return `  ${group}: [${own.join(', ')}],`;
    }),
    '} satisfies Readonly<Record<string, readonly Rule[]>>;',
    '',
  ].join('\n');
  const target = path.join(root, 'src', 'validation', 'generated', 'rules.ts');
  if (existsSync(target) && readFileSync(target, 'utf8') === text) return;
  mkdirSync(path.dirname(target), { recursive: true });
  writeFileSync(target, text);
}

function constant(file) {
  return file.replace(/-(.)/g, (_, letter) => letter.toUpperCase());
}

const own = fileURLToPath(import.meta.url);
if (process.argv[1] === own) listRules(path.resolve(path.dirname(own), '..'));
