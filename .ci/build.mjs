// Bundles everything into dist/: the command line, the server as a process and as a web worker, the extension for desktop
// and web, the script and styles of its pages, the sample estate that travels with it, and whose work all that is.

import { build } from 'esbuild';
import { execFileSync } from 'node:child_process';
import { writeNotices } from './notices.mjs';
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
const from = (...names) => path.join(root, ...names);
const out = from('dist');
const { version } = JSON.parse(readFileSync(from('package.json'), 'utf8'));

rmSync(out, { recursive: true, force: true });
mkdirSync(out);

const shared = {
  bundle: true,
  minify: true,
  keepNames: true,
  sourcemap: false,
  legalComments: 'none',
  logLevel: 'warning',
  absWorkingDir: root,
  metafile: true,
  charset: 'utf8',
};
const node = { ...shared, platform: 'node', target: 'node20' };
const web = {
  ...shared,
  platform: 'browser',
  target: 'es2023',
  mainFields: ['browser', 'module', 'main'],
  conditions: ['browser'],
  // The solver's loader asks for node only where it runs in node.
  define: { 'process.env.NODE_ENV': '"production"', 'import.meta.url': 'self.location.href' },
  external: ['node:module'],
};

const [cli, ...editor] = await Promise.all([
  // Packages written for CommonJS call require; an ES module has to be given one.
  build({
    ...node,
    define: { TROUGHLINE_VERSION: JSON.stringify(version) },
    entryPoints: { cli: 'src/cli/main.ts' },
    outdir: out,
    format: 'esm',
    splitting: true,
    chunkNames: 'chunks/[name]-[hash]',
    banner: {
      js: 'import { createRequire as makeRequire } from "node:module"; const require = makeRequire(import.meta.url);',
    },
  }),
  build({
    ...node,
    entryPoints: ['src/lsp/process.ts'],
    outfile: path.join(out, 'server.cjs'),
    format: 'cjs',
    define: { 'import.meta.url': 'ownAddress' },
    banner: { js: 'const ownAddress = require("node:url").pathToFileURL(__filename).href;' },
  }),
  build({
    ...node,
    entryPoints: ['src/extension/activate-node.ts'],
    outfile: path.join(out, 'extension.cjs'),
    format: 'cjs',
    external: ['vscode'],
  }),
  build({
    ...web,
    entryPoints: ['src/lsp/main-web.ts'],
    outfile: path.join(out, 'server-web.js'),
    format: 'iife',
  }),
  build({
    ...web,
    entryPoints: ['src/extension/activate-web.ts'],
    outfile: path.join(out, 'extension-web.js'),
    format: 'cjs',
    external: ['vscode'],
  }),
  build({
    ...web,
    entryPoints: ['src/views/page/page.ts', 'src/views/page/page.css'],
    outdir: path.join(out, 'views'),
    format: 'iife',
  }),
]);

copySample();
writeNotices(root, path.join(out, 'notices', 'command-line'), [cli.metafile]);
writeNotices(
  root,
  path.join(out, 'notices', 'extension'),
  editor.map(({ metafile }) => metafile),
);
await writeRulePages();
publishSchema();
cpSync(from('node_modules', 'highs', 'build', 'highs.wasm'), path.join(out, 'highs.wasm'));
cpSync(from('src', 'extension', 'walkthrough'), path.join(out, 'walkthrough'), { recursive: true });
for (const picture of ['report.png', 'editor.png'])
  cpSync(from('examples', 'pictures', picture), path.join(out, 'walkthrough', picture));

/** The shape of the report's data, for programs that read it without running this one. */
function publishSchema() {
  mkdirSync(path.join(out, 'schemas'));
  for (const name of ['report', 'diff', 'tables'])
    writeFileSync(
      path.join(out, 'schemas', `${name}.schema.json`),
      execFileSync(process.execPath, [path.join(out, 'cli.js'), 'schema', name]),
    );
}

/** With a list of its files, because a browser cannot list the folder of an extension. */
function copySample() {
  const sample = path.join(out, 'sample');
  cpSync(from('examples', '4-tarnholt'), sample, { recursive: true });
  const files = readdirSync(sample, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(sample, path.join(entry.parentPath, entry.name)).split(path.sep).join('/'))
    .sort();
  writeFileSync(path.join(sample, 'files.json'), `${JSON.stringify(files, undefined, 1)}\n`);
}

/** A page a rule, which the code of a finding leads to in the Problems view. */
async function writeRulePages() {
  const script = path.join(out, 'explain.mjs');
  await build({ ...node, entryPoints: ['src/validation/explain.ts'], outfile: script, format: 'esm' });
  const { explainInMarkdown, codesLike } = await import(pathToFileURL(script).href);
  const pages = path.join(out, 'rules');
  mkdirSync(pages);
  for (const code of codesLike('')) writeFileSync(path.join(pages, `${code}.md`), explainInMarkdown(code));
  rmSync(script);
}
