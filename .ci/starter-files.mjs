// What `troughline init` writes comes from the examples, so that it is what the README shows and the tests run: their texts as
// a module that the bundle carries.

import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const texts = {
  conveyor: '1-first-conveyor/first.trough',
  githubAction: 'ci/github/action.yml',
  githubPullRequest: 'ci/github/pull-request.yml',
  githubMonth: 'ci/github/month.yml',
  gitlab: 'ci/gitlab/.gitlab-ci.yml',
  hooks: 'ci/.pre-commit-config.yaml',
};

export function writeStarterFiles(root) {
  const folder = path.join(root, 'src', 'cli', 'generated');
  mkdirSync(folder, { recursive: true });
  const entries = Object.entries(texts).map(
    ([name, file]) =>
      `  ${name}: ${JSON.stringify(readFileSync(path.join(root, 'examples', file), 'utf8'))},\n`,
  );
  writeFileSync(
    path.join(folder, 'starter-files.ts'),
    `// Made by .ci/starter-files.mjs from the examples; not kept in git.\n\nexport const starterFiles = {\n${entries.join('')}} as const;\n`,
  );
}
