// Packs dist/ into one .vsix for every platform. The extension is put together in a folder of its own, with a manifest that
// holds what an editor needs and nothing of the repository.

import { createVSIX } from '@vscode/vsce';
import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { figures } from './pictures-in-text.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
const dist = path.join(root, 'dist');
const stage = path.join(dist, 'vsix');
const packed = path.join(dist, 'troughline.vsix');

const shipped = [
  'extension.cjs',
  'extension-web.js',
  'server.cjs',
  'server-web.js',
  'highs.wasm',
  'views',
  'rules',
  'sample',
  'walkthrough',
];
const kept = [
  'name',
  'displayName',
  'description',
  'version',
  'publisher',
  'license',
  'engines',
  'categories',
  'keywords',
  'main',
  'browser',
  'activationEvents',
  'extensionKind',
  'capabilities',
  'contributes',
];

/** Packs to `packagePath`; with `webOnly` the manifest names no desktop entry, so that any editor runs the browser's half. */
export async function pack({ packagePath, webOnly = false }) {
  if (!existsSync(path.join(dist, 'server.cjs')))
    throw new Error('dist/ is empty: npm run build comes first.');
  rmSync(stage, { recursive: true, force: true });
  mkdirSync(path.join(stage, 'dist'), { recursive: true });
  for (const name of shipped)
    cpSync(path.join(dist, name), path.join(stage, 'dist', name), { recursive: true });
  for (const name of ['troughline.tmLanguage.json', 'language-configuration.json'])
    cpSync(path.join(root, 'syntaxes', name), path.join(stage, 'syntaxes', name));
  for (const name of ['LICENSE', 'CHANGELOG.md']) cpSync(path.join(root, name), path.join(stage, name));
  writeFileSync(path.join(stage, 'README.md'), readmeWithFigures());
  cpSync(path.join(dist, 'notices', 'extension'), stage, { recursive: true });
  cpSync(path.join(root, 'src', 'extension', 'icon.png'), path.join(stage, 'icon.png'));

  const manifest = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
  const own = Object.fromEntries(kept.flatMap((name) => (name in manifest ? [[name, manifest[name]]] : [])));
  own.engines = { vscode: manifest.engines.vscode };
  own.icon = 'icon.png';
  own.files = ['**'];
  if (webOnly) {
    delete own.main;
    delete own.extensionKind;
  }
  writeFileSync(path.join(stage, 'package.json'), `${JSON.stringify(own, undefined, 2)}\n`);

  await createVSIX({
    cwd: stage,
    packagePath,
    dependencies: false,
    allowMissingRepository: true,
    rewriteRelativeLinks: false,
  });
  rmSync(stage, { recursive: true, force: true });
}

/** The README with each picture as a figure of letters; the walkthrough has the pictures themselves. */
function readmeWithFigures() {
  const drawn = figures();
  return readFileSync(path.join(root, 'README.md'), 'utf8').replace(
    /!\[([^\]]*)\]\([^):]+\/([\w-]+\.png)\)/g,
    (_, caption, name) => {
      if (!(name in drawn)) throw new Error(`README.md shows ${name}, which has no figure in letters.`);
      return `${drawn[name]}\n\n*${caption}.*`;
    },
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await pack({ packagePath: packed });
  console.log(path.relative(root, packed));
}
