// The command line bundled as it ships, into a folder of its own: for tests in which another program calls it.

import { build } from 'esbuild';
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Path of the program; once a file of tests. */
export async function bundledCli(): Promise<string> {
  const outdir = mkdtempSync(path.join(os.tmpdir(), 'trough-bundle-'));
  afterAll(() => rmSync(outdir, { recursive: true, force: true }));
  await build({
    absWorkingDir: root,
    entryPoints: { cli: 'src/cli/main.ts' },
    bundle: true,
    splitting: true,
    outdir,
    outExtension: { '.js': '.mjs' },
    platform: 'node',
    target: 'node20',
    format: 'esm',
    logLevel: 'error',
    define: { TROUGHLINE_VERSION: '"0.1.0"' },
    banner: {
      js: 'import { createRequire as makeRequire } from "node:module"; const require = makeRequire(import.meta.url);',
    },
  });
  copyFileSync(path.join(root, 'node_modules/highs/build/highs.wasm'), path.join(outdir, 'highs.wasm'));
  return path.join(outdir, 'cli.mjs');
}
