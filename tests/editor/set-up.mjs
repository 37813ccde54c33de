// Puts in place what a test in the real workbench needs and a plain install leaves out: the packages the workbench itself
// runs on, inside the code-server package, a Chromium, and its shell without a window, in which the tests of pages take half
// the time. Runs before every editor test; does nothing when all is there.

import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const codeServer = path.join(root, 'node_modules', 'code-server');
const workbench = path.join(codeServer, 'lib', 'vscode');
const chromium = process.env.CHROMIUM ?? '/usr/bin/chromium';
const shell = '/usr/bin/chromium-headless-shell';
const isDebian = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');

requireNode(24);
installWorkbenchPackages();
installChromium();
installShell();

function requireNode(major) {
  if (Number(process.versions.node.split('.')[0]) >= major) return;
  stop(
    `the editor tests need Node ${major}; this is ${process.version}. Start them with npm run test:editor.`,
  );
}

function installWorkbenchPackages() {
  const { version } = JSON.parse(readFileSync(path.join(codeServer, 'package.json'), 'utf8'));
  const wanted = `${version} on Node ${process.version}`;
  const marker = path.join(workbench, '.packages-ready');
  if (existsSync(marker) && readFileSync(marker, 'utf8') === wanted) return;
  run(
    'npm',
    ['install', '--omit=dev', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'],
    workbench,
  );
  // The two small native modules that the server cannot start without.
  run('npm', ['rebuild', '@vscode/spdlog', '@vscode/native-watchdog'], workbench);
  writeFileSync(marker, wanted);
}

function installChromium() {
  if (existsSync(chromium)) return;
  if (!isDebian)
    stop(`no Chromium at ${chromium}: install Debian's package chromium, or name another in CHROMIUM.`);
  const outcome = aptInstall('chromium', 'fonts-liberation', 'fonts-dejavu-core');
  if (outcome !== undefined) stop(outcome);
}

/** Faster, and nothing but that: where it cannot be had, the tests of pages take the Chromium. */
function installShell() {
  if (existsSync(shell) || process.env.CHROMIUM !== undefined || !isDebian) return;
  const outcome = aptInstall('chromium-headless-shell');
  if (outcome !== undefined) console.error(`${outcome}: the tests of pages take ${chromium}, and longer`);
}

/** @param {string[]} packages */
function aptInstall(...packages) {
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  return (
    outcomeOf('apt-get', ['update', '-qq'], root, env) ??
    outcomeOf('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], root, env)
  );
}

function run(command, args, cwd) {
  const outcome = outcomeOf(command, args, cwd);
  if (outcome !== undefined) stop(outcome);
}

/** What went wrong; nothing where it went well. */
function outcomeOf(command, args, cwd, extra = {}) {
  // npm passes its own settings on through the environment; a second npm must not take them for its own.
  const env = Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !/^npm_|^(NODE|INIT_CWD)$/i.test(name)),
  );
  env.npm_config_nodedir = path.resolve(path.dirname(process.execPath), '..');
  const outcome = spawnSync(command, args, { cwd, env: { ...env, ...extra }, stdio: ['ignore', 2, 2] });
  return outcome.status === 0
    ? undefined
    : `${command} ${args.join(' ')} failed (${outcome.status ?? outcome.signal ?? outcome.error})`;
}

function stop(message) {
  console.error(message);
  process.exit(1);
}
