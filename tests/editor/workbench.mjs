// A real VS Code workbench for tests: code-server on a free loopback port with the packaged extension installed, and a
// headless Chromium that looks at it. Everything lives in one temporary folder and ends with close().

import { spawn, spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import net from 'node:net';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const codeServer = path.join(root, 'node_modules', 'code-server', 'out', 'node', 'entry.js');
const shots = path.join(root, 'out', 'shots');

const settings = {
  'security.workspace.trust.enabled': false,
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'telemetry.telemetryLevel': 'off',
  'update.mode': 'none',
  'extensions.autoUpdate': false,
  'extensions.autoCheckUpdates': false,
  'extensions.ignoreRecommendations': true,
  'chat.disableAIFeatures': true,
  'editor.hover.delay': 100,
  'editor.minimap.enabled': false,
  'files.autoSave': 'off',
  'files.simpleDialog.enable': true,
  'window.menuBarVisibility': 'classic',
};

/** Starts server and browser on a copy of `estate`; `more` are settings on top of the usual ones. */
export async function openWorkbench({ estate, vsix, more = {} }) {
  const home = mkdtempSync(path.join(os.tmpdir(), 'troughline-editor-'));
  const workspace = path.join(home, 'estate');
  const userData = path.join(home, 'user');
  const extensions = path.join(home, 'extensions');
  const config = path.join(home, 'config.yaml');
  cpSync(estate, workspace, { recursive: true });
  mkdirSync(path.join(userData, 'User'), { recursive: true });
  mkdirSync(shots, { recursive: true });
  writeFileSync(path.join(userData, 'User', 'settings.json'), JSON.stringify({ ...settings, ...more }));
  writeFileSync(config, 'auth: none\n');

  const env = Object.fromEntries(
    Object.entries(process.env).filter(
      ([name]) => !name.startsWith('VSCODE_') && name !== 'npm_config_user_agent',
    ),
  );
  const shared = [
    codeServer,
    '--user-data-dir',
    userData,
    '--extensions-dir',
    extensions,
    '--config',
    config,
  ];
  const installed = spawnSync(process.execPath, [...shared, '--install-extension', vsix], {
    env,
    encoding: 'utf8',
  });
  if (installed.status !== 0)
    throw new Error(`The extension could not be installed:\n${installed.stdout}${installed.stderr}`);

  const port = await freePort();
  const address = `127.0.0.1:${port}`;
  const server = spawn(
    process.execPath,
    [
      ...shared,
      '--auth',
      'none',
      '--bind-addr',
      address,
      '--disable-telemetry',
      '--disable-update-check',
      '--disable-workspace-trust',
      '--disable-getting-started-override',
    ],
    { env, stdio: ['ignore', 'pipe', 'pipe'], detached: true },
  );
  let log = '';
  server.stdout.on('data', (data) => (log += data));
  server.stderr.on('data', (data) => (log += data));

  let browser;
  const close = async () => {
    await browser?.close();
    await endGroup(server);
    rmSync(home, { recursive: true, force: true, maxRetries: 5 });
  };
  try {
    await until(
      async () => (await fetch(`http://${address}/healthz`)).ok,
      30_000,
      () => `code-server did not start:\n${log}`,
    );
    browser = await chromium.launch({
      executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
      args: [
        '--headless',
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    });
    const page = await browser.newPage({ viewport: { width: 1500, height: 950 } });
    page.setDefaultTimeout(20_000);
    await page.goto(`http://${address}/?folder=${encodeURIComponent(workspace)}`);
    await page.waitForSelector('.monaco-workbench .explorer-folders-view', { timeout: 60_000 });
    return {
      page,
      workspace,
      close,
      shot: (name) => page.screenshot({ path: path.join(shots, `${name}.png`) }),
      log: () => log,
    };
  } catch (fault) {
    await close();
    throw fault;
  }
}

export async function until(condition, timeout, otherwise) {
  const end = Date.now() + timeout;
  for (;;) {
    try {
      const answer = await condition();
      if (answer) return answer;
    } catch {
      // not yet
    }
    if (Date.now() > end) throw new Error(otherwise());
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}

async function freePort() {
  return new Promise((resolve, reject) => {
    const probe = net
      .createServer()
      .on('error', reject)
      .listen(0, '127.0.0.1', () => {
        const { port } = probe.address();
        probe.close(() => resolve(port));
      });
  });
}

/** The server has children of its own; they are one process group. */
async function endGroup(server) {
  if (server.exitCode !== null || server.signalCode) return;
  const gone = new Promise((resolve) => server.once('exit', resolve));
  kill(server.pid, 'SIGTERM');
  await Promise.race([gone, new Promise((resolve) => setTimeout(resolve, 5000))]);
  kill(server.pid, 'SIGKILL');
}

function kill(group, signal) {
  try {
    process.kill(-group, signal);
  } catch {
    // ended by itself
  }
}

export function demand(file, how) {
  if (!existsSync(file)) throw new Error(`${path.relative(root, file)} is missing: ${how} comes first.`);
  return file;
}
